import type { ModelSettings } from '#core/fit/modelSettings.ts';

/** The model as it would be if sizes of one visit shared no error: its scale is next to nothing. */
export const withoutVisitErrors = (settings: ModelSettings): ModelSettings => ({ ...settings, visitErrorGauges: 1e-6 });
