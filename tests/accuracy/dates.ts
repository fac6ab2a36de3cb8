import type { ClassPrior } from '#core/fit/classPrior.ts';
import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { chanceByHours } from '#core/forecast/chanceByHours.ts';
import { type DateAtLimit, type DateQuestion, dateAtLimit } from '#core/forecast/dateAtLimit.ts';
import { learnedJobHours, type ShopUse, seasonsOfShop, useOfYear } from '#core/forecast/useOfYear.ts';
import { lnGammaDensity } from '#core/maths/gamma.ts';
import { normalCdf } from '#core/maths/normal.ts';
import { hoursLine } from '#core/reading/hoursLine.ts';
import { type UseStretch, useStretches } from '#core/reading/machineHours.ts';
import { GRASS_AND_TILLAGE, type Season } from '#core/reading/season.ts';
import type { WearSeries } from '#core/series/wearSeries.ts';
import { type Day, dayFromNumber, dayNumber } from '#core/units/day.ts';
import { type SimulatedFarm, simulatedFarm } from '#tests/support/simulatedFarms.ts';
import { aReading, aSeries } from './aSeries.ts';
import { type Chance, chance } from './chance.ts';

const SHOP: ShopUse = { hoursPerDay: 500 / 365, season: GRASS_AND_TILLAGE };
const JOB_HOURS = 40;
const PRIOR_SD_LN_RATE = 0.5;

/** What is known of a machine's use, and of the hours its part has left: lognormal about a middle. */
export type KnownUse = { from: Day; stretches: readonly UseStretch[]; middleHours: number; spread: number };

/** The program's dates for it. */
export const datesOf = ({ from, stretches, middleHours, spread }: KnownUse): DateAtLimit =>
  dateAtLimit({
    chancePastBy: (hours) => (hours <= 0 ? 0 : normalCdf(Math.log(hours / middleHours) / spread)),
    leastHoursAhead: 0,
    use: useOfYear(stretches, SHOP),
    from,
    dayOf: () => from,
  });

/** Days counted one by one, each with its month's weight, mean 1 over a year of 365 days. */
function averageDays(season: Season, from: Day, to: Day): number {
  const weightOf = (at: number): number => season[Number(dayFromNumber(at).slice(5, 7)) - 1]!;
  let sum = 0;
  for (let at = dayNumber(from) + 1; at <= dayNumber(to); at++) sum += weightOf(at);
  return sum;
}

/**
 * Chance that the limit comes by each of some days, by simulation: season and rate drawn from what is held of any machine and
 * weighed by how well they tell of its known hours; hours run drawn as a gamma process from day to day; hours left drawn.
 * Knows nothing of the program's tables, grids and steps.
 */
export function simulatedChancesBy(of: KnownUse, days: readonly Day[], draws: number, by: Chance): number[] {
  const chances = days.map(() => 0);
  let total = 0;
  const told = seasonsOfShop(SHOP).map((one) => ({
    ...one,
    known: of.stretches.map((stretch) => averageDays(one.season, stretch.from, stretch.to)),
    ahead: days.map((to) => averageDays(one.season, of.from, to)),
  }));
  for (let draw = 0; draw < draws; draw++) {
    const kept = told[drawn(told, by)]!;
    const rate = SHOP.hoursPerDay * Math.exp(PRIOR_SD_LN_RATE * by.normal());
    const ln = of.stretches.reduce(
      (sum, stretch, i) => sum + lnGammaDensity(stretch.hours, (rate * kept.known[i]!) / JOB_HOURS, JOB_HOURS),
      0,
    );
    const weight = Math.exp(ln);
    total += weight;
    const left = of.middleHours * Math.exp(of.spread * by.normal());
    let run = 0;
    let before = 0;
    days.forEach((_, i) => {
      run += JOB_HOURS * by.gamma((rate * (kept.ahead[i]! - before)) / JOB_HOURS);
      before = kept.ahead[i]!;
      if (run >= left) chances[i] = chances[i]! + weight;
    });
  }
  return chances.map((sum) => sum / total);
}

/** One of several, by their chances. */
function drawn(of: readonly { chance: number }[], by: Chance): number {
  let left = by.uniform();
  for (const [i, one] of of.entries()) {
    left -= one.chance;
    if (left < 0) return i;
  }
  return 0;
}

/** Shares of true days within the band, before it and after it; how far off the middle is, and how wide the band [days]. */
export type BandOverFarms = { farms: number; inside: number; early: number; late: number; mae: number; width: number };

