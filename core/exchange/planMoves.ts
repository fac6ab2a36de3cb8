import { rowKey, takeKnown } from './knownRows.ts';
import type { PlannedAssembly, Planning } from './plan.ts';
import { assemblyOfRow, sittingOn } from './planAssemblies.ts';
import { machineOfRow } from './planMachines.ts';
import type { RowOf } from './readFolder.ts';
import { remarkAt } from './remark.ts';

/** The moves of moves.csv, in order of day: each needs where the one before left the assembly. */
export function planMoves(planning: Planning, rows: readonly RowOf<'moves.csv'>[]): void {
  const byDay = [...rows].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.line.row - b.line.row));
  for (const row of byDay) planMove(planning, row);
}

function planMove(planning: Planning, row: RowOf<'moves.csv'>): void {
  const { faults, known, notes } = planning;
  const machine = machineOfRow(planning, row.line, 'machine', row.machine);
  const to = row.to_machine === null ? null : machineOfRow(planning, row.line, 'to_machine', row.to_machine);
  if (!machine || (row.to_machine !== null && !to)) return;
  const assembly = movingAssembly(planning, row, machine);
  if (!assembly) return;
  if (takeKnown(known.rows.moves, rowKey(assembly.key, row.date, to?.key ?? null)) !== undefined) return;

  const left = sittingOn(assembly, row.date);
  if (left && left.machine === to) {
    const where = to ? `another machine than ${to.name}, where it sits` : 'a machine: it lies on the shelf already';
    faults.push(remarkAt(row.line, 'to_machine', 'already-there', where));
    return;
  }
  if (row.dial_hours !== null && !left?.machine) {
    notes.push(remarkAt(row.line, 'dial_hours', 'dial-on-shelf', 'nothing: the assembly came off the shelf'));
  }
  if (row.to_dial_hours !== null && !to) {
    notes.push(remarkAt(row.line, 'to_dial_hours', 'dial-on-shelf', 'nothing: the assembly went to the shelf'));
  }
  assembly.sittings.push({
    machineId: to?.key ?? null,
    from: row.date,
    dialHours: left?.machine ? row.dial_hours : null,
    toDialHours: to ? row.to_dial_hours : null,
    machine: to,
    move: row,
    isNew: true,
  });
  to?.assemblies.add(assembly);
  assembly.sittings.sort((a, b) =>
    a.from === null ? -1 : b.from === null ? 1 : a.from < b.from ? -1 : a.from > b.from ? 1 : 0,
  );
}

/** As in sizes.csv; an assembly on the shelf also goes by the machine it came off. */
function movingAssembly(
  planning: Planning,
  row: RowOf<'moves.csv'>,
  machine: NonNullable<ReturnType<typeof machineOfRow>>,
): PlannedAssembly | null {
  const shelved = [...machine.assemblies].filter((assembly) => {
    const on = sittingOn(assembly, row.date);
    if (!on || on.machine || assembly.name.toLowerCase() !== row.assembly.toLowerCase()) return false;
    return (
      assembly.sittings.findLast((sitting) => sitting.machine && (sitting.from ?? '') <= row.date)?.machine === machine
    );
  });
  if (row.to_machine !== null && shelved.length === 1) return shelved[0] ?? null;
  return assemblyOfRow(planning, row.line, machine, row.assembly, row.date, true);
}
