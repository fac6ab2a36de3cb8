import type { MachineBlock } from './machineBlock.ts';
import { APART, type Outwards, outwards, type Slice } from './slice.ts';

/** Slices are as wide as what is held of u with all parts in, but no wider than this share of what is held without them. */
const MOST_OF_PRIOR = 0.75;

/** So many either way from where u is likeliest: what lies further out is nothing. */
const MOST_OUTWARDS = 5;

/** A machine's parts that together are this far from a normal of u make what is held of it half a per cent too narrow. */
const LEAST_SKEW = 0.02;

/**
 * Slices of u, the ln rate to be expected of a class on its machine, that make up what is held of it without its parts, no wider
 * than what is held with them: from the likeliest one upwards, and downwards. Ask after a sweep.
 *
 * What a part says of its own ln rate is skew, the more so the less sharply it was read; where parts of a machine hardly differ it
 * says the same of u, and the product of several such is narrower as normals than it is. Along a slice it is as near a normal as any.
 *   N(p, q) = sum_k f_k N(p + k a, w^2),  f_k ~ exp(-(k a)^2 / 2 s^2),  s^2 = q - w^2
 * @returns null where no part asks for it, or it is alone on its machine
 * @source own derivation
 */
export function rateSlices(block: MachineBlock, partScatter: number): Outwards | null {
  if (block.read.length < 2 || skewOf(block, partScatter) < LEAST_SKEW) return null;
  const p = block.priorMean[0]!;
  const q = block.priorVar[0]!;
  const sd = Math.min(Math.sqrt(block.cov[0]!), MOST_OF_PRIOR * Math.sqrt(q));
  const spreadVar = q - sd * sd;
  const step = APART * sd;
  const middle = Math.round((block.mean[0]! - p) / step);
  const slice = (k: number): Slice => {
    const off = k * step;
    return { place: 0, mean: p + off, sd, lnShare: (-0.5 * off * off) / spreadVar };
  };
  return outwards(middle, MOST_OUTWARDS, slice);
}

/**
 * How skew the skewest part makes what is held of u: a rate good to 1 sd of r ln has a skew of about 3 r in ln, of which its own scatter
 * about the machine, of variance w, leaves (r^2 / (r^2 + w))^(3/2); squared, as it tells on a variance, and without its 9.
 */
function skewOf({ read }: MachineBlock, partScatter: number): number {
  let most = 0;
  for (const part of read) {
    const toldVar = 1 / part.precision[0]!; // r^2 + w, as its site has it
    if (!(toldVar > 0)) continue;
    const ownVar = Math.max(0, toldVar - partScatter ** 2);
    most = Math.max(most, ownVar * (ownVar / toldVar) ** 3);
  }
  return most;
}
