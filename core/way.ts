import type { PointForecast } from './contract/forecast.ts';
import { fewerFigures } from './fit/fewerFigures.ts';
import type { LearnOptions, ShopLearning } from './fit/learnShop.ts';
import { haveHeard } from './fit/machineLaws.ts';
import type { ModelSettings } from './fit/modelSettings.ts';
import type { PartLaw } from './fit/partLaw.ts';
import type { WearSeries } from './series/wearSeries.ts';
import type { PointOnRecord, ShopLife } from './shop/shopLife.ts';
import type { Day } from './units/day.ts';
import { forecastOfPoint, outlookOfPoint } from './way/forecastOfPoint.ts';
import { hoursLeftOfPoint } from './way/hoursLeftOfPoint.ts';
import { lastVisitCautions } from './way/lastVisit.ts';
import { lawsAsSaid } from './way/lawsAsSaid.ts';
import { type Learning, learn, withEveryClass } from './way/learning.ts';
import { openFindings } from './way/openFindings.ts';
import type { PointOutlook } from './way/pointForecast.ts';
import { pointsOfShop } from './way/pointsOfShop.ts';
import { settingsOf } from './way/settingsOf.ts';
import type { ShopHabit } from './way/shopHours.ts';
import { partsOfMachine, type ShopSeries, shopSeries } from './way/shopSeries.ts';

export type { Learning };

/**
 * The way from readings to forecasts, in order. Plain values in, plain values out: no record, no clock.
 *
 *   readings, hours -> hours lines -> series -> class pool -> laws of a machine's parts -> forecasts
 *
 *   way/shopHours.ts        dial readings to machine hours, and each machine's own use
 *   way/shopSeries.ts       sizes, renewals and moves to the wear series of parts
 *   way/learning.ts         what all series of the shop teach of their classes
 *   fit/machineLaws.ts      what is then held of each part of one machine
 *   way/lawsAsSaid.ts       ... made wider where a class was too sure of itself
 *   way/scoredSizes.ts      how sizes came out against what would have been foretold for them
 *   way/forecastOfPoint.ts  hours at limit, dates, findings, cautions: what is said of each point
 */

/** What is said of one machine: its points in the order of the record, and what it rests on. */
export type MachineForecast = {
  machineId: number;
  points: readonly PointForecast[];
  laws: ReadonlyMap<number, PartLaw>;
};

export type ShopForecast = { shop: ShopSeries; learning: Learning; machines: readonly MachineForecast[] };

/** Readings and hours to series: the first half of the way. With a habit of use kept from a learning, else learned now. */
export const seriesOfShop = (life: ShopLife, asOf: Day, habit: ShopHabit | null = null): ShopSeries =>
  shopSeries(life, asOf, habit);

/** Series to class pool. What was learned before is given back while it rests on the same parts. */
export const learnClasses = (
  shop: ShopSeries,
  kept: Learning | null = null,
  options: LearnOptions & { settings?: ModelSettings } = {},
): Learning => learn(shop, options.settings ?? settingsOf(shop.life), kept, options);

/**
 * Class pool to the forecasts of one machine. The learning may be older than the machine's last sizes: its own word in it
 * is taken out and said afresh, so that a new size is forecast at once and the classes are learned again after it.
 */
export function forecastsOfMachine(
  shop: ShopSeries,
  machineId: number,
  learning: Learning,
  settings: ModelSettings = settingsOf(shop.life),
): MachineForecast {
  const { points, pool, parts, laws } = lawsOfMachine(shop, machineId, learning, settings);
  const lastVisit = new Map(parts.flatMap((its) => [...lastVisitCautions(pool, its, settings)]));
  const { coverage, looks } = learning;
  const from = { shop, laws, lastVisit, pool, coverage, looks, findings: openFindings(shop.life, shop.asOf), settings };
  return { machineId, points: points.map((point) => forecastOfPoint({ ...from, point })), laws };
}

/** When each of its points comes to its limit, without the rest that is said of it: what lists and calls go by. */
export function outlooksOfMachine(
  shop: ShopSeries,
  machineId: number,
  learning: Learning,
  settings: ModelSettings = settingsOf(shop.life),
): PointOutlook[] {
  const { points, pool, laws } = lawsOfMachine(shop, machineId, learning, settings);
  const from = { shop, laws, pool, findings: openFindings(shop.life, shop.asOf), settings };
  return points.map((point) => outlookOfPoint({ ...from, point }));
}

/**
 * Their hours left alone, by point: a fraction of the work, to tell what an entry has moved or a repair would bring.
 * @param only ids of the points asked for; absent: all of the machine
 */
