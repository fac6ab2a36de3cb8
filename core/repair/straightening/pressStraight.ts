import { type Outcome, ok, refuse } from '../../outcome.ts';
import { type Sourced, sourced } from '../howKnown.ts';
import { MATERIAL } from '../press-fit/material.ts';
import { type Section, sectionFigures } from './section.ts';

/** Steel often yields this much above what its certificate promises, and hardens as it bends: the press is sized by it. */
export const YIELD_ABOVE_CERTIFICATE: Sourced<{ low: number; high: number }> = sourced(
  { low: 1.1, high: 1.3 },
  'common-practice',
  'common practice, no source',
);

const STEEL_YOUNGS_MPA = MATERIAL['structural-steel'].value.youngsMpa;
const N_PER_TONNE_FORCE = 9806.65;

/** What it takes to press a bar straight between two supports, pushed in the middle. */
export type PressStraight = {
  /** up to here it springs back whole [N] */
  firstYieldN: number;
  /** from here it goes on bending without more force [N], and the same in tonne-force */
  plasticN: number;
  plasticTonneForce: number;
  /** press that copes with steel as strong as it may be [N] */
  pressForN: number;
  pressForTonneForce: number;
  /** push at first yield [mm] */
  pushAtFirstYieldMm: number;
  /** what comes back when the press lets go: over-bend by this, in small steps; from steel as promised to as strong as it may be [mm] */
  springBackMm: { low: number; high: number };
  /** between these two the bar begins to stay bent, suddenly: go slowly [N] */
  goSlowlyN: { from: number; to: number };
  shapeFactor: number;
};

/**
 * Force to straighten a bar in a press: it rests on two supports and is pushed in the middle.
 *   first yield F = 4 My / L;  plastic hinge F = 4 Mp / L;  spring-back = F L^3 / (48 E I)
 *
 * @param yieldMpa what the steel is promised to stand [MPa]
 * @param spanMm between the supports [mm]
 * @refuses section-size; straightening-span: span or yield stress not over 0, or a span under twice the depth, where a bar
 *   crushes and shears rather than bends
 * @source plastic hinge, in any text on plastic design of steel; press at 1.3 times and the least span: common practice, no source
 * @checked tests/reference/straightening/straightening.test.ts
 */
export function pressStraight(
  section: Section,
  { yieldMpa, spanMm, youngsMpa = STEEL_YOUNGS_MPA }: { yieldMpa: number; spanMm: number; youngsMpa?: number },
): Outcome<PressStraight> {
  const figures = sectionFigures(section);
  if (!figures.ok) return figures;
  const { inertiaMm4, elasticMm3, plasticMm3, shapeFactor, depthMm } = figures.value;
  if (!(yieldMpa > 0 && spanMm >= 2 * depthMm))
    return refuse({ code: 'straightening-span', facts: { yieldMpa, spanMm, leastSpanMm: 2 * depthMm } });
  const firstYieldN = (4 * yieldMpa * elasticMm3) / spanMm;
  const plasticN = (4 * yieldMpa * plasticMm3) / spanMm;
  const strongest = YIELD_ABOVE_CERTIFICATE.value.high;
  const pushMm = (forceN: number) => (forceN * spanMm ** 3) / (48 * youngsMpa * inertiaMm4);
  return ok({
    ...{ firstYieldN, plasticN, plasticTonneForce: plasticN / N_PER_TONNE_FORCE },
    ...{ pressForN: strongest * plasticN, pressForTonneForce: (strongest * plasticN) / N_PER_TONNE_FORCE },
    pushAtFirstYieldMm: pushMm(firstYieldN),
    springBackMm: { low: pushMm(plasticN), high: pushMm(strongest * plasticN) },
    goSlowlyN: { from: firstYieldN, to: strongest * plasticN },
    shapeFactor,
  });
}

/**
 * Strain of the outermost fibre of a bar bent to a radius, as a share of its length.
 *   strain = (h / 2) / R
 * @param radiusMm of the bend, to the middle of the bar [mm], over 0
 * @source plane sections stay plane, in any text on bending
 * @checked tests/reference/straightening/straightening.test.ts
 * @example bendStrain(80, 2000) // 0.02
 */
export const bendStrain = (depthMm: number, radiusMm: number): number => depthMm / 2 / radiusMm;

/**
 * Radius of a bow, taken for an arc of a circle: a sharper kink is bent more than this says.
 *   R = span^2 / (8 bow) + bow / 2
 * @param bowMm out of line in the middle of the span [mm], over 0
 * @source chord and sagitta of a circle
 * @checked tests/reference/straightening/straightening.test.ts
 * @example bowRadiusMm(500, 10) // 3130
 */
export const bowRadiusMm = (spanMm: number, bowMm: number): number => spanMm ** 2 / (8 * bowMm) + bowMm / 2;
