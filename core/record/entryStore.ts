import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import type { ReadableRecord } from './recordFile.ts';

/** Written beside an entry that was taken back: who did it, and when. It has no rows of its own. */
export const UNDO = 'entries/undoLast';
/** Written when one that was taken back is put in again; it has no rows of its own either. */
export const REDO = 'entries/redoLast';
const NOT_OF_ITSELF = `('${UNDO}', '${REDO}')`;
/** What was destroyed on request cannot be taken back; nothing entered before rests on it. */
export const ERASE = 'customer/erase';
/** Not acts of a person: what they laid down is the ground of the record. */
const LAID_DOWN = ['record/startEmpty', 'record/openDemo'];

export type EntryOnRecord = {
  id: number;
  madeAt: string;
  madeBy: string;
  what: string;
  undoneAt: string | null;
  undoneBy: string | null;
};

type Row = [number, string, string, string, string | null, string | null];
const entry = ([id, madeAt, madeBy, what, undoneAt, undoneBy]: Row): EntryOnRecord => ({
  id,
  madeAt,
  madeBy,
  what,
  undoneAt,
  undoneBy,
});
const SELECT = `SELECT e.id, e.made_at, e.made_by, e.what, e.undone_at,
  (SELECT u.made_by FROM entries u WHERE u.what = '${UNDO}' AND u.made_at = e.undone_at AND u.id > e.id ORDER BY u.id LIMIT 1)
  FROM entries e`;

/**
 * Entries, newest first. Of one that only took another back it is said at that other; where the other was put in again, both
 * stand as lines of their own.
 */
export const listEntries = (db: ReadableRecord, beforeId: number | null, limit: number): EntryOnRecord[] =>
  bulk<Row>(
    db,
    `${SELECT} WHERE (e.what <> '${UNDO}' OR NOT EXISTS (SELECT 1 FROM entries b WHERE b.undone_at = e.made_at))
       AND (@beforeId IS NULL OR e.id < @beforeId) ORDER BY e.id DESC LIMIT @limit`,
    { beforeId, limit },
  ).map(entry);

export const readEntry = (db: ReadableRecord, id: number): EntryOnRecord | null =>
  bulk<Row>(db, `${SELECT} WHERE e.id = @id`, { id }).map(entry)[0] ?? null;

/** Entries made through one operation since another was last made, newest first, undone ones left out. */
export const entriesSince = (db: ReadableRecord, what: string, since: string): EntryOnRecord[] =>
  bulk<Row>(
    db,
    `${SELECT} WHERE e.what = @what AND e.undone_at IS NULL
       AND e.id > COALESCE((SELECT max(s.id) FROM entries s WHERE s.what = @since AND s.undone_at IS NULL), 0)
     ORDER BY e.id DESC`,
    { what, since },
  ).map(entry);

/** The last entry that stands; null: what stands is the ground of the record, which is not taken back. */
export function lastUndoable(db: ReadableRecord): EntryOnRecord | null {
  const [last] = bulk<Row>(
    db,
    `${SELECT} WHERE e.what NOT IN ${NOT_OF_ITSELF} AND e.what <> '${ERASE}' AND e.undone_at IS NULL ORDER BY e.id DESC LIMIT 1`,
    {},
  ).map(entry);
  return last && !LAID_DOWN.includes(last.what) ? last : null;
}

/**
 * The entry taken back that can be put in again: of those taken back since anything was entered, the first one entered,
 * which was taken back last. Null: something was entered since.
 */
export const nextRedoable = (db: ReadableRecord): EntryOnRecord | null =>
  bulk<Row>(
    db,
    `${SELECT} JOIN entries u ON u.what = '${UNDO}' AND u.made_at = e.undone_at AND u.id > e.id
     WHERE u.id > (SELECT max(r.id) FROM entries r WHERE r.what NOT IN ${NOT_OF_ITSELF}) ORDER BY e.id LIMIT 1`,
    {},
  ).map(entry)[0] ?? null;

/** Whether anybody entered anything, taken back or not, typed at a sheet or made a slip. */
export const holdsWork = (db: ReadableRecord): boolean =>
  bulk<[number]>(
    db,
    `SELECT EXISTS (SELECT 1 FROM entries WHERE what NOT IN (SELECT value FROM json_each(@laidDown)))
       OR EXISTS (SELECT 1 FROM slips) OR EXISTS (SELECT 1 FROM drafts)`,
    { laidDown: JSON.stringify(LAID_DOWN) },
  )[0]?.[0] === 1;

export type RowsOfEntry = {
  entryId: number;
  sort: string;
  machineId: number | null;
  rows: number;
  fromOn: Day | null;
  toOn: Day | null;
};