export function hoursLeftOfMachine(
  shop: ShopSeries,
  machineId: number,
  learning: Learning,
  only?: ReadonlySet<number>,
): ReadonlyMap<number, PointForecast['hoursLeft']> {
  const settings = settingsOf(shop.life);
  const its = lawsOfMachine(shop, machineId, learning, settings);
  const known = hoursLeftOf.get(its);
  if (known) return known;
  const findings = openFindings(shop.life, shop.asOf);
  const asked = only ? its.points.filter(({ pointId }) => only.has(pointId)) : its.points;
  const hoursLeft = new Map(
    asked.map((point) => [point.pointId, hoursLeftOfPoint(shop, point, its.laws, findings, settings)]),
  );
  if (!only) hoursLeftOf.set(its, hoursLeft);
  return hoursLeft;
}

/** Worked out while a sheet is typed, and asked for when it is saved: of all points of a machine they are kept with its laws. */
const hoursLeftOf = new WeakMap<MachineLaws, ReadonlyMap<number, PointForecast['hoursLeft']>>();

/** What is held of each present part of a machine, from which all that is forecast of it follows. */
export type MachineLaws = {
  points: readonly PointOnRecord[];
  pool: ShopLearning;
  /** of each machine whose harshness its parts share */
  parts: readonly WearSeries[][];
  laws: ReadonlyMap<number, PartLaw>;
};

/** The machine settled last is kept with its series: a save and the page drawn after it settle its parts once. */
const settled = new WeakMap<
  ShopSeries,
  { machineId: number; from: readonly [Learning, ModelSettings]; its: MachineLaws }
>();

export function lawsOfMachine(
  shop: ShopSeries,
  machineId: number,
  learning: Learning,
  settings: ModelSettings = settingsOf(shop.life),
): MachineLaws {
  const before = settled.get(shop);
  if (before?.machineId === machineId && before.from[0] === learning && before.from[1] === settings) return before.its;
  const its = settleMachine(shop, machineId, learning, settings);
  settled.set(shop, { machineId, from: [learning, settings], its });
  return its;
}

function settleMachine(shop: ShopSeries, machineId: number, learning: Learning, settings: ModelSettings): MachineLaws {
  const points = pointsOfShop(shop.life.points).on(machineId);
  const pool = withEveryClass(learning, shop, settings).shop;
  // as of an earlier day, or on the shelf since it was laid out, a part may share another machine's harshness
  const sharedWith = [...new Set(points.map((point) => shop.ofPoint(point).present.machineId))];
  const parts = sharedWith.map((id) => partsOfMachine(shop, id, points));
  // what its classes have yet to hear is not waited for: until they have, fewer figures do
  const goneBy = (its: readonly WearSeries[]) => (haveHeard(pool, its, settings) ? pool : fewerFigures(pool, its));
  const laws = new Map(
    parts.flatMap((its) => lawsAsSaid(goneBy(its), its, settings, learning.coverage)).map((law) => [law.pointId, law]),
  );
  return { points, pool, parts, laws };
}

/** What was learned, a machine's classes by fewer figures: for what is worked out time after time, all of it alike; made once of each class. */
export const poolByFewer = (learning: Learning, shop: ShopSeries, machineId: number): ShopLearning =>
  fewerFigures(learning.shop, partsOfMachine(shop, machineId, pointsOfShop(shop.life.points).on(machineId)));

/** One machine alone, with what was learned before: quick enough to stand behind every save. */
export const forecastMachine = (
  life: ShopLife,
  machineId: number,
  asOf: Day,
  learning: Learning,
  settings: ModelSettings = settingsOf(life),
): MachineForecast => forecastsOfMachine(seriesOfShop(life, asOf, learning.habit), machineId, learning, settings);

/** The whole shop. Give back `learning` the next time and only what has changed is learned again. */
export function forecastShop(
  life: ShopLife,
  asOf: Day,
  kept: Learning | null = null,
  options: LearnOptions & { settings?: ModelSettings } = {},
): ShopForecast {
  const seen = seriesOfShop(life, asOf);
  const learning = learnClasses(seen, kept, options);
  // a large shop's habit is learned, as its classes are, from the machines drawn
  const { hoursPerDay, jobHours } = seen.hours.habit;
  const asSeen = hoursPerDay === learning.habit.hoursPerDay && jobHours === learning.habit.jobHours;
  const shop = asSeen ? seen : seriesOfShop(life, asOf, learning.habit);
  const machineIds = [...new Set(life.points.map((point) => point.machineId))];
  const machines = machineIds.map((machineId) => forecastsOfMachine(shop, machineId, learning, options.settings));
  return { shop, learning, machines };
}
