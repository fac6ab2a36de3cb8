import type { FindingKind, Severity } from '../shop/finding.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, NOW_KNOWN } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { findingClosings, findings } from './schema.ts';

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
     WHERE (@assemblyId IS NULL OR f.assembly_id = @assemblyId) AND ${counting('findings', 'f')}
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
