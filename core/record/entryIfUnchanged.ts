import { RefusedError } from '../outcome.ts';
import { type EntryMade, recordRevision, writePlain } from './entry.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { entries } from './schema.ts';

/**
 * As writeEntry, for what was thought through beforehand: refused when an entry was made or undone since.
 * @param revision of the record it was thought through on (recordRevision)
 * @throws RefusedError record-changed
 */
export const writeEntryIfUnchanged = <T>(
  record: ReadableRecord,
  made: EntryMade,
  revision: string,
  write: (w: WritableRecord, entryId: number) => T,
): T =>
  writePlain(record, (w) => {
    if (recordRevision(w) !== revision) throw new RefusedError({ code: 'record-changed' });
    return write(w, insertInto(w, entries, made));
  });
