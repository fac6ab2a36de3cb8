import { type Outcome, ok, refuse } from '../../outcome.ts';
import { type Sourced, sourced } from '../howKnown.ts';

/** Gap on diameter that a retaining adhesive fills and grips best in [mm]. The adhesive maker's sheet prevails. */
export const ADHESIVE_GAP_MM: Sourced<{ least: number; most: number }> = sourced(
  { least: 0.03, most: 0.1 },
  'common-practice',
  'common practice, no source',
);

/** Shear stress it is reckoned to hold, cured on clean steel, from and to [MPa]. */
export const ADHESIVE_SHEAR_MPA: Sourced<{ low: number; high: number }> = sourced(
  { low: 5, high: 15 },
  'common-practice',
  'common practice, no source',
);

/** A bush that is glued in instead of pressed. */
export type AdhesiveFit = {
  /** what the bush is turned to [mm] */
  bushOutsideLargestMm: number;
  bushOutsideSmallestMm: number;
  /** force along the bore that would shear the glue, from and to [N] */
  holdsN: { low: number; high: number };
};

/**
 * Outside diameter of a glued bush: every bore within limits has a gap the adhesive fills.
 *   largest = smallest bore - least gap;  smallest = largest bore - most gap
 *   holds = shear pi d L
 *
 * @refuses adhesive-bore-too-wide: the bore's own limits take up the whole gap; with both widths
 * @source own derivation: worst limits of both; mean shear over the whole cylinder
 * @checked tests/reference/press-fit/pressFit.test.ts
 */
export function adhesiveFit(bore: { smallestMm: number; largestMm: number; lengthMm: number }): Outcome<AdhesiveFit> {
  const { least, most } = ADHESIVE_GAP_MM.value;
  const boreWidthMm = bore.largestMm - bore.smallestMm;
  if (!(boreWidthMm < most - least))
    return refuse({ code: 'adhesive-bore-too-wide', facts: { boreWidthMm, gapWidthMm: most - least } });
  const areaMm2 = Math.PI * bore.smallestMm * bore.lengthMm;
  return ok({
    bushOutsideLargestMm: bore.smallestMm - least,
    bushOutsideSmallestMm: bore.largestMm - most,
    holdsN: {
      low: ADHESIVE_SHEAR_MPA.value.low * areaMm2,
      high: ADHESIVE_SHEAR_MPA.value.high * areaMm2,
    },
  });
}
