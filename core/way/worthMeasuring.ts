import { fewerFigures } from '../fit/fewerFigures.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import { mixtureBelow, mixtureReach, wearMixture } from '../forecast/wearMixture.ts';
import { solveRising } from '../maths/solveRising.ts';
import { presentShare } from '../reading/workedHours.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { jointOfSlack } from './jointOfSlack.ts';
import { lawsAsSaid } from './lawsAsSaid.ts';
import { type Learning, withEveryClass } from './learning.ts';
import { isStop, openFindings } from './openFindings.ts';
import { settingsOf } from './settingsOf.ts';
import { partsOfMachine, type ShopSeries } from './shopSeries.ts';

/** What measuring points of one machine would be worth. */
export type WorthMeasuring = {
  /** most first: by how many machine hours all ranges of the machine together are expected to narrow [h] */
  points: { point: PointOnRecord; narrowsHours: number }[];
  /** the few that gain most, measured in one visit; null: nothing would be gained */
  best: { points: PointOnRecord[]; minutes: number; narrowsHours: number; widthHours: number } | null;
};

/** Measured together at most, and how long one takes with the part in reach (common practice, no source). */
const TOGETHER = 4;
const MINUTES_EACH = 2.5;
/** Looked at closely: the rest would gain less even if they came out just as expected. */
const CLOSELY = 8;

/** Three points of an even spread of chances, with their shares: Gauss and Legendre's rule. */
const LOOKS = [
  { chance: 0.5 - Math.sqrt(0.15), share: 5 / 18 },
  { chance: 0.5, share: 8 / 18 },
  { chance: 0.5 + Math.sqrt(0.15), share: 5 / 18 },
] as const;

/**
 * Before anything is measured: how much narrower the ranges of hours at limit of one machine are to be expected, point by
 * point, if that one were measured today with its own gauge. The size is not known yet, so it is imagined at three chances of
 * what is foretold for it, and each is carried through the whole fit: a size tells of its own part, and of what the
 * machine's parts share.
 *   narrowing = sum over points of width now - sum over looks of share x width with the size imagined
 *
 * @returns points that can be measured: with hours, a limit, no do-not-use, no slack that is worked out from others
 * @source H. Raiffa and R. Schlaifer, Applied Statistical Decision Theory (1961), chapter 5: analysis before the sample is
 *   drawn; the three points: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), table 25.4
 */
export function worthMeasuring(shop: ShopSeries, machineId: number, learning: Learning): WorthMeasuring {
  const settings = settingsOf(shop.life);
  const onMachine = shop.life.points.filter((point) => point.machineId === machineId);
  const parts = partsOfMachine(shop, machineId, onMachine);
  // fitted some dozens of times over: by fewer figures, before and after alike
  const pool = fewerFigures(withEveryClass(learning, shop, settings).shop, parts);
  const lawsWith = (series: readonly WearSeries[]) =>
    new Map(lawsAsSaid(pool, series, settings, learning.coverage).map((law) => [law.pointId, law]));
  const now = lawsWith(parts);
  const machine = shop.hours.ofMachine(machineId);
  const share = machine ? presentShare(machine.life, shop.asOf) : 1;
  const findings = openFindings(shop.life, shop.asOf);
  const measurable = onMachine.filter((point) => {
    const { renewAtWearMm, workedHoursNow } = shop.ofPoint(point);
    const free = !findings.ofPoint(point).some(isStop) && jointOfSlack(shop, point, now) === null;
    return now.has(point.pointId) && renewAtWearMm !== null && (workedHoursNow ?? 0) > 0 && free;
  });
  const width = (laws: typeof now): number =>
    measurable.reduce(
      (sum, point) => sum + widthOf(laws.get(point.pointId)!, shop.ofPoint(point).renewAtWearMm!, settings),
      0,
    ) / share;
  const before = width(now);
  const after = (chosen: readonly PointOnRecord[], chance: number): number =>
    width(lawsWith(parts.map((part) => imagined(part, chosen, chance))));
  const imagined = (part: WearSeries, chosen: readonly PointOnRecord[], chance: number): WearSeries => {
    const point = part.present && chosen.find(({ pointId }) => pointId === part.pointId);
    const law = now.get(part.pointId);
    if (!point || !law) return part;
    const workedHours = shop.ofPoint(point).workedHoursNow!;
    const errorSdMm = part.readings.at(-1)?.errorSdMm ?? point.gaugeErrorMm;
    const mixture = wearMixture(law, workedHours, errorSdMm, settings.driftDelta);
    const [from, to] = mixtureReach(mixture);
    const wearMm = solveRising((x) => mixtureBelow(mixture, x), chance, from, to, 0, 1, 1e-6);
    const reading = {
      workedHours,
      workedHoursSd: 0,
      wearMm,
      errorSdMm,
      visit: `${machineId}@${shop.asOf}`,
      takenOn: shop.asOf,
    };
    return { ...part, readings: [...part.readings, reading] };
  };
  const roughly = measurable.map((point) => ({ point, narrowsHours: before - after([point], 0.5) })).sort(mostFirst);
  const closely = roughly.slice(0, CLOSELY).map(({ point }) => ({
    point,
    narrowsHours: before - LOOKS.reduce((sum, look) => sum + look.share * after([point], look.chance), 0),
  }));
  const points = [...closely, ...roughly.slice(CLOSELY)].sort(mostFirst);
  const chosen = points.slice(0, TOGETHER).flatMap(({ point, narrowsHours }) => (narrowsHours > 0 ? [point] : []));
  if (chosen.length === 0) return { points, best: null };
  const narrowsHours = before - after(chosen, 0.5);
  const minutes = MINUTES_EACH * chosen.length;
  return { points, best: { points: chosen, minutes, narrowsHours, widthHours: before } };
}

type Gain = WorthMeasuring['points'][number];
const mostFirst = (a: Gain, b: Gain): number => b.narrowsHours - a.narrowsHours || a.point.pointId - b.point.pointId;

type Law = Parameters<typeof hoursAtLimit>[0];

/** Low to high worked hours at limit, or to the middle where high lies beyond; 0 where nothing can be said [h]. */
function widthOf(law: Law, limitWearMm: number, settings: ModelSettings): number {
  const { low, middle, high } = hoursAtLimit(law, limitWearMm, settings);
  return low === null || middle === null ? 0 : (high ?? middle) - low;
}
