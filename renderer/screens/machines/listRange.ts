import type { MachineLine } from '#core/contract/machine.ts';

/** Hours left, from the furthest past to the furthest ahead that the one scale of the list shows. */
export type ListRange = { fromHours: number; toHours: number };

/** Past now at least this share of what is ahead, so that the flag stands clear; at most that, however long it is past. */
const BEHIND = { least: 0.1, most: 0.25 } as const;
const LEAST_AHEAD_HOURS = 500;

/**
 * One scale for all machines: nine middles in ten and three bars in four stand on it whole, and every winter being planned.
 * A few with very far to go run off it with a break; they must not squeeze those that are due.
 */
export function listRange(machines: readonly MachineLine[]): ListRange {
  const ranges = machines.flatMap((line) => (line.first && line.group !== 'do-not-use' ? [line.first.hoursLeft] : []));
  const sorted = (pick: (range: (typeof ranges)[number]) => number | null) =>
    ranges
      .map(pick)
      .filter((hours) => hours !== null)
      .sort((a, b) => a - b);
  const planLines = machines.map((line) => line.planLineHours ?? 0);
  const toHours = niceUp(
    Math.max(
      LEAST_AHEAD_HOURS,
      1.1 *
        atShare(
          sorted((range) => range.middle),
          0.9,
        ),
      atShare(
        sorted((range) => range.high),
        0.75,
      ),
      1.15 * Math.max(0, ...planLines),
    ),
  );
  const past = -Math.min(0, ...sorted((range) => range.low));
  const behind = Math.min(BEHIND.most * toHours, Math.max(BEHIND.least * toHours, 1.1 * past));
  return { fromHours: -behind, toHours };
}

/** The next of 500, 1 000, 1 500 ... or, past 5 000, of 6 000, 7 000 ...: the scale ends at a figure. */
function niceUp(hours: number): number {
  const step = hours <= 5000 ? 500 : hours <= 20_000 ? 1000 : 5000;
  return Math.ceil(hours / step) * step;
}

const atShare = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
