import type { z } from 'zod';
import type {
  forecastSettingsRead,
  forecastSettingsSave,
  forecastSettingsTry,
  zForecastSettings,
} from '../contract/forecastSettings.ts';
import type { Handler } from '../contract/operation.ts';
import {
  COMMON_PRACTICE,
  defaultModelSettings,
  isLegalSetting,
  type ModelSettings,
  modelSettingNames,
  modelSettingNotes,
  modelSettingsWith,
} from '../fit/modelSettings.ts';
import { writeEntry } from '../record/entry.ts';
import { readForecastSettings, saveForecastSettings } from '../record/forecastSettingsStore.ts';
import { type ForecastSettings, USUAL_WORK_TYPES } from '../shop/forecastSettings.ts';
import { refuseField } from './asked.ts';
import { type Context, entryNow, lifeOf, recordOf } from './context.ts';
import { movedInBackground } from './learning/learnInBackground.ts';
import { learningSoFar } from './learning/shopLearning.ts';

export const forecastSettingsReadHandler: Handler<typeof forecastSettingsRead, Context> = (context) => {
  const { changed, workTypes } = readForecastSettings(recordOf(context));
  const now = modelSettingsWith(changed);
  return {
    settings: modelSettingNames.map((name) => ({
      name,
      value: now[name],
      usual: defaultModelSettings[name],
      ...modelSettingNotes[name],
    })),
    workTypes: [...workTypes],
    usualWorkTypes: [...USUAL_WORK_TYPES],
    workTypesSource: COMMON_PRACTICE,
  };
};

/** Learns and forecasts the shop as it would be, in a thread: whoever asks meanwhile is answered. */
export const forecastSettingsTryHandler: Handler<typeof forecastSettingsTry, Context> = (context, asked) => {
  const forecastSettings = soundSettings(asked);
  const asOf = context.today();
  return movedInBackground({ life: lifeOf(context, { asOf }), asOf, forecastSettings, known: learningSoFar(context) });
};

export const forecastSettingsSaveHandler: Handler<typeof forecastSettingsSave, Context> = (
  context,
  { reason, ...asked },
) => {
  const forecastSettings = soundSettings(asked);
  writeEntry(recordOf(context), entryNow(context, 'forecastSettings/save', ''), (w, entryId) =>
    saveForecastSettings(w, entryId, forecastSettings, reason),
  );
  return { saved: true };
};

/** Only what differs from the program's own. @throws RefusedError not-as-expected: no such setting, beyond its bounds */
function soundSettings({ changed, workTypes }: z.output<typeof zForecastSettings>): ForecastSettings {
  const kept: Record<string, number> = {};
  for (const [name, value] of Object.entries(changed)) {
    const known = modelSettingNames.find((one) => one === name);
    if (!known) return refuseField(`changed.${name}`, `one of ${modelSettingNames.join(', ')}`);
    if (!isLegalSetting(known, value)) refuseField(`changed.${name}`, boundsText(known));
    if (value !== defaultModelSettings[known]) kept[known] = value;
  }
  const names = workTypes.map(({ name }) => name.trim().toLowerCase());
  const twice = names.findIndex((name, i) => names.indexOf(name) !== i);
  if (twice >= 0) refuseField(`workTypes.${twice}.name`, 'a kind of work that is not in the list yet');
  return { changed: kept, workTypes };
}

function boundsText(name: keyof ModelSettings): string {
  const { from, to, whole, unit } = modelSettingNotes[name];
  return `${whole ? 'a whole number from ' : ''}${from} to ${to} ${unit}`;
}
