import { type Refusal, RefusedError } from '../outcome.ts';

/** What a person can do something about, by SQLite's code (first part); anything else is a defect of ours. */
const FAULT_OF_SQLITE: readonly (readonly [string, string])[] = [
  ['SQLITE_BUSY', 'record-in-use'],
  ['SQLITE_LOCKED', 'record-in-use'],
  ['SQLITE_FULL', 'disk-full'],
  ['SQLITE_READONLY', 'record-read-only'],
  ['SQLITE_PERM', 'record-read-only'],
  ['SQLITE_NOTADB', 'not-a-record'],
  ['SQLITE_CORRUPT', 'record-damaged'],
  ['SQLITE_CANTOPEN', 'cannot-open-record'],
  ['SQLITE_IOERR', 'cannot-reach-record'],
];

/** The refusal that goes with an error SQLite threw; null when it is not one a person can mend. */
export function faultOfSqlite(thrown: unknown, path: string): Refusal | null {
  const code = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
  const found = FAULT_OF_SQLITE.find(([start]) => code.startsWith(start));
  return found ? { code: found[1], facts: { file: path } } : null;
}

/** The refusal that goes with an error of the system's (a full disk, a folder that may not be written to); null: none of ours. */
export function faultOfSystem(thrown: unknown, file: string): Refusal | null {
  const code = thrown instanceof Error && 'code' in thrown && 'syscall' in thrown ? String(thrown.code) : '';
  if (code === '') return null;
  const isFull = code === 'ENOSPC' || code === 'EDQUOT';
  return { code: isFull ? 'disk-full' : 'cannot-write', facts: { file, reason: code } };
}

/** Runs something on files; what a person can mend comes out as a refusal. */
export function mendingFiles<T>(file: string, run: () => T): T {
  try {
    return run();
  } catch (thrown) {
    const refusal = faultOfSystem(thrown, file);
    if (refusal) throw new RefusedError(refusal);
    throw thrown;
  }
}

/** Runs something on a record file; what a person can mend comes out as a refusal. */
export function mending<T>(path: string, run: () => T): T {
  try {
    return run();
  } catch (thrown) {
    const refusal = faultOfSqlite(thrown, path);
    if (refusal) throw new RefusedError(refusal);
    throw thrown;
  }
}
