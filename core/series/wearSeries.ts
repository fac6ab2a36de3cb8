import type { Day } from '../units/day.ts';

/** One look at a part: how far it had worn at how many worked hours since its renewal. */
export type WearReading = {
  /** worked hours since the renewal that began this series [h], >= 0 */
  workedHours: number;
  /** 1 sd of those hours, beyond the doubt about the start which all readings share [h] */
  workedHoursSd: number;
  /** departure from the nominal new size [mm]; positive is worn, negative is legal */
  wearMm: number;
  /** 1 sd of the size: gauge, repeats and reading step together [mm], > 0 */
  errorSdMm: number;
  /** sizes of one machine taken on one day share a visit, and with it a gauge's zero and a fitter's hand */
  visit: string;
  takenOn: Day;
};

/**
 * The life of one part, from one renewal to the next: what the wear model is fitted to.
 * Made only by `partSeries()`. Readings are sorted by worked hours.
 */
export type WearSeries = {
  /** measuring point, and which of its parts: 0 is the first on record */
  pointId: number;
  ordinal: number;
  /** machine whose harshness the part shares: where it sits now, or where it sat at its end */
  machineId: number;
  partClass: string;
  /** 1 sd of the new size about its nominal [mm]: tolerance width / 4 (tau0 of the model) */
  newSizeSdMm: number;
  /** 1 sd of the hours at which the part was fitted [h]; shifts all its readings alike; 0 when known */
  startHoursSd: number;
  /** ln of how many times as fast its parts are expected to wear on this machine, by the shop's word on it; absent: 0 */
  expectedLnHarshness?: number;
  /** false: a later part has taken its place; the series teaches the class, and is not forecast */
  present: boolean;
  readings: readonly WearReading[];
};
