import type { HoursLine } from '../reading/hoursLine.ts';
import { machineHoursOn } from '../reading/machineHours.ts';
import { type Day, dayFromNumber, dayNumber } from '../units/day.ts';

/** No machine on record is older [d]. */
const FURTHEST_BACK_DAYS = 80 * 366;

/**
 * The first day by whose end a machine had run some hours: the hours line read backwards, by halving on whole days.
 * @param machineHours hours that have run by the line's last node [h]
 * @returns never after the last node's day; the earliest day looked at, for hours before the line begins
 */
export function dayOfPastHours(line: HoursLine, machineHours: number): Day {
  const last = line.nodes.at(-1);
  if (!last) throw new Error('Broken invariant: hours are asked of a line that has some');
  let by = dayNumber(last.takenOn);
  let before = by - FURTHEST_BACK_DAYS;
  while (by - before > 1) {
    const half = Math.floor((before + by) / 2);
    const hours = machineHoursOn(line, dayFromNumber(half))?.hours ?? 0;
    if (hours >= machineHours) by = half;
    else before = half;
  }
  return dayFromNumber(by);
}
