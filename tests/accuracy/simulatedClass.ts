import type { ClassPrior } from '#core/fit/classPrior.ts';
import type { WearReading, WearSeries } from '#core/series/wearSeries.ts';
import { aReading, aSeries } from './aSeries.ts';
import { type Chance, chance } from './chance.ts';
import type { ShopSet } from './shopSets.ts';

/** The law parts of a simulated class really wear by: a gamma process, which the model is not. */
export type Truth = { pathScatter: number; power: number; partScatter: number };

export const simulatedPrior: ClassPrior = {
  partClass: 'slide',
  hRefHours: 5500,
  m0: Math.log(2.5),
  s0: 0.5,
  from: 'trade',
};

const LIMIT_MM = 2.5;
const GAUGE_SD_MM = 0.05;
const NEW_SIZE_SD_MM = 0.03;
const STEP_HOURS = 20;

/** Wear every 20 h of a part with a given rate, until past the limit and past `untilHours`. */
function path(rate: number, truth: Truth, untilHours: number, by: Chance): number[] {
  const c2 = truth.pathScatter ** 2;
  const start = NEW_SIZE_SD_MM * by.normal();
  const wear = [start];
  let time = 0;
  for (let step = 1; step * STEP_HOURS <= untilHours || wear[step - 1]! < LIMIT_MM; step++) {
    const next = ((step * STEP_HOURS) / simulatedPrior.hRefHours) ** truth.power;
    wear.push(wear[step - 1]! + by.gamma((next - time) / c2) * rate * c2);
    time = next;
    if (step * STEP_HOURS > 40 * simulatedPrior.hRefHours) break;
  }
  return wear;
}

/** One class of parts, each on a machine of its own: 1 to 5 readings at a last age of 600 to 5,000 h; those in service are scored. */
export function simulatedClass(seed: number, parts: number, truth: Truth): ShopSet {
  const by = chance(seed);
  const series: WearSeries[] = [];
  const scored: ShopSet['scored'] = [];
  while (series.length < parts) {
    const rate = 2.5 * Math.exp(truth.partScatter * by.normal());
    const last = STEP_HOURS * Math.round((600 + 4400 * by.uniform()) / STEP_HOURS);
    const wear = path(rate, truth, last, by);
    const count = 1 + Math.floor(5 * by.uniform());
    const ages = new Set([last]);
    while (ages.size < count) ages.add(STEP_HOURS * Math.ceil((by.uniform() * last) / STEP_HOURS));
    const readings: WearReading[] = [...ages]
      .sort((a, b) => a - b)
      .map((hours) =>
        aReading({
          workedHours: hours,
          wearMm: wear[hours / STEP_HOURS]! + GAUGE_SD_MM * by.normal(),
          errorSdMm: GAUGE_SD_MM,
          visit: `${series.length}@${hours}`,
        }),
      );
    const one = aSeries({
      pointId: series.length + 1,
      machineId: series.length + 1,
      newSizeSdMm: NEW_SIZE_SD_MM,
      readings,
    });
    series.push(one);
    const crossing = wear.findIndex((value) => value >= LIMIT_MM);
    if (wear[last / STEP_HOURS]! < LIMIT_MM && crossing > 0) {
      const share = (LIMIT_MM - wear[crossing - 1]!) / (wear[crossing]! - wear[crossing - 1]!);
      scored.push({ series: one, limitWearMm: LIMIT_MM, trueHoursAtLimit: (crossing - 1 + share) * STEP_HOURS });
    }
  }
  return { series, priors: new Map([['slide', simulatedPrior]]), scored };
}

export const truths: { title: string; truth: Truth; parts: number; seedBase: number; barPinball: number }[] = [
  {
    title: 'linear, 4',
    truth: { pathScatter: 0.1, power: 1, partScatter: 0.3 },
    parts: 4,
    seedBase: 1000,
    barPinball: 239,
  },
  {
    title: 'linear, 12',
    truth: { pathScatter: 0.1, power: 1, partScatter: 0.3 },
    parts: 12,
    seedBase: 2000,
    barPinball: 219,
  },
  {
    title: 'linear, 30',
    truth: { pathScatter: 0.1, power: 1, partScatter: 0.3 },
    parts: 30,
    seedBase: 3000,
    barPinball: 208,
  },
  {
    title: 'curved, 4',
    truth: { pathScatter: 0.2, power: 1.15, partScatter: 0.3 },
    parts: 4,
    seedBase: 4000,
    barPinball: 371,
  },
  {
    title: 'curved, 12',
    truth: { pathScatter: 0.2, power: 1.15, partScatter: 0.3 },
    parts: 12,
    seedBase: 5000,
    barPinball: 329,
  },
  {
    title: 'curved, 30',
    truth: { pathScatter: 0.2, power: 1.15, partScatter: 0.3 },
    parts: 30,
    seedBase: 6000,
    barPinball: 289,
  },
];
