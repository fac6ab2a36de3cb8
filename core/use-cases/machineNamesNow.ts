import { loadCalled, loadMachineNames } from '../record/loadMachines.ts';
import { type Context, keptInMemory, recordOf } from './context.ts';

export type MachineNames = ReturnType<typeof loadMachineNames>[number];

/** What every machine is called and whose it is today, by machine, in the order of the record. */
export const machineNamesNow = (context: Context): ReadonlyMap<number, MachineNames> =>
  keptInMemory(context, `names as of ${context.today()}`, () => byMachine(context, null));

/** The same of some machines, without the rest of the shop; those not on record are left out. */
export const namesOfSome = (context: Context, machineIds: readonly number[]): ReadonlyMap<number, MachineNames> =>
  byMachine(context, machineIds);

const byMachine = (context: Context, machineIds: readonly number[] | null) =>
  new Map(
    loadMachineNames(recordOf(context), context.today(), machineIds).map((named) => [named.machineId, named] as const),
  );

/** Every machine on record by what it is called alone, in the order of the record: what a list is put in order by. */
export const machinesCalled = (context: Context): ReadonlyMap<number, string> =>
  keptInMemory(context, 'machines called', () => new Map(loadCalled(recordOf(context))));
