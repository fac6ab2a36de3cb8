/** One meter, or one lap of it, from its fitting (or from the last figure of the lap before) on. */
export type MeterSpan = {
  fromDayOf: number;
  /** null: still in place */
  toDayOf: number | null;
  dialHoursAtStart: number;
  machineHoursAtStart: number;
  hoursPerDialHour: number;
  driftVariance: number;
};

/** Machine hours at which one meter shows a figure. */
export const machineHoursOnMeter = (meter: MeterSpan, dialHours: number): number =>
  meter.machineHoursAtStart + meter.hoursPerDialHour * (dialHours - meter.dialHoursAtStart);

/** Full scale of a meter whose digits nobody noted: the least power of ten above what it has shown, four digits at least. */
export const guessedFullScale = (dialHours: number): number =>
  10 ** Math.max(4, Math.ceil(Math.log10(Math.max(1, dialHours + 1))));
