import { z } from 'zod';
import { operation } from './operation.ts';
import { zName, zNote } from './shapes.ts';

/** A kind of work: parts on a machine said to do it are expected to wear this many times as fast as usual. */
export const zWorkType = z.object({ name: zName, timesAsFast: z.number().min(0.2).max(5) });

/** What a shop may set otherwise; settings are named as the program names them, each within bounds of its own. */
export const zForecastSettings = z.object({
  /** only those that are to differ from the program's own */
  changed: z.record(z.string().max(60), z.number()),
  workTypes: z.array(zWorkType).max(20),
});

/** One setting with its meaning, where the program's own value comes from, and how far it may be moved. */
export const zForecastSetting = z.object({
  name: z.string(),
  value: z.number(),
  /** the program's own */
  usual: z.number(),
  from: z.number(),
  to: z.number(),
  /** a count: no fractions */
  whole: z.boolean(),
  unit: z.string(),
  meaning: z.string(),
  source: z.string(),
});
export type ForecastSetting = z.infer<typeof zForecastSetting>;

export const forecastSettingsRead = operation(
  'forecastSettings/read',
  z.object({}),
  z.object({
    settings: z.array(zForecastSetting),
    workTypes: z.array(zWorkType),
    usualWorkTypes: z.array(zWorkType),
    workTypesSource: z.string(),
  }),
  { title: 'Every constant and default of the forecast, with its source and what the shop has set otherwise' },
);

/** How forecasts would move; those without hours left before or after are not counted. */
export const zMoved = z.object({
  forecasts: z.int(),
  /** middle hours left that would move by more than this share of the hours there were at the last size */
  moved: z.int(),
  movedBeyondShare: z.number(),
  /** the one that would move most; null: none moves */
  most: z
    .object({
      machine: z.string(),
      position: z.string(),
      point: z.string(),
      beforeHoursLeft: z.number(),
      afterHoursLeft: z.number(),
    })
    .nullable(),
});
export type Moved = z.infer<typeof zMoved>;

export const forecastSettingsTry = operation('forecastSettings/try', zForecastSettings, zMoved, {
  title: 'How many forecasts other settings would move; nothing is saved',
});

export const forecastSettingsSave = operation(
  'forecastSettings/save',
  zForecastSettings.extend({ reason: zNote }),
  z.object({ saved: z.literal(true) }),
  { title: 'Set constants and defaults of the forecast otherwise, or back to the program’s own' },
);
