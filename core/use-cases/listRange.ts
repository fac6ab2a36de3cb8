import type { ListRange } from '../contract/machine.ts';
import type { ListPlace } from '../record/machineForecastStore.ts';

/** Past now at least this share of what is ahead, so that the flag stands clear; at most that, however long it is past. */
const BEHIND = { least: 0.1, most: 0.2 } as const;
const LEAST_AHEAD_HOURS = 500;

/**
 * One scale for all machines. Every machine's blue line stands on it, and seven middles in ten with room for their bars.
 * Those with further to go run off it with a break; they must not squeeze those that are due.
 */
export function listRange(places: readonly Pick<ListPlace, 'lowHours' | 'middleHours' | 'planLineHours'>[]): ListRange {
  const middles: number[] = [];
  let planLine = 0;
  let past = 0;
  for (const { lowHours, middleHours, planLineHours } of places) {
    if (middleHours !== null) middles.push(middleHours);
    planLine = Math.max(planLine, planLineHours ?? 0);
    past = Math.max(past, -(lowHours ?? 0));
  }
  const most = atShare(new Float64Array(middles).sort(), 0.7);
  const toHours = niceUp(Math.max(LEAST_AHEAD_HOURS, 1.25 * most, 1.3 * planLine));
  const behind = Math.min(BEHIND.most * toHours, Math.max(BEHIND.least * toHours, 1.1 * past));
  return { fromHours: -behind, toHours };
}

/** The next of 500, 1 000, 1 500 ... or, past 5 000, of 6 000, 7 000 ...: the scale ends at a figure. */
function niceUp(hours: number): number {
  const step = hours <= 5000 ? 500 : hours <= 20_000 ? 1000 : 5000;
  return Math.ceil(hours / step) * step;
}

const atShare = (sorted: Float64Array, share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
