import type { Answer } from './operation.ts';

/** All that Electron's window can reach outside itself: the door, and where a file lies that the person picked. */
export type WindowBridge = {
  ask(name: string, request: unknown, meantFor: string): Promise<Answer>;
  pathOfFile(file: File): string;
};
