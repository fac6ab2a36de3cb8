import { type Outcome, ok, refuse } from '../../outcome.ts';
import type { Material } from './material.ts';

/** What is pressed together. Interference is DIAMETRAL: outside diameter minus bore. Textbooks often give the radial one, half of it. */
export type PressedPair = {
  /** diameter at which they meet [mm] */
  interfaceMm: number;
  /** outside diameter of the boss; of a lug: the largest circle about the hole that stays in it [mm] */
  bossOutsideMm: number;
  /** bore of the bush; 0 for a solid pin [mm] */
  bushBoreMm: number;
  diametralInterferenceMm: number;
  boss: Pick<Material, 'youngsMpa' | 'poisson' | 'yieldMpa'>;
  bush: Pick<Material, 'youngsMpa' | 'poisson' | 'yieldMpa'>;
};

/** What pressing together does. Tension is positive. All of it holds only while nothing yields: see the two flags. */
export type PressFit = {
  pressureMpa: number;
  /** hoop and von Mises stress at the bore of the boss [MPa] */
  bossHoopMpa: number;
  bossVonMisesMpa: number;
  /** hoop stress of the bush where they meet, and at its own bore [MPa] */
  bushHoopOutsideMpa: number;
  bushHoopBoreMpa: number;
  bushVonMisesMpa: number;
  /** the boss grows and the bush's bore closes in by this much on diameter [mm] */
  bossGrowthMm: number;
  bushCloseInMm: number;
  /** true: the stress worked out above is past the yield stress, so the part stays deformed and the true stress is another */
  bossYields: boolean;
  bushYields: boolean;
};

/**
 * Pressure, stresses and changes of size of a pressed pair.
 *   p = delta / (d (Cboss + Cbush))
 *   boss hoop = p (do^2 + d^2) / (do^2 - d^2);  bush hoop at its bore = -2 p d^2 / (d^2 - di^2)
 *   close-in = 2 p d^2 di / (Ebush (d^2 - di^2));  growth = 2 p d^2 do / (Eboss (do^2 - d^2))
 *   von Mises at the boss's bore = sqrt(hoop^2 + hoop p + p^2)
 * Elastic, both of one length, no end effects, axial stress 0. A pair past yield is said to be so; its figures are not cut down.
 *
 * @source G. Lamé's thick cylinder, in any machine-design text, under press and shrink fits
 * @refuses press-no-interference, press-no-boss-wall, press-no-bush-wall; each with the sizes
 * @checked tests/reference/press-fit/pressFit.test.ts
 */
export function pressFit(pair: PressedPair): Outcome<PressFit> {
  const { interfaceMm: d, bossOutsideMm: dOut, bushBoreMm: dIn, diametralInterferenceMm, boss, bush } = pair;
  if (!(diametralInterferenceMm > 0))
    return refuse({ code: 'press-no-interference', facts: { interferenceMm: diametralInterferenceMm } });
  if (!(dOut > d && d > 0))
    return refuse({ code: 'press-no-boss-wall', facts: { bossOutsideMm: dOut, interfaceMm: d } });
  if (!(dIn >= 0 && dIn < d)) return refuse({ code: 'press-no-bush-wall', facts: { bushBoreMm: dIn, interfaceMm: d } });

  const bossShape = (dOut ** 2 + d ** 2) / (dOut ** 2 - d ** 2);
  const bushShape = (d ** 2 + dIn ** 2) / (d ** 2 - dIn ** 2);
  const compliancePerMpa = (bossShape + boss.poisson) / boss.youngsMpa + (bushShape - bush.poisson) / bush.youngsMpa;
  const p = diametralInterferenceMm / (d * compliancePerMpa);

  const bossHoopMpa = p * bossShape;
  const bossVonMisesMpa = Math.sqrt(bossHoopMpa ** 2 + bossHoopMpa * p + p ** 2);
  const bushHoopOutsideMpa = -p * bushShape;
  // a solid pin is squeezed alike all through; a bush is squeezed most at its bore, where nothing bears on it
  const bushHoopBoreMpa = dIn === 0 ? -p : (-2 * p * d ** 2) / (d ** 2 - dIn ** 2);
  const bushVonMisesMpa = Math.abs(bushHoopBoreMpa);
  return ok({
    ...{ pressureMpa: p, bossHoopMpa, bossVonMisesMpa, bushHoopOutsideMpa, bushHoopBoreMpa, bushVonMisesMpa },
    bossGrowthMm: (2 * p * d ** 2 * dOut) / (boss.youngsMpa * (dOut ** 2 - d ** 2)),
    bushCloseInMm: (2 * p * d ** 2 * dIn) / (bush.youngsMpa * (d ** 2 - dIn ** 2)),
    bossYields: bossVonMisesMpa > boss.yieldMpa,
    bushYields: bushVonMisesMpa > bush.yieldMpa,
  });
}

/**
 * Interference that is left when pressing has flattened the tops of both surfaces.
 *   left = measured - 0.8 (Rz boss + Rz bush)
 *
 * @param measuredMm outside diameter minus bore, as measured [mm]
 * @param roughnessUm Rz of both surfaces [micrometre]
 * @returns [mm]; 0 or less: nothing is left to hold
 * @source DIN 7190-1:2017, as a public page repeats it
 * @example interferenceLeftMm(0.04, { bossRzUm: 10, bushRzUm: 10 }) // 0.024
 */
export const interferenceLeftMm = (measuredMm: number, roughnessUm: { bossRzUm: number; bushRzUm: number }): number =>
  measuredMm - (0.8 * (roughnessUm.bossRzUm + roughnessUm.bushRzUm)) / 1000;
