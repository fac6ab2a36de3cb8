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

/** Where a forecast's numbers come from, step by step, for a fitter to follow. */
export const forecastWhy = operation(
  'forecast/why',
  z.object({ pointId: zId, asOf: zDay.optional() }),
  z.object({
    forecast: zPointForecast,
    /** steps in order: readings, change, part hours, class before, class after, part, limit, date */
    steps: z.array(z.object({ code: z.string(), facts: zFacts })),
    /** share of the width of hours left that each source brings: class, own-rate, path, gauge, visit, start, drift */
    width: z.array(z.object({ source: z.string(), share: z.number() })),
  }),
  { title: 'Why this number: what a forecast rests on, step by step' },
);
