import type { Finding, MachineLine } from '#core/contract/machine.ts';

export type Group = MachineLine['group'];

/** In the order of what is to be done. */
const GROUPS: readonly Group[] = ['do-not-use', 'may-be-passed', 'this-winter', 'later', 'no-forecast'];

/** What stands in the list from top to bottom: a head over each group that has machines, and the machines. */
export type ListItem =
  | { kind: 'head'; group: Group; count: number }
  | { kind: 'machine'; line: MachineLine; at: number };

/**
 * The list under its heads. Within a group the order is the one given, soonest first.
 * `at` counts machines from 0, heads left out: the row the arrow keys stand on.
 */
export function listItems(machines: readonly MachineLine[]): ListItem[] {
  let at = 0;
  return GROUPS.flatMap((group): ListItem[] => {
    const lines = machines.filter((line) => line.group === group);
    if (lines.length === 0) return [];
    return [
      { kind: 'head', group, count: lines.length },
      ...lines.map((line): ListItem => ({ kind: 'machine', line, at: at++ })),
    ];
  });
}

/** Machines in the order they stand under their heads. */
export const machinesOf = (items: readonly ListItem[]): MachineLine[] =>
  items.flatMap((item) => (item.kind === 'machine' ? [item.line] : []));

/** Name of the winter after the one being planned: the blue line stands at its start. Null: no machine's use is known. */
export function winterAfter(machines: readonly MachineLine[]): string | null {
  for (const { winters, planWinter } of machines) {
    const next = winters[winters.findIndex((winter) => winter.name === planWinter) + 1];
    if (next) return next.name;
  }
  return null;
}

/** The finding that stands in the forecast's place, the oldest where there are several. */
export const stopOf = (line: MachineLine): Finding | null =>
  line.openFindings.find((finding) => finding.severity === 'do-not-use') ?? null;

/** Machines that are this winter's work: those that must not be used, may be past a limit, or reach one before the next. */
export const forThisWinter = (machines: readonly MachineLine[]): number =>
  machines.filter(({ group }) => group === 'do-not-use' || group === 'may-be-passed' || group === 'this-winter').length;

/** Every word typed stands somewhere in the machine's name, make, serial, assemblies, or its owner's name or place. */
export function filterMachines(machines: readonly MachineLine[], typed: string): MachineLine[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  if (words.length === 0) return [...machines];
  return machines.filter((line) => {
    const hay = plain(
      [line.name, line.makeModel, line.serial, line.customer, line.place, ...line.assemblies].join('\n'),
    );
    return words.every((word) => hay.includes(word));
  });
}

/** Small letters without their accents: "Ås" is found by "as". */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '');
