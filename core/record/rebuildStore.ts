import { sql } from 'drizzle-orm';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { rebuildLines, rebuildSteps, rebuilds, shopRates } from './schema.ts';

/** A job as it stands: of its chain the last row. `id` is the chain's first row, `rowId` the one to be put right. */
export type RebuildRow = {
  id: number;
  rowId: number;
  number: string;
  machineId: number;
  customerId: number | null;
  takenInOn: Day;
  wantedBy: Day | null;
  complaint: string;
  dialHours: number | null;
  comebackOfId: number | null;
  whereabouts: Whereabouts;
  whereaboutsNote: string;
};
export type Whereabouts = 'not-said' | 'in-the-yard' | 'at-the-farm' | 'elsewhere';
export type LineStands = 'proposed' | 'agreed' | 'declined';
export type RebuildLineRow = {
  id: number;
  rowId: number;
  rebuildId: number;
  positionId: number | null;
  /** as the contract's work of a line */
  work: unknown;
  stands: LineStands;
  declinedWords: string;
};
export type RebuildStepKind = 'quote' | 'approval' | 'bored' | 'check' | 'handed-over';
export type RebuildStepRow = {
  id: number;
  rebuildId: number;
  lineId: number | null;
  kind: RebuildStepKind;
  saidOn: Day;
  saidBy: string;
  facts: unknown;
};

type Row = [
  ...[id: number, rowId: number, number: string, machineId: number, customerId: number | null],
  ...[takenInOn: Day, wantedBy: Day | null, complaint: string, dialHours: number | null, comebackOfId: number | null],
  ...[whereabouts: Whereabouts, whereaboutsNote: string],
];

/** Every job, by number. */
export const listRebuilds = (db: ReadableRecord): RebuildRow[] =>
  bulk<Row>(
    db,
    `SELECT ${chainOf('r')}, r.id, r.number, r.machine_id, r.customer_id, r.taken_in_on, r.wanted_by, r.complaint, r.dial_hours,
       r.comeback_of_id, r.whereabouts, r.whereabouts_note
     FROM rebuilds r WHERE ${counting('rebuilds', 'r')} ORDER BY r.number, ${chainOf('r')}`,
    { knownAt: NOW_KNOWN },
  ).map(([id, rowId, number, machineId, customerId, takenInOn, wantedBy, complaint, dialHours, ...more]) => {
    const [comebackOfId, whereabouts, whereaboutsNote] = more;
    return {
      ...{ id, rowId, number, machineId, customerId, takenInOn, wantedBy, complaint, dialHours },
      ...{ comebackOfId, whereabouts, whereaboutsNote },
    };
  });

/** Lines of work of one job, or of all when none is named, in the order they were put on. */
export const rebuildLinesOf = (db: ReadableRecord, rebuildId: number | null = null): RebuildLineRow[] =>
  bulk<[number, number, number, number | null, string, LineStands, string]>(
    db,
    `SELECT ${chainOf('l')}, l.id, l.rebuild_id, l.position_id, l.work, l.stands, l.declined_words FROM rebuild_lines l
     WHERE ${rebuildId === null ? '' : 'l.rebuild_id = @rebuildId AND'} ${counting('rebuild_lines', 'l')} ORDER BY ${chainOf('l')}`,
    { rebuildId, knownAt: NOW_KNOWN },
  ).map(([id, rowId, ofRebuild, positionId, work, stands, declinedWords]) => ({
    ...{ id, rowId, rebuildId: ofRebuild, positionId, work: JSON.parse(work), stands, declinedWords },
  }));

/** What was done on a job besides its lines, in order: quotes, approvals, sizes bored, checks, hand-over. */
export const rebuildStepsOf = (db: ReadableRecord, rebuildId: number | null = null): RebuildStepRow[] =>
  bulk<[number, number, number | null, RebuildStepKind, Day, string, string]>(
    db,
    `SELECT s.id, s.rebuild_id, s.line_id, s.kind, s.said_on, s.said_by, s.facts FROM rebuild_steps s
     WHERE ${rebuildId === null ? '' : 's.rebuild_id = @rebuildId AND'} ${standing('s')} ORDER BY s.id`,
    { rebuildId, knownAt: NOW_KNOWN },
  ).map(([id, ofRebuild, lineId, kind, saidOn, saidBy, facts]) => ({
    ...{ id, rebuildId: ofRebuild, lineId, kind, saidOn, saidBy, facts: JSON.parse(facts) },
  }));

/** Jobs are numbered through the year they are taken in: "J26-014". Numbers of jobs taken back are not used again. */
export function nextRebuildNumber(db: ReadableRecord, takenInOn: Day): string {
  const year = takenInOn.slice(2, 4);
  const last = db.read
    .select({ last: sql<number | null>`max(CAST(substr(number, 5) AS INTEGER))` })
    .from(rebuilds)
    .where(sql`number LIKE ${`J${year}-%`}`)
    .get()?.last;
  return `J${year}-${String((last ?? 0) + 1).padStart(3, '0')}`;
}

export const insertRebuild = (w: WritableRecord, entryId: number, row: Omit<RebuildRow, 'id' | 'rowId'>): number =>
  insertInto(w, rebuilds, { ...row, entryId });

export const insertRebuildLine = (
  w: WritableRecord,
  entryId: number,
  row: Pick<RebuildLineRow, 'rebuildId' | 'positionId' | 'work'> & { stands?: LineStands },
): number => insertInto(w, rebuildLines, { stands: 'proposed', ...row, declinedWords: '', entryId });

export const insertRebuildStep = (w: WritableRecord, entryId: number, row: Omit<RebuildStepRow, 'id'>): number =>
  insertInto(w, rebuildSteps, { ...row, entryId });

export type ShopRates = { currency: string; hourPrice: number; stripAndReportPrice: number };

/** The shop's own rates as entered last; null: none yet. */
export const readRates = (db: ReadableRecord): ShopRates | null =>
  bulk<[string, number, number]>(
    db,
    `SELECT r.currency, r.hour_price, r.strip_and_report_price FROM shop_rates r WHERE ${standing('r')} ORDER BY r.id DESC LIMIT 1`,
    { knownAt: NOW_KNOWN },
  ).map(([currency, hourPrice, stripAndReportPrice]) => ({ currency, hourPrice, stripAndReportPrice }))[0] ?? null;

export const saveRates = (w: WritableRecord, entryId: number, rates: ShopRates): number =>
  insertInto(w, shopRates, { ...rates, entryId });
