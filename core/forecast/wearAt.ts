import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { normalQuantile } from '../maths/normal.ts';
import { solveRising } from '../maths/solveRising.ts';
import { readingsBelow, wearMoments } from './wearLaw.ts';
import { mixtureBelow, mixtureReach, wearMixture } from './wearMixture.ts';

/** 10 %, 50 % and 90 % points; low is always the smaller number. */
export type Range = { low: number; middle: number; high: number };

export const RANGE_CHANCES = { low: 0.1, middle: 0.5, high: 0.9 } as const;

/**
 * True wear at some worked hours since the renewal.
 * @param hours at or after the last size [h]; earlier hours are taken as those of the last size
 */
export function wearAt(law: PartLaw, hours: number, settings: ModelSettings): Range {
  const { meanMm, sdMm } = wearMoments(law, hours, settings.driftDelta);
  const below = readingsBelow(law, hours, 0, settings.driftDelta);
  return {
    low: pointOf(below, RANGE_CHANCES.low, meanMm, sdMm),
    middle: pointOf(below, RANGE_CHANCES.middle, meanMm, sdMm),
    high: pointOf(below, RANGE_CHANCES.high, meanMm, sdMm),
  };
}

/**
 * True wear below which the part lies with each of some chances, at some worked hours, to some microns [mm].
 * @param chances rising
 */
export function wearQuantiles(law: PartLaw, hours: number, chances: readonly number[], delta: number): number[] {
  const mixture = wearMixture(law, hours, 0, delta);
  const [from, to] = mixtureReach(mixture);
  const below = (wearMm: number) => mixtureBelow(mixture, wearMm);
  return chances.map((chance) => solveRising(below, chance, from, to, below(from), below(to), COARSE));
}

/** A search for a kept size stops here, as a share of the wear. */
const COARSE = 1e-5;

/** Wear that a reading shows with chance `chance` at most, its errors included [mm]. */
export function readingAt(
  law: PartLaw,
  hours: number,
  errorSdMm: number,
  chance: number,
  settings: ModelSettings,
): number {
  const { meanMm, sdMm } = wearMoments(law, hours, settings.driftDelta);
  const wide = Math.hypot(sdMm, errorSdMm, ...law.shapes.map((shape) => shape.visitErrorMm));
  return pointOf(readingsBelow(law, hours, errorSdMm, settings.driftDelta), chance, meanMm, wide);
}

/** Looked for about where a normal of that mean and sd would have it, in a bracket that is widened until it holds it. */
function pointOf(below: (wearMm: number) => number, chance: number, meanMm: number, sdMm: number): number {
  if (!(sdMm > 0)) return meanMm;
  const about = meanMm + normalQuantile(chance) * sdMm;
  let low = about - 0.25 * sdMm;
  let high = about + 0.25 * sdMm;
  let atLow = below(low);
  let atHigh = below(high);
  for (let step = 0.5; atLow > chance && step < 1e6; step *= 2) {
    [high, atHigh] = [low, atLow];
    low = about - step * sdMm;
    atLow = below(low);
  }
  for (let step = 0.5; atHigh < chance && step < 1e6; step *= 2) {
    [low, atLow] = [high, atHigh];
    high = about + step * sdMm;
    atHigh = below(high);
  }
  return solveRising(below, chance, low, high, atLow, atHigh, FINE);
}

const FINE = 1e-7;
