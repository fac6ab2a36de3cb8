import type { MachineLife } from '../shop/machineLife.ts';
import type { Day } from '../units/day.ts';
import type { HoursLine } from './hoursLine.ts';
import { machineHoursOn } from './machineHours.ts';

/** A stretch of machine hours over which one share of them is work. */
export type ShareStretch = { fromMachineHours: number; share: number };

/**
 * A machine's worked share along its machine hours; each change of share sits at the hours of its day.
 *
 * @returns at least one stretch; the first from minus infinity
 */
export function shareStretches(life: MachineLife, line: HoursLine): ShareStretch[] {
  const stretches: ShareStretch[] = [];
  for (const { from, share } of life.workShares) {
    if (from !== null && from > line.asOf) break;
    const fromMachineHours = from === null ? -Infinity : (machineHoursOn(line, from)?.hours ?? -Infinity);
    stretches.push({ fromMachineHours, share });
  }
  if (stretches[0]?.fromMachineHours !== -Infinity) stretches.unshift({ fromMachineHours: -Infinity, share: 1 });
  return stretches;
}

/**
 * Hours in which the assembly worked while its machine ran from one figure to another:
 *   sum over the stretches of (machine hours in the stretch) x (share of the stretch)
 * @example workedBetween([{ fromMachineHours: -Infinity, share: 0.5 }, { fromMachineHours: 1000, share: 1 }], 800, 1100) // 200
 */
export function workedBetween(
  stretches: readonly ShareStretch[],
  fromMachineHours: number,
  toMachineHours: number,
): number {
  let worked = 0;
  stretches.forEach(({ fromMachineHours: start, share }, index) => {
    const end = stretches[index + 1]?.fromMachineHours ?? Infinity;
    worked += share * Math.max(0, Math.min(end, toMachineHours) - Math.max(start, fromMachineHours));
  });
  return worked;
}

/** The share in force on a day; 1 when nobody has said. */
export function presentShare(life: MachineLife, on: Day): number {
  const inForce = life.workShares.findLast(({ from }) => from === null || from <= on);
  return inForce?.share ?? 1;
}

/** What it does from a day on, as the shop calls it; null: nobody has said. */
export const presentWorkType = (life: MachineLife, on: Day): string | null =>
  life.workShares.findLast(({ from }) => from === null || from <= on)?.workType ?? null;

/**
 * Machine hours that some worked hours take at the present share.
 * @returns null when the share is 0: the assembly does not work at present
 */
export const machineHoursOfWorked = (workedHours: number, share: number): number | null =>
  share > 0 ? workedHours / share : null;
