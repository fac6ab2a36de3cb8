import type { WearReading, WearSeries } from '#core/series/wearSeries.ts';
import { aReading, aSeries } from './aSeries.ts';
import { type Chance, chance } from './chance.ts';
import type { ShopSet } from './shopSets.ts';
import { simulatedPrior } from './simulatedClass.ts';

/** How far ln rates scatter between positions, and between the parts that follow each other in one. */
export type Sharing = { positions: number; parts: number };

const LIMIT_MM = 2.5;
const GAUGE_SD_MM = 0.05;
const NEW_SIZE_SD_MM = 0.03;
const PATH_SCATTER = 0.12;
const STEP_HOURS = 20;

/**
 * One class of positions, each alone on its machine. All of them are measured at visits that come when they come; what has worn
 * past four fifths of the limit is renewed there. Parts past their limit at the last visit are not scored. Wear is a gamma process.
 */
export function renewedClass(seed: number, positions: number, sharing: Sharing): ShopSet {
  const by = chance(seed);
  const series: WearSeries[] = [];
  const scored: ShopSet['scored'] = [];
  for (let position = 1; position <= positions; position++) {
    const own = sharing.positions * by.normal();
    const visits = 2 + Math.floor(5 * by.uniform());
    const newLife = () => ({
      ...pathToLimit(LIMIT_MM * Math.exp(own + sharing.parts * by.normal()), by),
      fitted: hours,
      readings: [] as WearReading[],
    });
    let hours = 0;
    let ordinal = 0;
    let life = newLife();
    const close = (present: boolean): WearSeries => {
      const { readings } = life;
      const one = { pointId: position, ordinal: ordinal++, machineId: position, newSizeSdMm: NEW_SIZE_SD_MM };
      series.push(aSeries({ ...one, present, readings }));
      return series.at(-1)!;
    };
    for (let visit = 0; visit < visits; visit++) {
      hours += STEP_HOURS * Math.round((600 + 1400 * by.uniform()) / STEP_HOURS);
      const workedHours = hours - life.fitted;
      const wear = life.wear[workedHours / STEP_HOURS] ?? 1.05 * LIMIT_MM;
      const wearMm = wear + GAUGE_SD_MM * by.normal();
      life.readings.push(aReading({ workedHours, wearMm, errorSdMm: GAUGE_SD_MM, visit: `${position}@${hours}` }));
      if (wearMm < 0.8 * LIMIT_MM) continue;
      close(false);
      life = newLife();
    }
    const { hoursAtLimit, fitted } = life;
    const one = close(true);
    if (hoursAtLimit > hours - fitted)
      scored.push({ series: one, limitWearMm: LIMIT_MM, trueHoursAtLimit: hoursAtLimit });
  }
  return { series, priors: new Map([['slide', simulatedPrior]]), scored };
}

/**
 * The same class of even wear where no visit comes by itself: each part was measured but once, those renewed when they were
 * worn, the present one some way to it. The age at which it was measured then tells how fast it wore, and the model knows
 * nothing of that.
 */
export function measuredWhenWorn(seed: number, positions: number): ShopSet {
  const by = chance(seed);
  const series: WearSeries[] = [];
  const scored: ShopSet['scored'] = [];
  for (let k = 0; k < 3 * positions; k++) {
    const { wear, hoursAtLimit } = pathToLimit(LIMIT_MM * Math.exp(0.35 * by.normal()), by);
    const present = k % 3 === 2;
    const share = present ? 0.15 + 0.4 * by.uniform() : 0.75 + 0.2 * by.uniform();
    const step = Math.max(1, Math.floor((share * hoursAtLimit) / STEP_HOURS));
    const wearMm = wear[step]! + GAUGE_SD_MM * by.normal();
    const reading = aReading({ workedHours: step * STEP_HOURS, wearMm, errorSdMm: GAUGE_SD_MM, visit: `${k}` });
    const one = { pointId: k + 1, machineId: k + 1, newSizeSdMm: NEW_SIZE_SD_MM, present, readings: [reading] };
    series.push(aSeries(one));
    if (present) scored.push({ series: series.at(-1)!, limitWearMm: LIMIT_MM, trueHoursAtLimit: hoursAtLimit });
  }
  return { series, priors: new Map([['slide', simulatedPrior]]), scored };
}

function pathToLimit(rate: number, by: Chance): { wear: number[]; hoursAtLimit: number } {
  const c2 = PATH_SCATTER ** 2;
  const wear = [NEW_SIZE_SD_MM * by.normal()];
  while (wear.at(-1)! < LIMIT_MM)
    wear.push(wear.at(-1)! + rate * c2 * by.gamma(STEP_HOURS / simulatedPrior.hRefHours / c2));
  return { wear, hoursAtLimit: STEP_HOURS * (wear.length - 1) };
}

/** The same shop as if no part that was renewed had anything to do with the one that followed: each on a machine of its own. */
export function livesApart({ series, priors, scored }: ShopSet): ShopSet {
  const first = 1 + series.reduce((most, { machineId }) => Math.max(most, machineId), 0);
  return { series: series.map((one, k) => (one.present ? one : { ...one, machineId: first + k })), priors, scored };
}
