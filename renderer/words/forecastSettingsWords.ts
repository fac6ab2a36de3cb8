import type { ForecastSetting, Moved } from '#core/contract/forecastSettings.ts';
import { hoursLeftFigure, pointOf, type Writing, wholeFigure } from '#core/words/quantityText.ts';
import { counted } from './english.ts';

/** A value as the shop writes it: no more decimals than it has, thousands by a thin gap. */
export const valueText = (value: number, writing: Writing): string =>
  Number.isInteger(value) ? wholeFigure(value) : String(value).replace('.', pointOf(writing));

/** Words of the sheet on which a shop sets its forecasts. */
export const forecastSettingsWords = {
  title: 'How the forecast works',
  sub: 'Every figure the forecast starts from. The program’s own stand beside; most shops change none.',
  key: 'How the forecast works',
  keyWhat: 'What it starts from; kinds of work.',
  loading: 'Fetching what the forecast starts from',
  setting: 'What it is',
  value: 'Here',
  unit: 'Unit',
  usual: 'Program’s own',
  bounds: 'Between',
  source: 'Where that comes from',
  back: 'Put back',
  backOf: (name: string) => `Put back: ${name}`,
  between: ({ from, to }: ForecastSetting, writing: Writing) =>
    `${valueText(from, writing)} to ${valueText(to, writing)}`,
  beyond: (setting: ForecastSetting, writing: Writing) =>
    `${setting.whole ? 'A whole number from' : 'From'} ${valueText(setting.from, writing)} to ${valueText(setting.to, writing)}.`,

  workTypes: 'Kinds of work',
  workTypesHint:
    'What a machine is said to do in its hours. Its parts are expected to wear so many times as fast, until they are measured: then their sizes overrule the word.',
  workType: 'Kind of work',
  timesAsFast: 'Wears, times as fast',
  workTypeAdd: 'Add a kind',
  workTypeDrop: (name: string) => `Take out ${name || 'this kind'}`,
  drop: 'Take out',
  workTypesBack: 'Put back the program’s own',
  workTypeFault: 'A kind has a name of its own, and a figure from 0.2 to 5.',
  newKind: 'new kind',
  rowOf: (what: string, row: string) => `${what}, ${row}`,

  see: 'See what moves',
  seeKeys: 'Ctrl Enter',
  trying: 'Learning and forecasting the shop as it would be',
  moved: ({ forecasts, moved }: Moved) =>
    moved === 0
      ? `None of ${wholeFigure(forecasts)} ${counted(forecasts, 'forecast', 'forecasts')} would move by more than a twentieth.`
      : `${wholeFigure(moved)} of ${wholeFigure(forecasts)} ${counted(forecasts, 'forecast', 'forecasts')} would move by more than a twentieth.`,
  most: ({ most }: Moved) =>
    most === null
      ? ''
      : `Most: ${most.machine}, ${most.position} (${most.point}), from ${hoursLeftFigure(most.beforeHoursLeft)} to ${hoursLeftFigure(most.afterHoursLeft)} hours left.`,
  save: 'Save',
  leave: 'Leave as it was',
  saved: 'Saved. The classes are learned anew beside your work.',
  block: {
    changed: 'Set otherwise',
    changedIs: (n: number) => (n === 0 ? 'nothing' : `${n} ${counted(n, 'figure', 'figures')}`),
    kinds: 'Kinds of work',
    state: 'This sheet',
    unsaved: 'Not saved yet',
    asSaved: 'As saved',
  },
} as const;
