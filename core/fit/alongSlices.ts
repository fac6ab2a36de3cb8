import { blockState, keepState, restoreState } from './blockState.ts';
import { type MachineBlock, sayOfRate, sweepBlock } from './machineBlock.ts';
import type { ClassFigures } from './partSite.ts';
import type { PartLaws } from './partTilt.ts';
import type { Outwards, Slice } from './slice.ts';
import { visitSlices } from './visitSlices.ts';

/** A slice this much (ln) less likely than the likeliest says nothing, nor do those beyond it. */
const FAR_BELOW = 6;

/**
 * Sweeps a block, which has been swept as a whole, along each slice of one of its unknowns: from the middle one outwards each begins
 * where the one before stood, and so has settled. Its sites are left as they were.
 * @param sweep of the block along a slice, which gives its ln Z
 * @param use is given the ln chance of each slice, up to a term common to all
 */
export function forEachSlice(
  block: MachineBlock,
  slices: Outwards,
  sweep: (slice: Slice) => number,
  use: (lnChance: number) => void,
): void {
  const whole = blockState([block]);
  keepState([block], whole);
  let lnTop = Number.NEGATIVE_INFINITY;
  for (const outwards of slices) {
    let lnBefore = Number.NEGATIVE_INFINITY;
    for (const slice of outwards) {
      const lnChance = slice.lnShare + sweep(slice);
      if (lnChance < lnTop - FAR_BELOW && lnChance < lnBefore) break;
      if (lnChance > Number.NEGATIVE_INFINITY) use(lnChance);
      lnTop = Math.max(lnTop, lnChance);
      lnBefore = lnChance;
    }
    restoreState([block], whole);
  }
}

/**
 * One sweep of a block in a class of a dozen parts or fewer; where a visit's shared error asks for it, along slices of that error, over
 * which Z and what is held of u are summed:
 *   Z = sum_k f_k Z_k,  m = sum_k r_k m_k,  v = sum_k r_k (v_k + m_k^2) - m^2,  r_k = f_k Z_k / Z
 * @returns ln Z, the ln chance of its readings
 * @source own derivation: mean and variance of a mixture
 */
export function sweepInSlices(
  block: MachineBlock,
  p: number,
  q: number,
  figures: ClassFigures,
  laws: PartLaws,
): number {
  const lnWhole = sweepBlock(block, p, q, figures, laws);
  const slices = visitSlices(block, figures.visitErrorMm, 'fewest');
  if (slices === null) return lnWhole;
  let sum0 = 0;
  let sum1 = 0;
  let sum2 = 0;
  const sweep = (slice: Slice) => sweepBlock(block, p, q, figures, laws, slice);
  forEachSlice(block, slices, sweep, (lnChance) => {
    const chance = Math.exp(lnChance - lnWhole);
    const u = block.mean[0]!;
    sum0 += chance;
    sum1 += chance * u;
    sum2 += chance * (block.cov[0]! + u * u);
  });
  if (!(sum0 > 0 && Number.isFinite(sum0))) return lnWhole;
  const mean = sum1 / sum0;
  const lnZ = lnWhole + Math.log(sum0);
  sayOfRate(block, p, q, { mean, variance: sum2 / sum0 - mean * mean, lnZ });
  return lnZ;
}
