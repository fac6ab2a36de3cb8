import { isMisread } from './misreadNames.ts';
import { type PlannedCustomer, type PlannedMachine, type Planning, sameName } from './plan.ts';
import type { RowOf } from './readFolder.ts';
import { type Line, remarkAt } from './remark.ts';

/** The record's machines, and those of machines.csv. */
export function planMachines(planning: Planning, rows: readonly RowOf<'machines.csv'>[]): void {
  const { plan, known, faults } = planning;
  plan.customers.push(...known.customers.map(({ id, name }) => ({ id, name })));
  for (const machine of known.life.machines) addMachine(planning, knownMachine(machine));
  const inFile = new Set<string>();
  for (const row of rows) {
    const name = row.machine.toLowerCase();
    if (inFile.has(name)) faults.push(remarkAt(row.line, 'machine', 'machine-twice', 'each machine once'));
    else if (machineCalled(planning, row.machine)) noteDifferences(planning, row);
    else addMachine(planning, newMachine(planning, row));
    inFile.add(name);
  }
}

const knownMachine = (life: PlannedMachine['life'] & { name: string }): PlannedMachine => ({
  id: life.machineId,
  key: life.machineId,
  name: life.name,
  customer: null,
  row: null,
  life,
  newDials: new Map(),
  assemblies: new Set(),
});

function newMachine(planning: Planning, row: RowOf<'machines.csv'>): PlannedMachine {
  const key = planning.nextKey();
  return {
    id: null,
    key,
    name: row.machine,
    customer: row.customer === '' ? null : customerCalled(planning, row.customer),
    row,
    life: {
      machineId: key,
      meterDigits: row.meter_digits,
      hoursBefore: row.hours_before,
      dialEvents: [],
      workShares: [{ from: null, share: row.work_share, workType: null }],
    },
    newDials: new Map(),
    assemblies: new Set(),
  };
}

function customerCalled({ plan }: Planning, name: string): PlannedCustomer {
  const known = plan.customers.find((customer) => sameName(customer.name, name));
  if (known) return known;
  const customer = { id: null, name };
  plan.customers.push(customer);
  return customer;
}

/** What the record says of a machine stays: a file does not overrule what somebody entered. */
function noteDifferences({ known, notes }: Planning, row: RowOf<'machines.csv'>): void {
  const there = known.machines.find(({ name }) => sameName(name, row.machine));
  if (!there) return;
  for (const column of ['make', 'model', 'serial'] as const) {
    if (row[column] !== '' && row[column] !== there[column])
      notes.push(remarkAt(row.line, column, 'kept-as-in-record', there[column] || 'nothing'));
  }
}

function addMachine({ plan, machineByName }: Planning, machine: PlannedMachine): void {
  plan.machines.push(machine);
  machineByName.set(machine.name.toLowerCase(), machine);
}

export const machineCalled = ({ machineByName }: Planning, name: string): PlannedMachine | undefined =>
  machineByName.get(name.toLowerCase());

/** The machine a row names; null, with a fault, when there is none of that name (with its own, when its row was misread). */
export function machineOfRow(planning: Planning, line: Line, column: string, name: string): PlannedMachine | null {
  const machine = machineCalled(planning, name);
  if (machine) return machine;
  if (isMisread(planning.misread, name)) return null;
  planning.faults.push(remarkAt(line, column, 'unknown-machine', 'a machine of machines.csv, or one on record'));
  return null;
}
