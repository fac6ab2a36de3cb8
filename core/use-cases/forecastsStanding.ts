import { setImmediate } from 'node:timers/promises';
import { RefusedError } from '../outcome.ts';
import { entriesRevision } from '../record/entry.ts';
import { keptTexts, type Placed } from '../record/machineForecastStore.ts';
import type { MachineOnRecord } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import type { Learning } from '../way.ts';
import { type Context, keptInMemory, recordOf } from './context.ts';
import { type ForecastingBeside, startForecasting } from './jobs/jobs.ts';
import { type ForecastMade, forecastMade, forecastNow, keepForecastsNow, keptList, type Line } from './keptList.ts';
import { isLarge } from './learning/heardNow.ts';
import { isFromPriors, learningSoFar, shopLearning } from './learning/shopLearning.ts';
import { type MachineNames, machinesCalled, namesOfSome } from './machineNamesNow.ts';
import type { Due } from './recall/dueOf.ts';
import { seriesNow } from './seriesNow.ts';
import { nowOf, type ShopNow, shopNow } from './shopNow.ts';

/** So many machines are forecast while they are waited for; more are forecast beside the program. */
const AT_ONCE = 8;

/** What is forecast of the shop's machines now: what was kept and holds, and what was forecast anew for it. */
export type ForecastsStanding = {
  asOf: Day;
  /** not what it will be: from what the trade says, or older figures of machines that are being forecast beside the program */
  learning: boolean;
  /** figures are from what the trade says, or there are none yet */
  fromPriors: boolean;
  /** the forecasting of a large shop beside the program; null: none is wanted */
  forecasting: ForecastingBeside | null;
  /** machines whose figures are older than what they rest on, or that have none yet */
  older: number;
  /** machines that were ever forecast, and those that never were */
  places: readonly Placed[];
  never: readonly number[];
  /** in the order asked; machines never forecast have their names alone, those not on record are left out */
  lines(machineIds: readonly number[]): Line[];
  /** of machines that were ever forecast; of some of them */
  dues(machineIds?: readonly number[]): ReadonlyMap<number, Due>;
};

/**
 * Forecasts are those kept in the record, made anew where something was entered for a machine. Of a large shop nobody waits
 * for many: older ones stand in, which is said, and the shop is forecast beside the program.
 * @param atOnce do not wait where nothing has been learned yet, or for a large shop
 * @param machineIds which are looked at; null: all
 */
export function forecastsStanding(
  context: Context,
  atOnce: boolean,
  machineIds: readonly number[] | null = null,
): ForecastsStanding {
  const large = isLarge(context);
  const learning = shopLearning(context, context.today(), atOnce || large);
  if (isFromPriors(learning)) {
    const all = machineIds ?? [...machinesCalled(context).keys()];
    const made = large ? [] : madeFromPriors(context, all);
    const older = large ? machinesCalled(context).size : 0;
    return standing(context, made, { places: [], never: all, fromPriors: true, forecasting: null, older });
  }
  const { places, never, wanting } = keptList(context, learning, machineIds);
  if (atOnce && large && wanting.length > AT_ONCE) {
    const forecasting = startForecasting(context);
    return standing(context, [], { places, never, fromPriors: false, forecasting, older: wanting.length });
  }
  const made = forecastThem(context, learning, wanting, large);
  return standing(context, made, { places, never, fromPriors: false, forecasting: null, older: 0 });
}

/**
 * The same of the whole shop, for who shares the program with others: where many machines have to be forecast first, as after the
 * classes were learned again, whoever asks something else has their turn between two of them.
 */
export async function forecastsInTurn(context: Context, atOnce: boolean): Promise<ForecastsStanding> {
  const { record } = context;
  for (let round = 0; round < MOST_ROUNDS && !isLarge(context); round++) {
    const going = inTurn.get(context) ?? forecastOneByOne(context, atOnce).finally(() => inTurn.delete(context));
    inTurn.set(context, going);
    const isWhole = await going;
    if (context.record !== record)
      throw new RefusedError({ code: 'another-record', facts: { file: context.record?.path ?? null } });
    if (isWhole) break;
  }
  return forecastsStanding(context, atOnce);
}

/** Whoever asks while it goes on waits for the same. */
const inTurn = new WeakMap<Context, Promise<boolean>>();
/** Entered or learned meanwhile so often, the rest is forecast in one go. */
const MOST_ROUNDS = 4;
/** Kept so many at a time. */
const KEPT_TOGETHER = 10;

