import type { Random } from './random.ts';

/** How parts of a class truly wear, in worked hours. The program never sees these. */
export type TrueClass = {
  /** typical rate [mm per 1000 worked hours] */
  ratePer1000hMm: number;
  /** scatter of the wear path over `lifeHours`, relative */
  pathScatter: number;
  lifeHours: number;
  /** error all sizes of the class share in one visit: zero of the gauge, hand of the fitter [mm, 1 sd] */
  visitErrorMm: number;
  /** reading step of the usual gauge [mm] */
  stepMm: number;
};

/** Rates invented, of the size the trade speaks of: strips 2 to 3 mm in 5000 to 6000 h and the like. */
export const TRUE_CLASSES: Record<string, TrueClass> = {
  'Nylon slide strip': { ratePer1000hMm: 0.42, pathScatter: 0.12, lifeHours: 5500, visitErrorMm: 0.05, stepMm: 0.05 },
  'Greased pin': { ratePer1000hMm: 0.15, pathScatter: 0.14, lifeHours: 5000, visitErrorMm: 0.01, stepMm: 0.01 },
  'Greased bush': { ratePer1000hMm: 0.17, pathScatter: 0.14, lifeHours: 5000, visitErrorMm: 0.02, stepMm: 0.01 },
  'Pivot slack': { ratePer1000hMm: 0.25, pathScatter: 0.15, lifeHours: 5000, visitErrorMm: 0.03, stepMm: 0.05 },
  'Latch and lock pin': { ratePer1000hMm: 0.18, pathScatter: 0.15, lifeHours: 4500, visitErrorMm: 0.02, stepMm: 0.02 },
  'Towing hook and keeper': {
    ratePer1000hMm: 0.5,
    pathScatter: 0.15,
    lifeHours: 6000,
    visitErrorMm: 0.06,
    stepMm: 0.1,
  },
  'Towing ring': { ratePer1000hMm: 0.55, pathScatter: 0.15, lifeHours: 4500, visitErrorMm: 0.04, stepMm: 0.05 },
  'Swivel collar': { ratePer1000hMm: 0.55, pathScatter: 0.15, lifeHours: 5000, visitErrorMm: 0.04, stepMm: 0.05 },
  'Lift shaft bush': { ratePer1000hMm: 0.024, pathScatter: 0.12, lifeHours: 7000, visitErrorMm: 0.01, stepMm: 0.01 },
  'Linkage eye': { ratePer1000hMm: 0.32, pathScatter: 0.15, lifeHours: 6500, visitErrorMm: 0.05, stepMm: 0.05 },
  'Linkage hook': { ratePer1000hMm: 0.4, pathScatter: 0.15, lifeHours: 6500, visitErrorMm: 0.06, stepMm: 0.1 },
};

/** sd of ln rate between machines (driver, dirt, grease) and between like parts of one machine */
export const MACHINE_HARSHNESS_SD = 0.25;
export const PART_SPREAD_SD = 0.18;

/** worked hours between two steps of a wear path */
const STEP_HOURS = 20;

/** The true life of one part: its departure from the nominal new size against its own worked hours. */
export type TruePart = {
  wearMmAt: (workedHours: number) => number;
  workedHoursAtWear: (wearMm: number) => number;
};

/**
 * A gamma process: wear only ever grows, in uneven steps, about a steady rate.
 * Over `lifeHours` its scatter is `pathScatter` times its mean.
 */
export function wearPath(draw: Random, trueClass: TrueClass, rateFactor: number, newDepartureMm: number): TruePart {
  const rateMmPerHour = (trueClass.ratePer1000hMm / 1000) * rateFactor;
  const scatterSquared = trueClass.pathScatter ** 2;
  const shape = STEP_HOURS / trueClass.lifeHours / scatterSquared;
  const scale = rateMmPerHour * trueClass.lifeHours * scatterSquared;
  const wearMm = [newDepartureMm];
  const reach = (step: number) => {
    while (wearMm.length <= step) wearMm.push(wearMm.at(-1)! + draw.gamma(shape, scale));
  };
  return {
    wearMmAt: (workedHours) => {
      const step = Math.floor(workedHours / STEP_HOURS);
      reach(step + 1);
      const part = workedHours / STEP_HOURS - step;
      return wearMm[step]! + part * (wearMm[step + 1]! - wearMm[step]!);
    },
    workedHoursAtWear: (limitMm) => {
      let step = 0;
      while (wearMm[step]! < limitMm) reach(++step);
      if (step === 0) return 0;
      const below = wearMm[step - 1]!;
      return (step - 1 + (limitMm - below) / (wearMm[step]! - below)) * STEP_HOURS;
    },
  };
}
