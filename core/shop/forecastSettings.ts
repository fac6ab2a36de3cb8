/** A kind of work and what it does to a machine: its parts are expected to wear this many times as fast as usual. */
export type WorkType = { name: string; timesAsFast: number };

/** What the shop has set otherwise in its forecasts. Settings themselves, with bounds and sources, stand in fit/modelSettings.ts. */
export type ForecastSettings = {
  /** only what differs from the program's own, by its name */
  changed: Readonly<Record<string, number>>;
  workTypes: readonly WorkType[];
};

/** The program's own kinds of work (common practice, no source). */
export const USUAL_WORK_TYPES: readonly WorkType[] = [
  { name: 'light', timesAsFast: 0.8 },
  { name: 'normal', timesAsFast: 1 },
  { name: 'hard', timesAsFast: 1.25 },
];

/** Nothing set otherwise. */
export const USUAL_FORECAST_SETTINGS: ForecastSettings = { changed: {}, workTypes: USUAL_WORK_TYPES };
