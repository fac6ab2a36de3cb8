import type { Finding, MachineLine, MachinesOrder } from '#core/contract/machine.ts';

export type Group = MachineLine['group'];

/** What stands in the list from top to bottom: a head over each group that has machines, and the machines. */
export type ListItem =
  | { kind: 'head'; group: Group; count: number }
  | { kind: 'machine'; machineId: number; at: number };

/** The list under its heads. `at` counts machines from 0, heads left out: the row the arrow keys stand on. */
export function listItems(groups: MachinesOrder['groups']): ListItem[] {
  let at = 0;
  return groups.flatMap(({ group, machineIds }): ListItem[] => [
    { kind: 'head', group, count: machineIds.length },
    ...machineIds.map((machineId): ListItem => ({ kind: 'machine', machineId, at: at++ })),
  ]);
}

/** Machines in the order they stand under their heads. */
export const machinesOf = (groups: MachinesOrder['groups']): number[] => groups.flatMap(({ machineIds }) => machineIds);

/** The finding that stands in the forecast's place, the oldest where there are several. */
export const stopOf = (line: MachineLine): Finding | null =>
  line.openFindings.find((finding) => finding.severity === 'do-not-use') ?? null;
