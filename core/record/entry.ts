import { eq } from 'drizzle-orm';
import { assertInvariant } from '../outcome.ts';
import { bulk } from './bulk.ts';
import { refuseMoved } from './fileId.ts';
import { insertInto } from './insertInto.ts';
import { beforeWriting, markUndone, markWritten } from './machineForecastStore.ts';
import { mending } from './recordFault.ts';
import type { OpenRecord, ReadableRecord, WritableRecord } from './recordFile.ts';
import { entries } from './schema.ts';

/** Who makes an entry, when, and through which operation. */
export type EntryMade = { madeAt: string; madeBy: string; what: string };

/**
 * One act of one person, in one transaction: all of its rows are in the record afterwards, or none.
 * The only way to write rows that feed a forecast.
 */
export const writeEntry = <T>(
  record: ReadableRecord,
  made: EntryMade,
  write: (w: WritableRecord, entryId: number) => T,
): T =>
  writePlain(record, (w) => {
    const before = beforeWriting(w, entriesRevision(w));
    const done = write(w, insertInto(w, entries, made));
    markWritten(w, before, entriesRevision(w));
    return done;
  });

/** The same for what feeds no forecast: drafts, slips, the fitters' list. */
export function writePlain<T>(record: ReadableRecord, write: (w: WritableRecord) => T): T {
  const { orm } = record as OpenRecord;
  refuseMoved(record as OpenRecord);
  const w = { ...record, write: orm } as unknown as WritableRecord;
  return mending(record.path, () => record.sqlite.transaction(() => write(w)).immediate());
}

/** Undoes an entry: its rows count no more, and stay. */
export function undoEntry(w: WritableRecord, entryId: number, undoneAt: string): void {
  const done = w.write.update(entries).set({ undoneAt }).where(eq(entries.id, entryId)).run();
  assertInvariant(done.changes === 1, 'the entry to be undone is in the record');
  markUndone(w, entryId);
}

/** Puts an entry that was undone in again: its rows count as they did. */
export function redoEntry(w: WritableRecord, entryId: number): void {
  const done = w.write.update(entries).set({ undoneAt: null }).where(eq(entries.id, entryId)).run();
  assertInvariant(done.changes === 1, 'the entry to be put in again is in the record');
  markUndone(w, entryId);
}

/**
 * A text that changes with every entry made or undone, by this program or another: what is worked out from the record
 * may be kept as long as it stays the same.
 */
export const recordRevision = (record: ReadableRecord): string => `${record.path} ${entriesRevision(record)}`;

/** The same, whatever the file is called. */
export function entriesRevision(record: ReadableRecord): string {
  // asked for with every look at the record
  const [last] = bulk<[id: number | null]>(record, 'SELECT max(id) FROM entries', {});
  const [undone] = bulk<[count: number, last: string | null]>(
    record,
    'SELECT count(*), max(undone_at) FROM entries WHERE undone_at IS NOT NULL',
    {},
  );
  return [last?.[0] ?? 0, undone?.[0] ?? 0, undone?.[1] ?? ''].join(' ');
}
