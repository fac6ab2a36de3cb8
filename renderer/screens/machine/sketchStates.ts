import type { RingState } from '#core/axis/itemRing.ts';

/** What asks for most comes first. */
const URGENCY: readonly RingState[] = ['stop', 'now', 'with-it', 'leave', 'none', 'chosen'];

/** A ring on the drawing stands for all points of its position: it shows the one that asks for most. */
export function sketchStates(rows: readonly { item: number; state: RingState }[]): Map<number, RingState> {
  const states = new Map<number, RingState>();
  for (const { item, state } of rows) {
    const was = states.get(item);
    if (was === undefined || URGENCY.indexOf(state) < URGENCY.indexOf(was)) states.set(item, state);
  }
  return states;
}
