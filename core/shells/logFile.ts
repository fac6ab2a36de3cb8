import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import type { Log } from './answer.ts';

const MAX_BYTES = 1_000_000;

/**
 * Writes defects of ours into `log.txt`: when, which operation, where in the program. Holds nothing that was asked, and
 * no name from a home folder's path. One older log is kept.
 */
export function logInto(folder: string, clock: () => Date = () => new Date()): Log {
  const file = join(folder, 'log.txt');
  return ({ operation, error }) => {
    const lines = withoutPerson(error, error.stack ?? `${error.name}: ${error.message}`);
    try {
      mkdirSync(folder, { recursive: true });
      if (sizeOf(file) > MAX_BYTES) renameSync(file, join(folder, 'log-older.txt'));
      appendFileSync(file, `${clock().toISOString()} ${operation}\n${lines}\n\n`);
    } catch {
      // a full disk must not turn an answer about a defect into a second defect
      console.error(`${operation}\n${lines}`);
    }
  };
}

/**
 * What is told of a defect without a word of what was asked: what cannot be parsed is quoted in the error of parsing it, and a home
 * folder bears a name.
 */
export const withoutPerson = (error: Error, lines: string): string =>
  (error instanceof SyntaxError ? lines.replace(/"[\s\S]*"/, '"…"') : lines).replaceAll(homedir(), '~');

function sizeOf(file: string): number {
  return statSync(file, { throwIfNoEntry: false })?.size ?? 0;
}
