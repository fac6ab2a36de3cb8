import { z } from 'zod';
import { operation } from './operation.ts';
import { zCaution, zDay, zDayRange, zDecides, zFacts, zFindingKind, zId, zRange, zSeverity } from './shapes.ts';

export const zOpenFinding = z.object({ finding: zFindingKind, severity: zSeverity, date: zDay, note: z.string() });

/** What one measuring point's forecast says: the row the command line prints. */
export const zForecastRow = z.object({
  machine: z.string(),
  assembly: z.string(),
  position: z.string(),
  point: z.string(),
  partClass: z.string(),
  /** visits with a size of the present part; as-left at 0 h not counted */
  ownReadings: z.int(),
  /** at the as-of day [h]; null: this machine has no hours on record */
  machineHours: z.number().nullable(),
  machineHoursRead: z.number().nullable(),
  readOn: zDay.nullable(),
  /** machine hours while fitted */
  partHours: z.number().nullable(),
  /** true wear at the as-of hours [mm] */
  wearMm: zRange,
  /** slope of wear there, per 1000 machine hours [mm]; low is slow */
  ratePer1000hMm: zRange,
  limitWearMm: z.number().nullable(),
  machineHoursAtLimit: zRange,
  /** machine hours from the as-of hours; negative when the limit has probably passed since the last look */
  hoursLeft: zRange,
  dateAtLimit: zDayRange,
  chancePastLimit: z.number().nullable(),
  /** how far past at its own last size [mm]; null unless it was */
  pastLimitMm: z.number().nullable(),
  basis: z.object({ own: z.number(), borrowed: z.number() }),
  cautions: z.array(z.string()),
  openFindings: z.array(zOpenFinding),
});
export type ForecastRow = z.infer<typeof zForecastRow>;

/** The same, with what a screen needs beside it. */
export const zPointForecast = zForecastRow.extend({
  pointId: zId,
  machineId: zId,
  item: z.int(),
  safety: z.boolean(),
  decides: zDecides,
  /** hours left by the figure that decides; null: no forecast, or beyond */
  decidingHoursLeft: z.number().nullable(),
  /** like parts the class was learned from, and the machines they sit on */
  likeParts: z.int(),
  likeMachines: z.int(),
  /** settings of the forecast that the shop has set otherwise */
  settingsChanged: z.int(),
  /** the codes of `cautions` with their facts */
  cautionFacts: z.array(zCaution),
});
export type PointForecast = z.infer<typeof zPointForecast>;

export const forecastAll = operation(
  'forecast/all',
  z.object({ asOf: zDay.optional() }),
  z.object({ asOf: zDay, rows: z.array(zForecastRow) }),
  { title: 'Forecast every measuring point in the record' },
);

/** What would be left of a range, if one source of doubt were known exactly. */
export const zWidth = z.object({
  /** from low to high hours left, or to the middle where the high end lies beyond [machine h] */
  hours: z.number(),
  to: z.enum(['high', 'middle']),
  /** gauge, visit, start, own-rate, machine, class, curvature, path, drift; of a joint's slack pin-rate and bore-rate too: the range without it [machine h] */
  without: z.array(z.object({ source: z.string(), hours: z.number() })),
  /** the range of dates, and what it would be if the machine's use were known; null: no range of dates [d] */
  days: z.number().nullable(),
  daysWithoutUse: z.number().nullable(),
});

/** Where a forecast's numbers come from, step by step, for a fitter to follow. */
export const zWhy = z.object({
  forecast: zPointForecast,
  /** steps in order: readings, change, part hours, class before, class after, class shape, machine, part, limit, date, settings */
  steps: z.array(z.object({ code: z.string(), facts: zFacts })),
  /** null: no range to take apart */
  width: zWidth.nullable(),
});
export type Why = z.infer<typeof zWhy>;

export const forecastWhy = operation('forecast/why', z.object({ pointId: zId, asOf: zDay.optional() }), zWhy, {
  title: 'Why this number: what a forecast rests on, step by step, and what makes its range wide',
});
