import type { PartLaw } from '../fit/partLaw.ts';

/**
 * A part's law made so many times as wide about its own middle: what is held of its ln rate and of the wear at its last size
 * is drawn apart about the mean, and the ups and downs of its path and their drift grow alike. The 80 % range of sizes foretold
 * grows by about the factor; middles stay where they are, but for what the skew of a rate moves.
 *
 * @param by 1 or more; 1 gives the law back as it is
 * @source own derivation: a spread about a mean, times a factor
 */
export function widenedLaw(law: PartLaw, by: number): PartLaw {
  if (by === 1) return law;
  const { lnRateMean } = law.basis;
  let meanMm = 0;
  for (let i = 0; i < law.weight.length; i++) meanMm += law.weight[i]! * law.wearMm[i]!;
  return {
    ...law,
    rate: law.rate.map((rate) => Math.exp(lnRateMean + by * (Math.log(rate) - lnRateMean))),
    wearMm: law.wearMm.map((wearMm) => meanMm + by * (wearMm - meanMm)),
    wearVar: law.wearVar.map((variance) => by * by * variance),
    shapes: law.shapes.map((shape) => ({ ...shape, pathScatter: by * shape.pathScatter })),
    basis: { ...law.basis, lnRateVar: by * by * law.basis.lnRateVar },
    widenedBy: by,
  };
}
