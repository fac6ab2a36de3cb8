import type { MachineBlock } from './machineBlock.ts';
import { APART, type Outwards, outwards, type Slice } from './slice.ts';

/**
 * `bends`: an error of less than this share of the least wear that was measured in its visit bends nothing. A slice is as wide as `ofWear`, a
 * share of that wear, but no narrower than `ofError`, a share of the error itself; their middles run `reach` sd of them all either way. In a class of many parts, whose figures are better
 * known and whose machines are many, slices are only worth their time where they show beside what thinning its figures costs. In one of a dozen
 * parts or fewer, whose figures are wide open, all that is left out shows.
 */
const SLICES = {
  fewest: { bends: 0.1, ofWear: 0.06, ofError: 0.19, reach: 3.5 },
  few: { bends: 0.2, ofWear: 0.08, ofError: 0.28, reach: 3 },
  many: { bends: 0.4, ofWear: 0.12, ofError: 0.4, reach: 2.6 },
};

/**
 * Slices of a visit's shared error e that make it up, narrow beside the wear of its parts: from the middle one upwards, and downwards.
 *
 * Of a rate b = exp(beta) and wear y - e = b t only beta + ln t = ln(y - e) is known, a ridge, straight while e is small beside y and
 * bent when it is not: no normal of beta and e is like it. Along a slice it is straight. Of the visits that hold some part's last
 * size the one whose error is widest beside the wear is sliced: once its error is known, so are the rates, and through them the
 * errors of the visits before.
 *   N(0, sv^2) = sum_k f_k N(k a, w^2),  f_k ~ exp(-(k a)^2 / 2 s^2),  s^2 = sv^2 - w^2
 * w is mended so that the variance of the sum is sv^2 to the last digit.
 * @param parts of the class: a dozen or fewer, few, many
 * @returns null where no visit asks for it
 * @source own derivation
 */
export function visitSlices(block: MachineBlock, visitErrorMm: number, parts: keyof typeof SLICES): Outwards | null {
  const { place, leastWearMm } = block.bent;
  const { bends, ofWear, ofError, reach } = SLICES[parts];
  if (place === 0 || visitErrorMm < bends * leastWearMm) return null;
  const width = Math.max(ofWear * leastWearMm, ofError * visitErrorMm);
  const spread = Math.sqrt(visitErrorMm ** 2 - width ** 2);
  const step = APART * width;
  const most = Math.ceil((reach * spread) / step);
  const weight = (k: number): number => Math.exp(-0.5 * ((k * step) / spread) ** 2);
  let total = 0;
  let square = 0;
  for (let k = -most; k <= most; k++) {
    total += weight(k);
    square += weight(k) * (k * step) ** 2;
  }
  const sd = Math.sqrt(visitErrorMm ** 2 - square / total);
  const slice = (k: number): Slice => ({ place, mean: k * step, sd, lnShare: Math.log(weight(k) / total) });
  return outwards(0, most, slice);
}
