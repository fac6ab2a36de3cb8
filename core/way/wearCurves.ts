import type { z } from 'zod';
import type { PointForecast } from '../contract/forecast.ts';
import type { zCurvePoint } from '../contract/machine.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { type JointLaw, slackAt } from '../forecast/slackOfJoint.ts';
import { wearFan } from '../forecast/wearFan.ts';
import type { PartSeries } from '../series/partSeries.ts';
import { sizeOf } from '../series/visitSizes.ts';
import type { WearsWay } from '../shop/measuringPoint.ts';
import { fittedWear } from './fittedWear.ts';

type CurvePoint = z.infer<typeof zCurvePoint>;

/** Enough for a smooth line on any screen: the fitted line bends early in a life, the fan hardly at all. */
const STEPS = { fitted: 24, fan: 12 } as const;

export type CurvesFrom = {
  law: PartLaw;
  /** a slack forecast from pin and bore together */
  joint?: JointLaw | null;
  series: PartSeries;
  forecast: PointForecast;
  wears: WearsWay;
  /** worked hours in one machine hour at present, > 0 */
  share: number;
  settings: ModelSettings;
};

/** Sizes along the present part's life: fitted up to its last size, then the fan up to the high hours at its limit. */
export function wearCurves(from: CurvesFrom): { fitted: CurvePoint[]; fan: CurvePoint[] } {
  const { law, series, wears, settings } = from;
  const axis = axisOfWorked(series, from.share);
  if (!axis || series.workedHoursNow === null) return { fitted: [], fan: [] };
  const size = (wearMm: number, workedHours: number) =>
    sizeOf(wears, series.presentNewSizeMm, wearMm) - packedBy(series, workedHours);
  const inSizes = ({ workedHours, low, middle, high }: Wear): CurvePoint => ({
    machineHours: axis(workedHours),
    low: Math.min(size(low, workedHours), size(high, workedHours)),
    middle: size(middle, workedHours),
    high: Math.max(size(low, workedHours), size(high, workedHours)),
  });
  if (from.joint) return { fitted: [], fan: jointFan(from, from.joint).map(inSizes) };
  const last = law.lastHours ?? 0;
  const fitted = last > 0 ? fittedWear(law, series.present, steps(0, last, STEPS.fitted)) : [];
  const until = fanUntil(from);
  const fan = until > last ? wearFan(law, steps(last, until, STEPS.fan), settings) : [];
  return { fitted: fitted.map(inSizes), fan: fan.map(inSizes) };
}

/** Packing put in by some worked hours: what is measured then is smaller by it [mm]. */
const packedBy = ({ shims }: PartSeries, workedHours: number): number =>
  shims.reduce(
    (sum, shim) => sum + (shim.workedHours !== null && shim.workedHours <= workedHours ? shim.shimMm : 0),
    0,
  );

/** Slack to come, from pin and bore together. */
function jointFan(from: CurvesFrom, joint: JointLaw): Wear[] {
  const now = from.series.workedHoursNow ?? 0;
  return steps(now, fanUntil(from), STEPS.fan).map((workedHours) => ({
    workedHours,
    ...slackAt(joint, workedHours - now, from.settings.driftDelta),
  }));
}

type Wear = { workedHours: number; low: number; middle: number; high: number };

/** To the high hours at limit; without any, to as far again as the part has run, or to half a typical life. */
function fanUntil({ law, series, forecast, share }: CurvesFrom): number {
  const now = series.workedHoursNow ?? 0;
  const left = forecast.hoursLeft.high ?? forecast.hoursLeft.middle ?? forecast.hoursLeft.low;
  return left === null ? Math.max(2 * now, law.hRefHours / 2) : Math.max(now, now + left * share);
}

const steps = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

/**
 * Place of worked hours on the machine's hours axis: straight between the moments whose place is known, beyond now at the
 * present share, as the forecast's hours are. Null where the machine has no hours on record.
 */
function axisOfWorked(series: PartSeries, share: number): ((workedHours: number) => number) | null {
  const { presentStartMachineHours: start, workedHoursNow, machineHoursNow } = series;
  if (!start || workedHoursNow === null || machineHoursNow === null) return null;
  const known = [
    { worked: 0, axis: start.hours },
    ...series.history
      .filter((visit) => visit.ordinal === series.present.ordinal)
      .flatMap(({ workedHours, axisHours }) =>
        workedHours === null || axisHours === null ? [] : [{ worked: workedHours, axis: axisHours }],
      ),
    { worked: workedHoursNow, axis: machineHoursNow },
  ].sort((a, b) => a.worked - b.worked);
  return (worked) => {
    const after = known.findIndex((moment) => moment.worked >= worked);
    const next = known[after];
    const before = known[after - 1];
    if (!next) return machineHoursNow + (worked - workedHoursNow) / share;
    if (!before || next.worked === before.worked) return next.axis;
    const along = (worked - before.worked) / (next.worked - before.worked);
    return before.axis + along * (next.axis - before.axis);
  };
}
