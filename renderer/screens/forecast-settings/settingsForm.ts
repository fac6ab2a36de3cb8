import type { ForecastSetting, forecastSettingsRead, forecastSettingsTry } from '#core/contract/forecastSettings.ts';
import type { AskOf, ReplyOf } from '#core/contract/operation.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { valueText } from '#renderer/words/forecastSettingsWords.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

/** The settings as typed. */
export type SettingsForm = {
  texts: Readonly<Record<string, string>>;
  workTypes: readonly { name: string; timesText: string }[];
};

type Read = ReplyOf<typeof forecastSettingsRead>;
export type SettingsAsk = AskOf<typeof forecastSettingsTry>;

export const settingsForm = ({ settings, workTypes }: Read, writing: Writing): SettingsForm => ({
  texts: Object.fromEntries(settings.map(({ name, value }) => [name, valueText(value, writing)])),
  workTypes: typesForm(workTypes, writing),
});

export const typesForm = (types: Read['workTypes'], writing: Writing): SettingsForm['workTypes'] =>
  types.map(({ name, timesAsFast }) => ({ name, timesText: valueText(timesAsFast, writing) }));

/** A setting's value as typed; null where it is none, or beyond what may be set. */
export function readSetting({ from, to, whole }: ForecastSetting, text: string): number | null {
  const read = readNumber(text, 'h');
  if (!read.ok || read.value < from || read.value > to || (whole && !Number.isInteger(read.value))) return null;
  return read.value;
}

const readTimes = (text: string): number | null => {
  const read = readNumber(text, 'h');
  return read.ok && read.value >= 0.2 && read.value <= 5 ? read.value : null;
};

/** Whether a row of the kinds of work can stand: named, by no name twice, with a figure. */
export function isSoundType(form: SettingsForm, row: number): boolean {
  const named = form.workTypes.map(({ name }) => name.trim().toLowerCase());
  const own = named[row] ?? '';
  return own !== '' && named.indexOf(own) === row && readTimes(form.workTypes[row]?.timesText ?? '') !== null;
}

/** What the form stands for; null where something could not be read. */
export function settingsAsk(form: SettingsForm, settings: readonly ForecastSetting[]): SettingsAsk | null {
  const changed: Record<string, number> = {};
  for (const setting of settings) {
    const value = readSetting(setting, form.texts[setting.name] ?? '');
    if (value === null) return null;
    if (value !== setting.usual) changed[setting.name] = value;
  }
  if (form.workTypes.some((_, row) => !isSoundType(form, row))) return null;
  return {
    changed,
    workTypes: form.workTypes.map(({ name, timesText }) => ({
      name: name.trim(),
      timesAsFast: readTimes(timesText) ?? 1,
    })),
  };
}
