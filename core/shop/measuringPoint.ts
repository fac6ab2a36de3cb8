import type { Day } from '../units/day.ts';

/** Which way a size goes as the part wears: a strip or pin down, a bore or slack up. */
export type WearsWay = 'down' | 'up';

/** Sizes a point is judged by, from a day on; a changed limit leaves older jobs judged by the limit of their day. */
export type PointLimits = {
  from: Day | null;
  newSizeMm: number;
  /** whole width: 12.0 +-0.1 is 0.2; null: the class default */
  newSizeTolMm: number | null;
  renewAtMm: number | null;
  rejectAtMm: number | null;
  /** whose figure it is: maker, standard, shop's own rule */
  source: string | null;
  /**
   * came with a renewal of its day, done here: what was found that day is judged by the limits before; or done elsewhere,
   * and found that day. Absent: a person's own change
   */
  withRenewal?: 'here' | 'elsewhere';
};

export type SizeEvent = 'as-found' | 'as-left';

/** One size taken at one station of a measuring point. */
export type Size = {
  id: number;
  takenOn: Day;
  /** dial reading of the machine it sat on [h]; null: by date */
  dialHours: number | null;
  /** "front", "A"...; empty where the point has one station */
  station: string;
  sizeMm: number;
  event: SizeEvent;
  /** 1 sd [mm]; null: the point's own */
  gaugeErrorMm: number | null;
  /** reading step of the gauge [mm]; 0 when not known */
  gaugeStepMm: number;
  /** kept out of the forecast: questioned, and nobody has answered yet */
  parked: boolean;
};

/**
 * What was done when a position's wear started again:
 *  - new-part: of the standard size; hours not known: renewed elsewhere
 *  - bush, weld-and-bore: built up and brought back to size
 *  - oversize: pin or bore of another size, which is the position's standard from that day; its limits move with it
 *  - turned: the same strip on its other face: nothing new in it, so it goes on from the thickness that was left
 */
export const RENEWAL_KINDS = ['new-part', 'bush', 'weld-and-bore', 'oversize', 'turned'] as const;
export type RenewalKind = (typeof RENEWAL_KINDS)[number];

/**
 * The moment a position's wear starts again.
 *  - hoursKnown: on this day, at `dialHours` or by date. As-found sizes of the day are the old part's, as-left ones the new part's at 0 h
 *  - not known (renewed elsewhere): some time between the previous size and this day; every size of the day is the new part's
 */
export type Renewal = {
  id: number;
  takenOn: Day;
  /** null: by date, or with `hoursKnown` false not known */
  dialHours: number | null;
  hoursKnown: boolean;
  /** size of the part put in [mm]; null: the new size */
  sizeMm: number | null;
  /** absent: a new part */
  kind?: RenewalKind;
  /** only this station's piece; absent or empty: the whole part */
  station?: string;
  /** of a joint's slack: one of its ends was renewed, and slack goes on from what the others leave */
  carriesOn?: boolean;
  /** an oversize part carries its size; absent or null: nobody said */
  stamped?: boolean | null;
};

/** Packing put behind a part: the slack is less by it, the metal is as worn as before. */
export type Shim = {
  id: number;
  takenOn: Day;
  /** dial reading of that visit [h]; null: by date */
  dialHours: number | null;
  /** thickness put in, below 0 taken out [mm] */
  shimMm: number;
};

/** Where the assembly sat, from a day on: a machine, or the shelf (null). */
export type Sitting = {
  machineId: number | null;
  from: Day | null;
  /** dial of the machine it left, on that day [h]; null: by date */
  dialHours: number | null;
  /** dial of the machine it came to [h]; null: by date */
  toDialHours: number | null;
};

/** Everything one measuring point's forecast rests on. */
export type PointLife = {
  pointId: number;
  partClass: string;
  wears: WearsWay;
  /** towing or lifting: the low figure decides */
  safety: boolean;
  /** 1 sd [mm] */
  gaugeErrorMm: number;
  /** machine hours when the first part on record was fitted: 0 as built; null: not known */
  fittedMachineHours: number | null;
  /** sorted; the first has from: null */
  limits: readonly PointLimits[];
  /** sorted by day, then order of entry */
  sizes: readonly Size[];
  renewals: readonly Renewal[];
  /** what packing changes the slack measured here; sorted by day, then order of entry. Absent: none */
  shims?: readonly Shim[];
  /** where along or across the part it is read; absent or empty: one reading */
  stations?: readonly string[];
  /** sorted; the first has from: null */
  sittings: readonly Sitting[];
};
