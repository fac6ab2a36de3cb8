import { type Outcome, ok } from '../outcome.ts';
import { type HandFeel, handFeel } from './handFeel.ts';
import { type LimitsOfSize, limitsOfSize } from './limitsOfSize.ts';
import { readFit } from './readFit.ts';
import type { HoleClass, ShaftClass } from './toleranceClass.ts';

/** The standard's three kinds. */
export type FitKind = 'clearance' | 'transition' | 'interference';

/** A hole and a shaft of one nominal size, and how they go together. */
export type IsoFit = {
  nominalMm: number;
  hole: LimitsOfSize;
  shaft: LimitsOfSize;
  kind: FitKind;
  /** hole minus shaft [micrometre]: least and most; below 0 the shaft is the larger one (interference) */
  leastClearanceUm: number;
  mostClearanceUm: number;
  /** what it is like in the hand: common practice, no source */
  feel: HandFeel;
};

/**
 * How a hole and a shaft of one nominal size go together.
 *   least = smallest hole - largest shaft;  most = largest hole - smallest shaft
 *   clearance: least >= 0;  interference: most <= 0;  transition: between
 *
 * @param nominalMm over 0 up to 500 [mm]
 * @refuses what limitsOfSize refuses
 * @source ISO 286-1:2010, 3.3.4 to 3.3.7
 * @checked tests/reference/iso286/limits.test.ts
 */
export function isoFit(nominalMm: number, hole: HoleClass, shaft: ShaftClass): Outcome<IsoFit> {
  const holeLimits = limitsOfSize(nominalMm, hole);
  if (!holeLimits.ok) return holeLimits;
  const shaftLimits = limitsOfSize(nominalMm, shaft);
  if (!shaftLimits.ok) return shaftLimits;
  const leastClearanceUm = holeLimits.value.lowerDeviationUm - shaftLimits.value.upperDeviationUm;
  const mostClearanceUm = holeLimits.value.upperDeviationUm - shaftLimits.value.lowerDeviationUm;
  const kind = leastClearanceUm >= 0 ? 'clearance' : mostClearanceUm <= 0 ? 'interference' : 'transition';
  const feel = handFeel(nominalMm, { kind, leastClearanceUm });
  return ok({
    ...{ nominalMm, hole: holeLimits.value, shaft: shaftLimits.value },
    ...{ kind, leastClearanceUm, mostClearanceUm, feel },
  });
}

/**
 * A fit as it is written on a drawing.
 * @refuses what readFit and limitsOfSize refuse
 * @example fitOf('50 H7/g6') // least 9, most 50 micrometre clearance
 */
export function fitOf(written: string): Outcome<IsoFit> {
  const read = readFit(written);
  return read.ok ? isoFit(read.value.nominalMm, read.value.hole, read.value.shaft) : read;
}