/** @returns false: something was entered meanwhile, or learned */
async function forecastOneByOne(context: Context, atOnce: boolean): Promise<boolean> {
  const { record } = context;
  const learning = shopLearning(context, context.today(), atOnce);
  if (isFromPriors(learning)) {
    for (const machineId of machinesCalled(context).keys()) {
      await setImmediate();
      if (context.record !== record || learningSoFar(context)) return false;
      madeFromPriors(context, [machineId]);
    }
    return true;
  }
  const wanting = new Set(keptList(context, learning).wanting);
  if (wanting.size < 2) return true;
  const revision = entriesRevision(recordOf(context));
  const now = nowOf(context, seriesNow(context), learning);
  const made: ForecastMade[] = [];
  for (const machine of now.shop.life.machines.filter(({ machineId }) => wanting.has(machineId))) {
    await setImmediate();
    if (context.record !== record || entriesRevision(recordOf(context)) !== revision) return false;
    made.push(forecastMade(now, machine));
    if (made.length === KEPT_TOGETHER && !keepForecastsNow(context, learning, revision, made.splice(0))) return true;
  }
  keepForecastsNow(context, learning, revision, made);
  return learningSoFar(context) === learning;
}

/** Forecasts machines, and keeps it a few at a time. */
function forecastThem(
  context: Context,
  learning: Learning,
  wanting: readonly number[],
  large: boolean,
): ForecastMade[] {
  const revision = entriesRevision(recordOf(context));
  const together = !large && wanting.length > AT_ONCE; // many of a shop that is no large one: read in one go
  const made: ForecastMade[] = [];
  for (let from = 0; from < wanting.length; from += 50) {
    const some = wanting.slice(from, from + 50);
    const now = together
      ? wholeShop(context, some)
      : some.flatMap((machineId) => forecastNow(context, learning, machineId) ?? []);
    keepForecastsNow(context, learning, revision, now);
    made.push(...now);
  }
  return made;
}

function wholeShop(context: Context, machineIds: readonly number[]): ForecastMade[] {
  const now = shopNow(context);
  return machinesIn(now, machineIds).map((machine) => forecastMade(now, machine));
}

function machinesIn({ shop }: ShopNow, machineIds: readonly number[]): MachineOnRecord[] {
  const wanted = new Set(machineIds);
  return shop.life.machines.filter(({ machineId }) => wanted.has(machineId));
}

/** From what the trade says, until something was learned: kept in memory alone, for who asks for the lines after their order. */
function madeFromPriors(context: Context, machineIds: readonly number[]): ForecastMade[] {
  const now = shopNow(context, context.today(), true);
  const known = keptInMemory(
    context,
    `forecast as of ${now.asOf} from ${now.learning.fingerprint}`,
    () => new Map<number, ForecastMade>(),
  );
  return machinesIn(now, machineIds).map((machine) => {
    const made = known.get(machine.machineId) ?? forecastMade(now, machine);
    known.set(machine.machineId, made);
    return made;
  });
}

type From = {
  places: readonly Placed[];
  never: readonly number[];
  fromPriors: boolean;
  forecasting: ForecastsStanding['forecasting'];
  older: number;
};

function standing(
  context: Context,
  made: readonly ForecastMade[],
  { places, never, fromPriors, forecasting, older }: From,
): ForecastsStanding {
  const record = recordOf(context);
  const byMachine = new Map(made.map((one) => [one.machineId, one]));
  const isOlder = ({ machineId }: Placed) => !byMachine.has(machineId);
  const keptOf = (what: 'line' | 'due', machineIds: readonly number[] | null) =>
    fromPriors ? new Map<number, string>() : keptTexts(record, what, machineIds);
  return {
    ...{ asOf: context.today(), learning: fromPriors || older > 0, fromPriors, forecasting, older },
    places: [...places.filter(isOlder), ...made.map(({ machineId, place }) => ({ machineId, ...place }))],
    never: never.filter((machineId) => !byMachine.has(machineId)),
    lines(machineIds) {
      const names = namesOfSome(context, machineIds);
      const texts = keptOf(
        'line',
        machineIds.filter((machineId) => !byMachine.has(machineId)),
      );
      return machineIds.flatMap((machineId) => {
        const named = names.get(machineId);
        const text = texts.get(machineId);
        const line = byMachine.get(machineId)?.line ?? (text === undefined ? NO_FORECAST : (JSON.parse(text) as Line));
        return named ? [{ ...line, ...named }] : []; // names may have changed since: they move no forecast
      });
    },
    dues(machineIds) {
      const kept = [...keptOf('due', machineIds ?? null)].flatMap(([machineId, text]) => {
        const due = JSON.parse(text) as Due | null;
        return due ? [[machineId, due] as const] : [];
      });
      const anew = machineIds ? machineIds.flatMap((machineId) => byMachine.get(machineId) ?? []) : made;
      return new Map([...kept, ...anew.map(({ machineId, due }) => [machineId, due] as const)]);
    },
  };
}

/** Before a machine of a large shop was ever forecast: it is there by name, to be opened and written to. */
const NO_FORECAST: Omit<Line, keyof MachineNames> = {
  assemblies: [],
  hours: {
    ...{ machineHours: null, sdHours: 0, estimated: false, machineHoursRead: null, readOn: null },
    ...{ dialHours: null, dialMachine: null },
  },
  hoursPerYear: null,
  winters: [],
  planLineHours: null,
  planWinter: '',
  group: 'no-forecast',
  first: null,
  others: [],
  openFindings: [],
};
