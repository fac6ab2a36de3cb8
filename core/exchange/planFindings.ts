import { rowKey, takeKnown } from './knownRows.ts';
import type { Planning } from './plan.ts';
import { assemblyOfRow, newPosition, positionCalled } from './planAssemblies.ts';
import { machineOfRow } from './planMachines.ts';
import type { RowOf } from './readFolder.ts';
import { remarkAt } from './remark.ts';

export function planFindings(planning: Planning, rows: readonly RowOf<'findings.csv'>[]): void {
  for (const row of rows) planFinding(planning, row);
}

function planFinding(planning: Planning, row: RowOf<'findings.csv'>): void {
  const machine = machineOfRow(planning, row.line, 'machine', row.machine);
  const assembly = machine && assemblyOfRow(planning, row.line, machine, row.assembly, row.date);
  if (!assembly) return;
  if (row.closed_date !== null && row.closed_date < row.date) {
    planning.faults.push(remarkAt(row.line, 'closed_date', 'closed-before-found', `a day from ${row.date} on`));
    return;
  }
  if (row.closed_date === null && row.outcome !== null) {
    planning.faults.push(
      remarkAt(row.line, 'closed_date', 'cell-empty', 'the day it was closed, as there is an outcome'),
    );
    return;
  }
  let position = row.position === null ? null : (positionCalled(assembly, row.position, row.date) ?? null);
  if (row.position !== null && !position) {
    // things are seen at places where nothing is measured; a slip of the pen would look the same, so it is told
    planning.notes.push(remarkAt(row.line, 'position', 'position-added', 'a position of points.csv, or a new one'));
    position = newPosition(assembly, row.position, false);
  }
  const key = rowKey(assembly.key, position?.id ?? null, row.date, row.finding, row.severity, row.note);
  const known = position && position.id === null ? undefined : takeKnown(planning.known.rows.findings, key);
  if (known && (known.closed || row.closed_date === null)) return;
  planning.plan.findings.push({ id: known?.id ?? null, assembly, position, row, closes: row.closed_date !== null });
}
