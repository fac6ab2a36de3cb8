import type { machinesLines, machinesList, machinesNames, machinesOrder } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { keptTexts, type Placed } from '../record/machineForecastStore.ts';
import { readSettings } from '../record/settingsStore.ts';
import type { ListGroup } from '../shop/role.ts';
import { wintersFrom } from '../shop/winter.ts';
import { type Context, keptInMemory, recordOf } from './context.ts';
import { type ForecastsStanding, forecastsInTurn, forecastsStanding } from './forecastsStanding.ts';
import type { HeldOff } from './jobs/jobs.ts';
import { listRange } from './listRange.ts';
import { inListOrder } from './machineLine.ts';
import { machineNamesNow, machinesCalled } from './machineNamesNow.ts';

/** Every line in one reply, as the command line prints it: a window asks for the order, and for the lines in sight. */
export const machinesListHandler: Handler<typeof machinesList, Context> = async (context, { atOnce }) => {
  const standing = await forecastsInTurn(context, atOnce);
  const { asOf, learning, forecasting } = standing;
  const machines = standing.lines(inOrder(context, standing).flatMap(({ machines }) => idsOf(machines)));
  return { asOf, machines, learning, forecasting: runningOf(forecasting) };
};

export const machinesOrderHandler: Handler<typeof machinesOrder, Context> = async (context, { find, atOnce }) => {
  const standing = await forecastsInTurn(context, atOnce);
  const groups = inOrder(context, standing);
  const all = groups.flatMap(({ machines }) => machines);
  const found = foundBy(context, find);
  const shown = groups.map(({ group, machines }) => ({
    group,
    machineIds: idsOf(found === null ? machines : machines.filter(({ machineId }) => found.has(machineId))),
  }));
  const { asOf, fromPriors, forecasting, older } = standing;
  const hoursKnown = all.some(({ planLineHours }) => planLineHours !== null);
  return {
    ...{ asOf, fromPriors, older },
    forecasting: runningOf(forecasting),
    heldOff: isHeldOff(forecasting) ? forecasting : null,
    count: all.length,
    thisWinter: groups.reduce((count, { group, machines }) => count + (NOT_YET.has(group) ? 0 : machines.length), 0),
    winterAfter: hoursKnown ? (wintersFrom(readSettings(recordOf(context)), asOf, 2)[1]?.name ?? null) : null,
    range: listRange(all),
    groups: shown.filter(({ machineIds }) => machineIds.length > 0),
  };
};

type Beside = ForecastsStanding['forecasting'];
const isHeldOff = (its: Beside): its is HeldOff => its !== null && its !== 'waiting' && 'fault' in its;
const runningOf = (its: Beside) => (its === null || its === 'waiting' || isHeldOff(its) ? null : its);

const idsOf = (machines: readonly Placed[]): number[] => machines.map(({ machineId }) => machineId);
const NOT_YET: ReadonlySet<ListGroup> = new Set(['later', 'no-forecast']);

export const machinesLinesHandler: Handler<typeof machinesLines, Context> = (context, { machineIds }) => ({
  lines: forecastsStanding(context, true, machineIds).lines(machineIds),
});

/** By name, as people look for them. */
export const machinesNamesHandler: Handler<typeof machinesNames, Context> = (context) => ({
  machines: keptInMemory(context, `names in order as of ${context.today()}`, () =>
    [...machineNamesNow(context).values()].sort(
      (a, b) => ALPHABET.compare(a.name, b.name) || a.machineId - b.machineId,
    ),
  ),
});
const ALPHABET = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Machines on record as they stand in the list, group by group; those never forecast come last. */
function inOrder(context: Context, { places, never }: ForecastsStanding): ReturnType<typeof inListOrder> {
  let names: ReturnType<typeof machinesCalled> | undefined; // only where two stand at the same hours
  const nameOf = (machineId: number): string => {
    names ??= machinesCalled(context);
    return names.get(machineId) ?? '';
  };
  return inListOrder([...places, ...never.map((machineId) => ({ machineId, ...NOWHERE }))], nameOf);
}

const NOWHERE = {
  group: 'no-forecast',
  soonestHours: null,
  lowHours: null,
  middleHours: null,
  planLineHours: null,
} as const;

/** Every word typed stands somewhere in the machine's name, make, serial, assemblies, or its owner's name or place. Null: nothing typed. */
function foundBy(context: Context, find: string): ReadonlySet<number> | null {
  const words = plain(find).split(/\s+/).filter(Boolean);
  if (words.length === 0) return null;
  const assemblies = keptTexts(recordOf(context), 'assemblies');
  const found = new Set<number>();
  for (const [machineId, hay] of plainNames(context)) {
    const more = plain(assemblies.get(machineId) ?? '');
    if (words.every((word) => hay.includes(word) || more.includes(word))) found.add(machineId);
  }
  return found;
}

const plainNames = (context: Context): ReadonlyMap<number, string> =>
  keptInMemory(context, `plain names as of ${context.today()}`, () => {
    const names = [...machineNamesNow(context).values()];
    return new Map(
      names.map(({ machineId, name, makeModel, serial, customer, place }) => [
        machineId,
        plain([name, makeModel, serial, customer, place].join('\n')),
      ]),
    );
  });

/** Small letters without their accents: "Ås" is found by "as". */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '');