/** Farms of one shop, from which it learns its jobs, and whose parts are one class. */
const FARMS_A_SHOP = 40;
const LIMIT_MM = 2.5;
const GAUGE_SD_MM = 0.05;
const NEW_SIZE_SD_MM = 0.03;
const PATH_SCATTER = 0.15;
const PART_SCATTER = 0.3;
/** A short life: its limit comes within a few seasons of the last size. */
const PRIOR: ClassPrior = { partClass: 'slide', hRefHours: 2500, m0: Math.log(LIMIT_MM), s0: 0.5, from: 'trade' };

/** A part on a farm's machine, put in new at its first dial reading, its sizes taken at the others; wear is a gamma process. */
function partOf(farm: SimulatedFarm, machineId: number, by: Chance): { series: WearSeries; hoursAtLimit: number } {
  const [first, ...later] = farm.life.dialEvents.map(({ dialHours }) => dialHours ?? 0);
  const ages = later.map((dial) => dial - first!);
  const rate = LIMIT_MM * Math.exp(PART_SCATTER * by.normal());
  const c2 = PATH_SCATTER ** 2;
  const start = NEW_SIZE_SD_MM * by.normal();
  const wear = [start];
  let at = start;
  let hours = 0;
  let hoursAtLimit = 0;
  const STEP = 10;
  while (hoursAtLimit === 0 || hours < (ages.at(-1) ?? 0)) {
    at += rate * c2 * by.gamma(STEP / PRIOR.hRefHours / c2);
    hours += STEP;
    wear.push(at);
    if (hoursAtLimit === 0 && at >= LIMIT_MM) hoursAtLimit = hours;
  }
  const readings = ages
    .filter((age) => age > 0)
    .map((workedHours) =>
      aReading({
        workedHours,
        wearMm: wear[Math.round(workedHours / STEP)]! + GAUGE_SD_MM * by.normal(),
        errorSdMm: GAUGE_SD_MM,
        visit: `${machineId}@${workedHours}`,
      }),
    );
  return { series: aSeries({ pointId: machineId, machineId, newSizeSdMm: NEW_SIZE_SD_MM, readings }), hoursAtLimit };
}

/**
 * Dates over simulated farms with seasons, weather and jobs of their own, the whole way: sizes to class, law, hours and
 * days, against the day on which the farm's machine has really run the part to its limit. Parts past it at the last size are left out.
 */
export function bandOverFarms(shops: number, unrest: number, settings: ModelSettings, seed: number): BandOverFarms {
  const days: { low: Day | null; middle: Day | null; high: Day | null; truth: Day }[] = [];
  for (let shop = 0; shop < shops; shop++) {
    const farms = Array.from({ length: FARMS_A_SHOP }, (_, k) => simulatedFarm(seed + shop * FARMS_A_SHOP + k, unrest));
    const parts = farms.map((farm, k) => partOf(farm, k + 1, chance(7 * seed + shop * FARMS_A_SHOP + k)));
    const learning = learnShop(
      parts.map(({ series }) => series),
      new Map([[PRIOR.partClass, PRIOR]]),
      settings,
    );
    const stretches = farms.map(({ life, asOf }) => useStretches(hoursLine(life, asOf)));
    const jobHours = learnedJobHours(stretches, SHOP);
    farms.forEach((farm, k) => {
      const { series, hoursAtLimit } = parts[k]!;
      const last = series.readings.at(-1)?.workedHours ?? 0;
      if (hoursAtLimit <= last) return;
      const byHours = chanceByHours(machineLaws(learning, [series], settings)[0]!, LIMIT_MM, settings);
      const question: DateQuestion = {
        chancePastBy: (ahead) => byHours(last + ahead),
        leastHoursAhead: 0,
        use: useOfYear(stretches[k]!, { ...SHOP, jobHours }),
        from: farm.asOf,
        dayOf: () => farm.asOf,
      };
      days.push({ ...dateAtLimit(question), truth: farm.dayAfter(hoursAtLimit - last) });
    });
  }
  const share = (is: (one: (typeof days)[number]) => boolean) => days.filter(is).length / days.length;
  const early = share(({ low, truth }) => low !== null && truth < low);
  const late = share(({ high, truth }) => high !== null && truth > high);
  const number = (of: Day | null, none: number) => (of === null ? none : dayNumber(of));
  const mean = (of: (one: (typeof days)[number]) => number) =>
    days.reduce((sum, one) => sum + of(one), 0) / days.length;
  return {
    farms: days.length,
    inside: 1 - early - late,
    early,
    late,
    mae: mean(({ middle, truth }) => Math.abs(number(middle, dayNumber(truth)) - dayNumber(truth))),
    width: mean(({ low, high }) => number(high, 0) - number(low, 0)),
  };
}