/** The machine that last had the assembly of the finding `f`. */
const ON_ASSEMBLY_OF_POSITION =
  '(SELECT s.machine_id FROM sittings s JOIN positions p ON p.assembly_id = s.assembly_id WHERE p.id = r.position_id AND s.machine_id IS NOT NULL ORDER BY s.id DESC LIMIT 1)';
const ON_ASSEMBLY_OF_FINDING =
  '(SELECT s.machine_id FROM sittings s WHERE s.assembly_id = f.assembly_id AND s.machine_id IS NOT NULL ORDER BY s.id DESC LIMIT 1)';

/** Tables whose rows belong to entries, with the machine and the day its rows are about; what is not here is among the others. */
const SORTS: readonly (readonly [sort: string, from: string, machine: string, day: string])[] = [
  ['machines', 'machines r', 'r.id', 'NULL'],
  ['dialReadings', 'dial_readings r', 'r.machine_id', 'r.taken_on'],
  ['assemblies', 'assemblies r', 'NULL', 'NULL'],
  ['points', 'measuring_points r', 'NULL', 'NULL'],
  [
    'limits',
    'point_limits r JOIN measuring_points p ON p.id = r.point_id JOIN positions o ON o.id = p.position_id',
    '(SELECT s.machine_id FROM sittings s WHERE s.assembly_id = o.assembly_id AND s.machine_id IS NOT NULL ORDER BY s.id DESC LIMIT 1)',
    'r.from_on',
  ],
  ['stripDowns', 'strip_downs r', 'r.machine_id', 'r.taken_on'],
  ['joints', 'joints r', 'NULL', 'NULL'],
  [
    'findings',
    'findings r',
    '(SELECT s.machine_id FROM sittings s WHERE s.assembly_id = r.assembly_id AND s.machine_id IS NOT NULL ORDER BY s.id DESC LIMIT 1)',
    'r.taken_on',
  ],
  ['closings', 'finding_closings r JOIN findings f ON f.id = r.finding_id', ON_ASSEMBLY_OF_FINDING, 'r.closed_on'],
  ['photos', 'finding_photos r JOIN findings f ON f.id = r.finding_id', ON_ASSEMBLY_OF_FINDING, 'f.taken_on'],
  ['declines', 'finding_declines r JOIN findings f ON f.id = r.finding_id', ON_ASSEMBLY_OF_FINDING, 'r.said_on'],
  ['moves', 'sittings r', 'r.machine_id', 'r.from_on'],
  [
    'halves',
    'position_sittings r',
    '(SELECT s.machine_id FROM sittings s WHERE s.assembly_id = r.assembly_id AND s.machine_id IS NOT NULL ORDER BY s.id DESC LIMIT 1)',
    'r.from_on',
  ],
  ['meters', 'meters r', 'r.machine_id', 'NULL'],
  ['workShares', 'work_shares r', 'r.machine_id', 'r.from_on'],
  ['hoursSources', 'hours_sources r', 'r.machine_id', 'r.from_on'],
  ['others', 'repair_facts r', ON_ASSEMBLY_OF_POSITION, 'NULL'],
  ['others', 'repair_choices r', ON_ASSEMBLY_OF_POSITION, 'r.chosen_on'],
  [
    'others',
    'slide_facts r',
    '(SELECT s.machine_id FROM sittings s WHERE s.assembly_id = r.assembly_id AND s.machine_id IS NOT NULL ORDER BY s.id DESC LIMIT 1)',
    'NULL',
  ],
  ['others', 'rebuild_photos r JOIN rebuilds j ON j.id = r.rebuild_id', 'j.machine_id', 'j.taken_in_on'],
  ['owners', 'ownerships r', 'r.machine_id', 'r.from_on'],
  ['customers', 'customer_details r', 'NULL', 'NULL'],
  ['customers', 'customer_merges r', 'NULL', 'NULL'],
  ['customers', 'customer_erasures r', 'NULL', 'NULL'],
];

/** The same of rows that are part of a visit, whose machine and day they have; of a table all rows or some. */
const IN_VISITS: readonly (readonly [sort: string, table: string, some: string])[] = [
  ['sizes', 'sizes', ''],
  ['sizesPutRight', 'sizes', 'AND chain_id IS NOT NULL'],
  ['shims', 'shims', ''],
  ['renewals', 'renewals', ''],
];

/** Rows that come in only with others which the history counts: positions with their points, remarks with what was brought in. */
const TOLD_BY_OTHERS = ['positions', 'import_remarks'];

