import { loadMachineNames } from '../record/loadMachines.ts';
import { type Context, keptInMemory, recordOf } from './context.ts';

export type MachineNames = ReturnType<typeof loadMachineNames>[number];

/** What every machine is called and whose it is today, by machine, in the order of the record. */
export const machineNamesNow = (context: Context): ReadonlyMap<number, MachineNames> =>
  keptInMemory(context, `names as of ${context.today()}`, () => {
    const names = loadMachineNames(recordOf(context), context.today());
    return new Map(names.map((named) => [named.machineId, named]));
  });
