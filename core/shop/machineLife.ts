import type { Day } from '../units/day.ts';

/** What was read, said or done at a machine's hour meter. */
export type DialEventKind = 'reading' | 'estimate' | 'new-meter' | 'rollover';

/**
 * One row of a machine's hours, in the order it happened (day, then order of entry).
 *  - reading: the dial, as read
 *  - estimate: in dial terms, with its error
 *  - new-meter: the old meter's last figure (null: not known) and what the new one shows
 *  - rollover: the first reading after the meter passed its full scale
 */
export type DialEvent = {
  id: number;
  takenOn: Day;
  kind: DialEventKind;
  /** what the dial shows [h]; null only on a new meter whose old last figure is not known */
  dialHours: number | null;
  /** what the new meter shows at its fitting [h]; only on new-meter */
  newDialHours: number | null;
  /** 1 sd [h]; null: a reading is exact, an estimate takes 25 % of the hours since the last reading */
  errorHours: number | null;
  /** machine hours per hour on the dial from here on (a clock that runs at another pace); only on the first row and new-meter; absent: 1 */
  hoursPerDialHour?: number;
  /** kept out of the machine's hours: questioned, and nobody has answered yet */
  parked: boolean;
};

/** The share of its hours in which a machine's assemblies work, from a day on (until the next one). */
export type WorkShare = { from: Day | null; share: number; workType: string | null };

/** The machine that pulls another, and the share of its hours in which it does. */
export type PulledBy = { kind: 'pulled'; pullerId: number; share: number };

/**
 * Where a machine's hours come from, from a day on until the next such row, while no meter of its own tells them.
 *  - pulled: a share of the hours of the machine that pulls it
 *  - yearly: so many hours a year, as somebody reckons
 *  - own: its own dial and estimates again
 */
export type HoursSource = {
  from: Day;
  /** 1 sd of one year's hours, as a share of them; null: the usual of an estimate */
  errorShare: number | null;
} & (PulledBy | { kind: 'yearly'; hoursPerYear: number } | { kind: 'own' });

/** The source in force on a day; null: its own dial. */
export function hoursSourceOn(sources: readonly HoursSource[], on: Day): Exclude<HoursSource, { kind: 'own' }> | null {
  const inForce = sources.findLast(({ from }) => from <= on);
  return inForce && inForce.kind !== 'own' ? inForce : null;
}

/** Everything machine hours rest on, for one machine. */
export type MachineLife = {
  machineId: number;
  /** digits of the present and earlier meters: full scale is 10^digits; null: not known */
  meterDigits: number | null;
  /** machine hours that the first row's dial does not show: they are added to it; null: the first row's dial is the machine hours */
  hoursBefore: number | null;
  /** sorted by day, then order of entry */
  dialEvents: readonly DialEvent[];
  /** sorted; the first has from: null. Empty means 1 throughout */
  workShares: readonly WorkShare[];
  /** sorted by day; absent or empty: its own dial throughout */
  hoursSources?: readonly HoursSource[];
};
