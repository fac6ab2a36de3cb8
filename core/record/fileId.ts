import { statSync } from 'node:fs';
import { RefusedError } from '../outcome.ts';
import type { OpenRecord } from './recordFile.ts';

/** The number a system gives a file, which stays when the file is written to and differs from one put in its place. */
export function fileIdOf(path: string): string | null {
  if (path === ':memory:') return null;
  const found = statSync(path, { bigint: true, throwIfNoEntry: false });
  return found && found.ino !== 0n ? `${found.dev} ${found.ino}` : null;
}

/**
 * A file that was moved, deleted or replaced by a copying program goes on being written to, and what is entered is gone
 * with it when the program ends. So it is looked at before every writing.
 *
 * @throws RefusedError record-moved
 */
export function refuseMoved({ path, fileId }: Pick<OpenRecord, 'path' | 'fileId'>): void {
  if (fileId && fileIdOf(path) !== fileId) throw new RefusedError({ code: 'record-moved', facts: { file: path } });
}
