import { machinesOfAssembly, machinesOfPosition } from '../record/boundMachines.ts';
import { readsAlike } from '../shop/sameLife.ts';
import type { ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { openFindings } from '../way/openFindings.ts';
import type { PointOutlook } from '../way/pointForecast.ts';
import { pointsOfShop } from '../way/pointsOfShop.ts';
import { partsOfMachine, type ShopSeries } from '../way/shopSeries.ts';
import {
  forecastsOfMachine,
  type Learning,
  lawsOfMachine,
  learnClasses,
  type MachineForecast,
  outlooksOfMachine,
  seriesOfShop,
} from '../way.ts';
import { type Context, keptInMemory, recordOf } from './context.ts';
import { isLarge } from './learning/heardNow.ts';
import { heardSeries, learningSoFar, shopLearning } from './learning/shopLearning.ts';
import { seriesAround, seriesNow } from './seriesNow.ts';

/** The shop walked up to a day: every reading use case starts here. Forecasts are made when first asked for. */
export type ShopNow = {
  asOf: Day;
  shop: ShopSeries;
  learning: Learning;
  ofMachine(machineId: number): MachineForecast;
  /** when its points come to their limits, and nothing else told of them: all that lists go by */
  outlooksOf(machineId: number): readonly PointOutlook[];
  /** what is held of its parts, and nothing told of them yet: a fraction of the work */
  lawsOf(machineId: number): MachineForecast['laws'];
};

/** @param atOnce where nothing has been learned yet, do not wait for it; see {@link shopLearning} */
export function shopNow(context: Context, asOf: Day = context.today(), atOnce = false): ShopNow {
  const learning = shopLearning(context, asOf, atOnce);
  // of another day nothing was learned before: by the habit its classes have heard
  const habit = asOf === context.today() ? undefined : learning.habit;
  return nowOf(context, seriesNow(context, asOf, habit), learning);
}

/** The shop as screens about its classes look into it: all of it, or of a large one the machines the classes were learned from. */
export function shopHeard(context: Context): ShopNow & { heardMachines: number | null } {
  if (!isLarge(context)) return { ...shopNow(context), heardMachines: null };
  const asOf = context.today();
  const shop = keptInMemory(context, `heard as of ${asOf}`, () => heardSeries(context, asOf));
  return { ...nowOf(context, shop, shopLearning(context, asOf, true)), heardMachines: shop.life.machines.length };
}

/** One machine and all it is bound to, as of today: the rest of the shop is not looked at. */
export function shopAround(context: Context, machineId: number): ShopNow {
  // nobody waits for a large shop to be learned: until then the trade speaks, and the forecasts say so
  const learning = shopLearning(context, context.today(), isLarge(context));
  return nowOf(context, seriesAround(context, machineId), learning);
}

/**
 * Works out what is held of a machine's parts before it is asked for: a sheet that is opened will be saved, and begins from that.
 * Where nothing was ever learned it is left.
 */
export function settleAhead(context: Context, machineId: number): void {
  const learning = learningSoFar(context);
  if (learning) nowOf(context, seriesAround(context, machineId), learning).lawsOf(machineId);
}

/** A position, an assembly, and all they are bound to: what they ever sat on. Of one that is not on record nothing stands. */
export const shopAroundPosition = (context: Context, positionId: number): ShopNow =>
  shopAround(context, machinesOfPosition(recordOf(context), positionId)[0] ?? NO_MACHINE);
export const shopAroundAssembly = (context: Context, assemblyId: number): ShopNow =>
  shopAround(context, machinesOfAssembly(recordOf(context), assemblyId)[0] ?? NO_MACHINE);
const NO_MACHINE = 0;

/** What stands of some series, with what was learned. */
export function nowOf(context: Context, shop: ShopSeries, learning: Learning): ShopNow {
  const { asOf } = shop;
  const known = forecastsKept(context);
  /** of before, where it still holds; and what that rests on */
  const standing = (machineId: number) => {
    const before = known.get(machineId);
    if (before?.shop === shop && before.learning === learning) return before;
    const restsOn = [learning.fingerprint, ...machineInputs(shop, machineId)];
    const holds = before !== undefined && readsAlike(before.restsOn, restsOn);
    return { restsOn, forecast: holds ? before.forecast : null };
  };
  return {
    asOf,
    shop,
    learning,
    lawsOf: (machineId) => standing(machineId).forecast?.laws ?? lawsOfMachine(shop, machineId, learning).laws,
    outlooksOf: (machineId) => standing(machineId).forecast?.points ?? outlooksOfMachine(shop, machineId, learning),
    ofMachine(machineId: number) {
      const before = standing(machineId);
      if ('shop' in before) return before.forecast;
      const { restsOn } = before;
      const forecast = before.forecast ?? forecastsOfMachine(shop, machineId, learning);
      known.delete(machineId);
      known.set(machineId, { shop, learning, restsOn, forecast });
      const [oldest] = known.keys();
      if (known.size > MOST_KEPT && oldest !== undefined) known.delete(oldest);
      return forecast;
    },
  };
}

/** The same from a shop's life alone: its classes are learned afresh. */
export function shopNowOf(life: ShopLife, asOf: Day): ShopNow {
  const shop = seriesOfShop(life, asOf);
  return shopNowFrom(shop, learnClasses(shop));
}

/** The same of some series and what was learned, kept with the answer alone. */
export function shopNowFrom(shop: ShopSeries, learning: Learning): ShopNow {
  const known = new Map<number, MachineForecast>();
  return {
    ...{ asOf: shop.asOf, shop, learning },
    lawsOf: (machineId) => lawsOfMachine(shop, machineId, learning).laws,
    outlooksOf: (machineId) => known.get(machineId)?.points ?? outlooksOfMachine(shop, machineId, learning),
    ofMachine(machineId) {
      const forecast = known.get(machineId) ?? forecastsOfMachine(shop, machineId, learning);
      known.set(machineId, forecast);
      return forecast;
    },
  };
}

type Kept = Map<number, { shop: ShopSeries; learning: Learning; restsOn: unknown[]; forecast: MachineForecast }>;
/** Machines whose forecasts are kept in memory: all of any shop, not all of a record far larger. */
const MOST_KEPT = 400;
const forecasts = new WeakMap<Context, Kept>();

/** Forecasts outlive a change of the record: a machine nothing was entered for need not be forecast again. */
function forecastsKept(context: Context): Kept {
  const kept = forecasts.get(context) ?? new Map();
  forecasts.set(context, kept);
  return kept;
}

/** All that one machine's forecasts rest on, besides what was learned. */
function machineInputs(shop: ShopSeries, machineId: number): unknown[] {
  const { life, asOf, hours } = shop;
  const points = pointsOfShop(life.points).on(machineId);
  const classes = new Set(points.map((point) => point.partClass));
  return [
    asOf,
    life.forecastSettings,
    hours.ofMachine(machineId),
    openFindings(life, asOf).ofMachine(machineId),
    life.partClasses.filter(({ name }) => classes.has(name)),
    points.map((point) => [point, shop.ofPoint(point)]),
    partsOfMachine(shop, machineId),
  ];
}
