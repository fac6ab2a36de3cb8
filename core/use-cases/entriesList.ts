import type { z } from 'zod';
import type { EntryRows, entriesList, zEntry } from '../contract/entries.ts';
import type { Handler } from '../contract/operation.ts';
import { customersKnown } from '../record/customerStore.ts';
import {
  customersOfEntries,
  type EntryOnRecord,
  lastUndoable,
  listEntries,
  nextRedoable,
  type RowsOfEntry,
  rowsOfEntries,
  stripDownOfEntries,
} from '../record/entryStore.ts';
import { machineNames } from '../record/machineStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { type Context, recordOf } from './context.ts';

/** So many machines of an import are named; the rest are counted. */
const MOST_NAMED = 4;

export const entriesListHandler: Handler<typeof entriesList, Context> = (context, { beforeEntryId, limit }) => {
  const record = recordOf(context);
  const found = listEntries(record, beforeEntryId, limit + 1);
  const redoable = nextRedoable(record);
  return {
    entries: entrySheets(record, found.slice(0, limit)),
    more: found.length > limit,
    undoableEntryId: lastUndoable(record)?.id ?? null,
    redoable: redoable && (entrySheets(record, [redoable])[0] ?? null),
  };
};

/** Entries with what they brought and what they are about. */
function entrySheets(record: ReadableRecord, entries: readonly EntryOnRecord[]): z.input<typeof zEntry>[] {
  const ids = entries.map(({ id }) => id);
  const rows = Map.groupBy(rowsOfEntries(record, ids), ({ entryId }) => entryId);
  const stripDowns = stripDownOfEntries(record, ids);
  const names = machineNames(record);
  const known = customersKnown(record);
  const customers = Map.groupBy(customersOfEntries(record, ids), ([entryId]) => entryId);
  return entries.map(({ id, ...made }) => {
    const own = rows.get(id) ?? [];
    const machines = [...new Set(own.map(({ machineId }) => machineId))].filter((machineId) => machineId !== null);
    return {
      entryId: id,
      ...made,
      rows: countsOf(own),
      machines: machines.slice(0, MOST_NAMED).map((machineId) => ({ machineId, name: names.get(machineId) ?? '' })),
      machineCount: machines.length,
      customers: (customers.get(id) ?? []).slice(0, MOST_NAMED).map(([, customerId]) => ({
        customerId,
        name: known.own.get(customerId)?.name ?? '',
      })),
      fromOn:
        own
          .map(({ fromOn }) => fromOn)
          .filter((on) => on !== null)
          .sort()[0] ?? null,
      toOn:
        own
          .map(({ toOn }) => toOn)
          .filter((on) => on !== null)
          .sort()
          .at(-1) ?? null,
      stripDownId: stripDowns.get(id) ?? null,
    };
  });
}

const NONE: EntryRows = {
  machines: 0,
  dialReadings: 0,
  assemblies: 0,
  points: 0,
  limits: 0,
  stripDowns: 0,
  sizes: 0,
  sizesPutRight: 0,
  renewals: 0,
  shims: 0,
  joints: 0,
  findings: 0,
  closings: 0,
  photos: 0,
  owners: 0,
  customers: 0,
  declines: 0,
  moves: 0,
  halves: 0,
  meters: 0,
  workShares: 0,
  hoursSources: 0,
  others: 0,
};

/** Rows by sort. A size put right is counted as such alone. */
function countsOf(rows: readonly RowsOfEntry[]): EntryRows {
  const counts = { ...NONE };
  for (const { sort, rows: count } of rows) counts[sort as keyof EntryRows] += count;
  return { ...counts, sizes: counts.sizes - counts.sizesPutRight };
}
