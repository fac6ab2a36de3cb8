import { ipcMain, type WebFrameMain } from 'electron';
import type { Answer } from '#core/contract/operation.ts';
import type { Ask } from '#core/shells/answer.ts';
import { isOwnPage } from './page.ts';

/** Answers the window over IPC; anyone but the main frame of our own page is turned away before the door is touched. */
export function answerWindow(ask: Ask): void {
  ipcMain.handle('ask', async (event, name: unknown, request: unknown, meantFor: unknown): Promise<Answer> => {
    if (!isOwnFrame(event.senderFrame)) return { ok: false, fault: { code: 'not-this-page', facts: {} } };
    if (typeof name !== 'string') return { ok: false, fault: { code: 'unknown-operation', facts: {} } };
    return ask(name, request, typeof meantFor === 'string' ? meantFor : '');
  });
}

/** A frame that has gone since, or that is inside another, is not our page. */
const isOwnFrame = (frame: WebFrameMain | null): boolean =>
  frame !== null && frame.parent === null && isOwnPage(frame.url);
