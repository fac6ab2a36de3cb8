import type { FindingKind, Severity } from '../shop/finding.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { findingClosings, findingDeclines, findings } from './schema.ts';
import { strikeOut } from './supersede.ts';

export type FindingRow = {
  id: number;
  assemblyId: number;
  positionId: number | null;
  takenOn: Day;
  kind: FindingKind;
  severity: Severity;
  note: string;
  foundBy: string;
  closedOn: Day | null;
  outcome: string | null;
};

type Row = [number, number, number | null, Day, FindingKind, Severity, string, string, Day | null, string | null];

/** Findings of an assembly, of all when none is named; with what became of them. */
export const findingsOf = (db: ReadableRecord, assemblyId: number | null = null): FindingRow[] =>
  bulk<Row>(
    db,
    `SELECT ${chainOf('f')}, f.assembly_id, f.position_id, f.taken_on, f.kind, f.severity, f.note, f.found_by, c.closed_on, c.outcome
     FROM findings f LEFT JOIN finding_closings c ON c.id = (
       SELECT min(k.id) FROM finding_closings k WHERE k.finding_id = ${chainOf('f')} AND ${counting('finding_closings', 'k')})
     WHERE ${assemblyId === null ? '' : 'f.assembly_id = @assemblyId AND'} ${counting('findings', 'f')}
     ORDER BY f.taken_on, ${chainOf('f')}`,
    { assemblyId, knownAt: NOW_KNOWN },
  ).map((row) => ({
    id: row[0],
    assemblyId: row[1],
    positionId: row[2],
    takenOn: row[3],
    kind: row[4],
    severity: row[5],
    note: row[6],
    foundBy: row[7],
    closedOn: row[8],
    outcome: row[9],
  }));

/** The entry that brought each finding, by its id. */
export const entriesOfFindings = (db: ReadableRecord): Map<number, number> =>
  new Map(bulk<[number, number]>(db, 'SELECT id, entry_id FROM findings WHERE chain_id IS NULL', {}));

/** Machines that the assemblies and positions with open findings that forbid use ever sat on. */
export const machinesWithStops = (db: ReadableRecord, asOf: Day): number[] =>
  bulk<[number]>(
    db,
    `SELECT DISTINCT y.machine_id FROM findings f
     JOIN sittings y ON y.assembly_id = f.assembly_id
       OR y.assembly_id IN (SELECT h.assembly_id FROM position_sittings h WHERE h.position_id = f.position_id)
     WHERE f.severity = 'do-not-use' AND y.machine_id IS NOT NULL AND ${counting('findings', 'f')} AND NOT EXISTS (
       SELECT 1 FROM finding_closings k
       WHERE k.finding_id = ${chainOf('f')} AND k.closed_on <= @asOf AND ${counting('finding_closings', 'k')})`,
    { asOf, knownAt: NOW_KNOWN },
  ).map(([machineId]) => machineId);

export const insertFinding = (
  w: WritableRecord,
  entryId: number,
  row: Omit<FindingRow, 'id' | 'closedOn' | 'outcome'> & { stripDownId: number | null },
): number => insertInto(w, findings, { ...row, entryId });

export const insertClosing = (
  w: WritableRecord,
  entryId: number,
  row: { findingId: number; closedOn: Day; outcome: string; closedBy: string },
): number => insertInto(w, findingClosings, { ...row, entryId });

export const insertDecline = (
  w: WritableRecord,
  entryId: number,
  row: { findingId: number; saidOn: Day; saidBy: string; words: string },
): number => insertInto(w, findingDeclines, { ...row, entryId });

export type DeclineRow = {
  id: number;
  findingId: number;
  saidOn: Day;
  saidBy: string;
  words: string;
  struck: boolean;
  reason: string;
};

/** What was said by customers who refused, struck sayings too, oldest first; of all findings when none is named. */
export const declinesOf = (db: ReadableRecord, findingIds: readonly number[] | null = null): DeclineRow[] =>
  bulk<[number, number, Day, string, string, number, string]>(
    db,
    `SELECT ${chainOf('d')}, d.finding_id, d.said_on, d.said_by, d.words, d.struck, d.reason FROM finding_declines d
     WHERE (@ids IS NULL OR d.finding_id IN (SELECT value FROM json_each(@ids))) AND ${standing('d')}
       AND ${isLastOfChain('finding_declines', 'd')}
     ORDER BY d.said_on, ${chainOf('d')}`,
    { ids: findingIds && JSON.stringify(findingIds), knownAt: NOW_KNOWN },
  ).map(([id, findingId, saidOn, saidBy, words, struck, reason]) => ({
    id,
    findingId,
    saidOn,
    saidBy,
    words,
    struck: struck === 1,
    reason,
  }));

/** Strikes what was said. @throws RefusedError already-put-right */
export const strikeDecline = (w: WritableRecord, entryId: number, declineId: number, reason: string): number =>
  strikeOut(w, findingDeclines, declineId, entryId, reason);
