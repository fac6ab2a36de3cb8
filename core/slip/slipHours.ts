/** A machine's hours as a farmer reads them: what turns machine hours into figures on the present meter. */
export type SlipHours = {
  machineHoursNow: number;
  /** what the present meter should show now, on past its full scale without starting again [h]; null: no meter was ever read */
  dialHoursNow: number | null;
  /** machine hours in one hour of the dial; 1 unless its clock runs at another pace, or it is that of the machine that pulls this one */
  hoursPerDialHour: number;
};

/**
 * Figure on the present meter at some machine hours; machine hours themselves where there is no meter.
 * @example dialOf({ machineHoursNow: 5120, dialHoursNow: 1000, hoursPerDialHour: 1 }, 6120) // 2000
 */
export const dialOf = ({ machineHoursNow, dialHoursNow, hoursPerDialHour }: SlipHours, machineHours: number): number =>
  dialHoursNow === null ? machineHours : dialHoursNow + (machineHours - machineHoursNow) / hoursPerDialHour;

type Range = { low: number | null; middle: number | null; high: number | null };

export function dialRange(hours: SlipHours, machineHours: Range): Range {
  const dial = (at: number | null) => (at === null ? null : dialOf(hours, at));
  return { low: dial(machineHours.low), middle: dial(machineHours.middle), high: dial(machineHours.high) };
}
