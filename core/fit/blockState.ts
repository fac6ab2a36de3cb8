import type { MachineBlock } from './machineBlock.ts';

/**
 * Where the sites of some blocks stand, kept so that later sums can begin there: a sum begun from a far one may lose its way.
 * Per block kappa, eta, lambda; per part its site and bell.
 */
export type BlockState = Float64Array;

/** Fields of a part's site and bell, one after another. */
const partLength = (d: number): number => d * d + d + 3;

export function blockState(blocks: readonly MachineBlock[]): BlockState {
  let length = 0;
  for (const block of blocks) {
    length += 3;
    for (const part of block.read) length += partLength(part.d);
  }
  return new Float64Array(length);
}

export function keepState(blocks: readonly MachineBlock[], state: BlockState): void {
  let at = 0;
  for (const block of blocks) {
    state[at++] = block.kappa;
    state[at++] = block.eta;
    state[at++] = block.lambda;
    for (const part of block.read) {
      for (let i = 0; i < part.precision.length; i++) state[at++] = part.precision[i]!;
      for (let i = 0; i < part.shift.length; i++) state[at++] = part.shift[i]!;
      state[at++] = part.lnScale;
      state[at++] = part.bellMean;
      state[at++] = part.bellSd;
    }
  }
}

export function restoreState(blocks: readonly MachineBlock[], state: BlockState): void {
  let at = 0;
  for (const block of blocks) {
    block.kappa = state[at++]!;
    block.eta = state[at++]!;
    block.lambda = state[at++]!;
    for (const part of block.read) {
      for (let i = 0; i < part.precision.length; i++) part.precision[i] = state[at++]!;
      for (let i = 0; i < part.shift.length; i++) part.shift[i] = state[at++]!;
      part.lnScale = state[at++]!;
      part.bellMean = state[at++]!;
      part.bellSd = state[at++]!;
    }
  }
}

/** Mean and sd of each part's ln rate in a kept state, one part after another. */
export function bellsIn(blocks: readonly MachineBlock[], state: BlockState): Float64Array {
  const bells: number[] = [];
  let at = 0;
  for (const block of blocks) {
    at += 3;
    for (const { d } of block.read) {
      at += partLength(d);
      bells.push(state[at - 2]!, state[at - 1]!);
    }
  }
  return Float64Array.from(bells);
}
