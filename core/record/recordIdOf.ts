import { createHash } from 'node:crypto';
import { readAbout } from './aboutStore.ts';
import type { OpenRecord } from './recordFile.ts';

/** What a request is meant for while no record is open. */
const NO_RECORD = 'none';

const known = new WeakMap<OpenRecord, string>();

/**
 * Tells the open record from any other, and from what stood in its place before: a copy of a record, or a backup put in its
 * place, gives other things the same numbers.
 */
export function recordIdOf(record: OpenRecord | null): string {
  if (!record) return NO_RECORD;
  const before = known.get(record);
  if (before !== undefined) return before;
  const identity = readAbout(record)?.identity;
  const id = createHash('sha256')
    .update(`${identity ?? ''} ${record.fileId ?? record.path}`)
    .digest('base64url')
    .slice(0, 22);
  if (identity !== undefined) known.set(record, id); // laid down, it keeps its identity
  return id;
}
