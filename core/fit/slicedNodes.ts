import type { RateNodes } from './machineBlock.ts';
import { lnWeightOf, type TiltNodes } from './partTilt.ts';
import { MOST_NODES } from './tiltRoom.ts';

/** Nodes are this close in sd of a slice's bell, so that each slice shows its own. */
const OF_SLICE = 1.3;

/** Nodes over the bell of the whole, close enough for the bell of one slice. */
export function nodesForSlices(whole: RateNodes, sliceSd: number): RateNodes {
  const count = Math.min(MOST_NODES - 1, Math.max(whole.count, 2 * Math.ceil(whole.half / (OF_SLICE * sliceSd)) + 1));
  return { ...whole, count };
}

export type SlicedNodes = ReturnType<typeof slicedNodes>;

/**
 * A part's nodes of ln rate over all slices of one of its machine's unknowns: the same nodes in each, its wear there joined by mean and variance.
 * Kept and filled anew.
 */
export function slicedNodes() {
  const row = () => new Float64Array(MOST_NODES);
  const nodes: TiltNodes = { count: 0, lnWeight: row(), beta: row(), wearMm: row(), wearVar: row() };
  const chance = row();
  const first = row();
  const second = row();
  // ln chance of the likeliest slice so far, in which the sums are
  let lnTop = Number.NEGATIVE_INFINITY;
  return {
    clear(): void {
      lnTop = Number.NEGATIVE_INFINITY;
      chance.fill(0);
    },
    /** @param lnChance of the slice, up to a term common to all */
    add(lnChance: number, of: TiltNodes): void {
      nodes.count = of.count;
      if (lnChance > lnTop) {
        const scale = Math.exp(lnTop - lnChance);
        for (const row of [chance, first, second]) for (let i = 0; i < of.count; i++) row[i] = scale * row[i]!;
        lnTop = lnChance;
      }
      const lnAll = lnTop - lnChance + lnWeightOf(of);
      for (let i = 0; i < of.count; i++) {
        const weight = Math.exp(of.lnWeight[i]! - lnAll);
        if (!(weight > 0)) continue;
        if (chance[i] === 0) {
          nodes.beta[i] = of.beta[i]!;
          // wear is summed from there, which keeps its digits
          nodes.wearMm[i] = of.wearMm[i]!;
          first[i] = 0;
          second[i] = 0;
        }
        const off = of.wearMm[i]! - nodes.wearMm[i]!;
        chance[i] = chance[i]! + weight;
        first[i] = first[i]! + weight * off;
        second[i] = second[i]! + weight * (of.wearVar[i]! + off * off);
      }
    },
    /** @returns the nodes of all slices added since it was cleared */
    joined(): TiltNodes {
      for (let i = 0; i < nodes.count; i++) {
        nodes.lnWeight[i] = Math.log(chance[i]!);
        if (chance[i] === 0) continue;
        const off = first[i]! / chance[i]!;
        nodes.wearMm[i] = nodes.wearMm[i]! + off;
        nodes.wearVar[i] = Math.max(0, second[i]! / chance[i]! - off * off);
      }
      return nodes;
    },
  };
}
