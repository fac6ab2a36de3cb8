import type { Handler } from '../contract/operation.ts';
import type { RestorePreview, recordRestorePreview } from '../contract/record.ts';
import { RefusedError } from '../outcome.ts';
import { type BackupFacts, type EntryKey, recordFacts, rowsOfEntries } from '../record/backupFacts.ts';
import type { Context } from './context.ts';
import { usableBackup } from './recordRestore.ts';

/** Entries shown by name. */
const LAST = 20;

/** What the record has that a backup has not: shown before the backup takes its place. */
export const recordRestorePreviewHandler: Handler<typeof recordRestorePreview, Context> = (context, { file }) => {
  const backup = usableBackup(context, file);
  const record = readable(context);
  const { counts, schemaVersion, entries } = backup;
  return {
    backup: { file, lastEntryAt: entries.at(-1)?.madeAt ?? null, counts, schemaVersion },
    record: record?.counts ?? null,
    sameRecord: record?.identity === backup.identity,
    lost: record ? lostOf(context, record, backup) : NOTHING_LOST,
  };
};

type Facts = Omit<BackupFacts, 'schemaVersion'>;
type Lost = RestorePreview['lost'];

const NOTHING_LOST: Lost = {
  entries: 0,
  undone: 0,
  customers: 0,
  machines: 0,
  points: 0,
  sizes: 0,
  findings: 0,
  slips: 0,
  last: [],
};

/** A record too broken to be read is restored without a preview of what is in it. */
function readable(context: Context): Facts | null {
  if (!context.record) return null;
  try {
    return recordFacts(context.record);
  } catch (thrown) {
    if (thrown instanceof RefusedError) return null;
    throw thrown;
  }
}

function lostOf(context: Context, record: Facts, backup: Facts): Lost {
  if (!context.record) return NOTHING_LOST;
  const keyOf = ({ id, madeAt, what }: EntryKey) => `${id} ${madeAt} ${what}`;
  const inBackup = new Map(backup.entries.map((entry) => [keyOf(entry), entry]));
  const isSame = record.identity === backup.identity;
  const since = record.entries.filter((entry) => !isSame || !inBackup.has(keyOf(entry)));
  const standing = since.filter((entry) => !entry.undone);
  const over = (noun: 'customers' | 'slips') => Math.max(0, record.counts[noun] - (isSame ? backup.counts[noun] : 0));
  return {
    entries: standing.length,
    undone: isSame
      ? record.entries.filter((entry) => entry.undone && inBackup.get(keyOf(entry))?.undone === false).length
      : 0,
    customers: over('customers'),
    slips: over('slips'),
    ...rowsOfEntries(
      context.record,
      since.map(({ id }) => id),
    ),
    last: standing
      .slice(-LAST)
      .reverse()
      .map(({ id, madeAt, madeBy, what }) => ({ entryId: id, madeAt, madeBy, what })),
  };
}
