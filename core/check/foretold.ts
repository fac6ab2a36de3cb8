import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import type { HoursAtLimit } from '../forecast/hoursAtLimit.ts';
import { wearQuantiles } from '../forecast/wearAt.ts';
import { visitErrorSdMm } from '../forecast/wearLaw.ts';
import type { WearsWay } from '../shop/measuringPoint.ts';

/**
 * What a forecast said of one part's size at any hours, in so few numbers that it can be kept and scored later without the
 * program that made it. Hours are worked hours of the part since its renewal; wear is counted from `newSizeMm` [mm].
 */
export type Foretold = {
  wears: WearsWay;
  newSizeMm: number;
  /** at the as-of day [h] */
  workedHours: number;
  /** hours of its machine that day, and the share of them in which it works [h]; null: no hours on record */
  machineHours: number | null;
  share: number;
  /** its last size before: where the naive line goes through; null: never read */
  last: { workedHours: number; wearMm: number } | null;
  /** hours at which wear is foretold, rising [h] */
  hours: readonly number[];
  /** chances at which it is foretold, rising, and the wear below which it lies with each: one row an hour of `hours` [mm] */
  chances: readonly number[];
  wearMm: readonly (readonly number[])[];
  /** 1 sd of the error sizes of one visit share [mm] */
  visitErrorMm: number;
  limitWearMm: number | null;
  /** worked hours at the limit [h]; null: no limit */
  hoursAtLimit: Pick<HoursAtLimit, 'low' | 'middle' | 'high'> | null;
  basis: { ownReadings: number; own: number; likeParts: number; likeMachines: number };
  /** how many times as wide as the class alone would have it; 1: not widened */
  widenedBy: number;
};

export const CHANCES = [
  0.001, 0.005, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.995, 0.999,
] as const;

/** Hours ahead spoken for, in typical lives of the class, and at how many of them the sizes are kept. */
const LIVES_AHEAD = 1.5;
const STEPS = 9;

/** What is known beside the part's law. */
export type ForetoldFrom = Omit<
  Foretold,
  'hours' | 'chances' | 'wearMm' | 'visitErrorMm' | 'hoursAtLimit' | 'basis' | 'widenedBy'
> & {
  law: PartLaw;
  hoursAtLimit: HoursAtLimit | null;
  ownReadings: number;
  likeParts: number;
  likeMachines: number;
  settings: ModelSettings;
};

/**
 * The sizes a law foretells, from its last size (or new) on: closer together at first, where ranges open fastest.
 *   hours_k = from + (k / n)^2 x ahead
 * @source own derivation
 */
export function foretold(from: ForetoldFrom): Foretold {
  const { law, settings, ownReadings, likeParts, likeMachines, hoursAtLimit, ...said } = from;
  const first = law.lastHours ?? 0;
  const ahead = Math.max(0, said.workedHours - first) + LIVES_AHEAD * law.hRefHours;
  const hours = Array.from({ length: STEPS + 1 }, (_, k) => tenths(first + (k / STEPS) ** 2 * ahead));
  return {
    ...said,
    hours,
    chances: CHANCES,
    wearMm: hours.map((at) => wearQuantiles(law, at, CHANCES, settings.driftDelta).map(tenthsOfMicrons)),
    visitErrorMm: tenthsOfMicrons(visitErrorSdMm(law)),
    hoursAtLimit: hoursAtLimit && {
      low: hoursAtLimit.low,
      middle: hoursAtLimit.middle,
      high: hoursAtLimit.high,
    },
    basis: { ownReadings, own: law.basis.own, likeParts, likeMachines },
    widenedBy: law.widenedBy ?? 1,
  };
}

const tenths = (hours: number): number => Math.round(hours * 10) / 10;
const tenthsOfMicrons = (mm: number): number => Math.round(mm * 1e4) / 1e4;