/** Sorts of every table whose rows belong to entries; one with no sort of its own yet is counted among the others. */
function sortsOf({ sqlite }: ReadableRecord): (typeof SORTS)[number][] {
  const told = new Set([
    ...TOLD_BY_OTHERS,
    ...SORTS.map(([, from]) => from.split(' ')[0]!),
    ...IN_VISITS.map(([, table]) => table),
  ]);
  const columns = sqlite
    .prepare(
      `SELECT t.name, max(c.name = 'machine_id') FROM sqlite_schema t, pragma_table_info(t.name) c
       WHERE t.type = 'table' GROUP BY t.name HAVING max(c.name = 'entry_id') ORDER BY t.name`,
    )
    .raw()
    .all() as [name: string, hasMachine: number][];
  const others = columns
    .filter(([name]) => !told.has(name))
    .map(([name, hasMachine]) => ['others', `${name} r`, hasMachine ? 'r.machine_id' : 'NULL', 'NULL'] as const);
  return [...SORTS, ...others];
}

/** The entries asked about. */
const OF_THEM = 'entry_id IN (SELECT value FROM json_each(@ids))';

/**
 * What each of the entries named brought, as SQL. Each table with many rows is read by its index of entries. Rows of visits are
 * counted by visit first: an import has a million sizes, and a tenth as many visits.
 */
export const rowsOfEntriesSql = (db: ReadableRecord): string =>
  [
    ...sortsOf(db).map(
      ([sort, from, machine, day]) =>
        `SELECT r.entry_id, '${sort}', ${machine} AS machine_id, count(*), min(${day}), max(${day}) FROM ${from}
         WHERE r.${OF_THEM} GROUP BY 1, 2, 3`,
    ),
    ...IN_VISITS.map(
      ([sort, table, some]) =>
        `SELECT r.entry_id, '${sort}', v.machine_id, sum(r.n), min(v.taken_on), max(v.taken_on)
         FROM (SELECT entry_id, strip_down_id, count(*) AS n FROM ${table} WHERE ${OF_THEM} ${some} GROUP BY 1, 2) r
         JOIN strip_downs v ON v.id = r.strip_down_id GROUP BY 1, 2, 3`,
    ),
  ].join('\nUNION ALL\n');

/** What each of the entries named brought: how many rows of a sort, about which machine, of which days. */
export const rowsOfEntries = (db: ReadableRecord, entryIds: readonly number[]): RowsOfEntry[] =>
  bulk<[number, string, number | null, number, Day | null, Day | null]>(db, rowsOfEntriesSql(db), {
    ids: JSON.stringify(entryIds),
  }).map(([entryId, sort, machineId, rows, fromOn, toOn]) => ({ entryId, sort, machineId, rows, fromOn, toOn }));

/** The one strip-down each of the entries brought; those that brought none or several are left out. */
export const stripDownOfEntries = (db: ReadableRecord, entryIds: readonly number[]): Map<number, number> =>
  new Map(
    bulk<[number, number]>(
      db,
      `SELECT entry_id, min(id) FROM strip_downs WHERE entry_id IN (SELECT value FROM json_each(@ids))
       GROUP BY entry_id HAVING count(*) = 1`,
      { ids: JSON.stringify(entryIds) },
    ),
  );

/** Customers the entries named are about. */
export const customersOfEntries = (
  db: ReadableRecord,
  entryIds: readonly number[],
): [entryId: number, customerId: number][] =>
  bulk(
    db,
    `SELECT entry_id, customer_id FROM customer_details WHERE entry_id IN (SELECT value FROM json_each(@ids))
     UNION SELECT entry_id, customer_id FROM customer_merges WHERE entry_id IN (SELECT value FROM json_each(@ids))
     UNION SELECT entry_id, into_customer_id FROM customer_merges WHERE entry_id IN (SELECT value FROM json_each(@ids))
     UNION SELECT entry_id, customer_id FROM customer_erasures WHERE entry_id IN (SELECT value FROM json_each(@ids))
     UNION SELECT entry_id, customer_id FROM contacts WHERE entry_id IN (SELECT value FROM json_each(@ids))
     UNION SELECT entry_id, customer_id FROM contact_terms WHERE entry_id IN (SELECT value FROM json_each(@ids))
     UNION SELECT entry_id, customer_id FROM quiet_periods WHERE entry_id IN (SELECT value FROM json_each(@ids))
     UNION SELECT entry_id, customer_id FROM ownerships WHERE entry_id IN (SELECT value FROM json_each(@ids))`,
    { ids: JSON.stringify(entryIds) },
  );

/** Id of the last entry made; it rises whenever something is entered or taken back. */
export const lastEntryId = (db: ReadableRecord): number =>
  bulk<[number]>(db, 'SELECT coalesce(max(id), 0) FROM entries', {})[0]?.[0] ?? 0;
