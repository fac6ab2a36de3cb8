import type { WearReading, WearSeries } from '#core/series/wearSeries.ts';
import { day } from '#core/units/day.ts';

export const someDay = day('2026-06-30');

export const aReading = (of: Partial<WearReading> & { workedHours: number; wearMm: number }): WearReading => ({
  workedHoursSd: 0,
  errorSdMm: 0.05,
  visit: `${of.workedHours}`,
  takenOn: someDay,
  ...of,
});

export const aSeries = (of: Partial<WearSeries> & { readings: readonly WearReading[] }): WearSeries => ({
  pointId: 1,
  ordinal: 0,
  machineId: 1,
  partClass: 'slide',
  newSizeSdMm: 0.03,
  startHoursSd: 0,
  present: true,
  ...of,
});
