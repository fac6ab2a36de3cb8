import type { Finding, FindingKind, Severity } from '../shop/finding.ts';
import type { Day } from '../units/day.ts';
import { ofAssemblies } from './boundMachines.ts';
import { bound, bulk, type Horizon } from './bulk.ts';
import { chainOf, counting } from './counting.ts';
import { machineOf, type Sittings } from './loadPoints.ts';
import type { ReadableRecord } from './recordFile.ts';

/** Findings up to the as-of day; a finding goes with its position and its assembly to the machine that has them now. */
export function loadFindings(db: ReadableRecord, horizon: Horizon, sittings: Sittings): Finding[] {
  type Closing = [findingId: number, closedOn: Day, outcome: string];
  const closings = new Map(
    bulk<Closing>(
      db,
      `SELECT c.finding_id, c.closed_on, c.outcome FROM finding_closings c
       WHERE c.closed_on <= @asOf AND ${counting('finding_closings', 'c')} ORDER BY c.id DESC`,
      bound(horizon),
    ).map(([findingId, closedOn, outcome]) => [findingId, { closedOn, outcome }]),
  );
  type Refused = [findingId: number, saidOn: Day, saidBy: string, words: string];
  const declines = new Map(
    bulk<Refused>(
      db,
      `SELECT d.finding_id, d.said_on, d.said_by, d.words FROM finding_declines d
       WHERE d.said_on <= @asOf AND ${counting('finding_declines', 'd')} ORDER BY d.said_on, ${chainOf('d')}`,
      bound(horizon),
    ).map(([findingId, saidOn, saidBy, words]) => [findingId, { saidOn, saidBy, words }]),
  );
  type Row = [
    id: number,
    assemblyId: number,
    positionId: number | null,
    takenOn: Day,
    kind: FindingKind,
    severity: Severity,
    note: string,
  ];
  const rows = bulk<Row>(
    db,
    `SELECT ${chainOf('f')}, f.assembly_id, f.position_id, f.taken_on, f.kind, f.severity, f.note FROM findings f
     WHERE f.taken_on <= @asOf AND ${counting('findings', 'f')} ${ofAssemblies(horizon.within, 'f.assembly_id')}
     ORDER BY f.taken_on, ${chainOf('f')}`,
    bound(horizon),
  );
  return rows.flatMap(([id, foundOn, positionId, takenOn, kind, severity, note]) => {
    const moved = positionId === null ? undefined : sittings.ofPosition.get(positionId);
    const assemblyId = moved?.assemblyId ?? foundOn;
    const machineId = machineOf(moved?.sittings ?? sittings.ofAssembly.get(assemblyId) ?? []);
    if (machineId === null) return [];
    const closing = closings.get(id);
    const { closedOn, outcome } = closing ?? { closedOn: null, outcome: null };
    const declined = declines.get(id) ?? null;
    return [{ id, machineId, assemblyId, positionId, takenOn, kind, severity, note, closedOn, outcome, declined }];
  });
}
