import { expect, it } from 'vitest';
import type { ForecastSetting } from '#core/contract/forecastSettings.ts';
import { isSoundType, settingsAsk, settingsForm } from './settingsForm.ts';

const drift: ForecastSetting = {
  name: 'driftDelta',
  value: 0.2,
  usual: 0.15,
  from: 0,
  to: 0.5,
  whole: false,
  unit: 'times',
  meaning: '',
  source: '',
};
const nodes: ForecastSetting = { ...drift, name: 'classNodes', value: 12, usual: 12, from: 4, to: 64, whole: true };
const read = {
  settings: [drift, nodes],
  workTypes: [{ name: 'hard', timesAsFast: 1.25 }],
  usualWorkTypes: [],
  workTypesSource: '',
};

it('gives back what differs from the program’s own, as the shop writes decimals', () => {
  const form = settingsForm(read, ',');
  expect(form.texts.driftDelta).toBe('0,2');
  expect(settingsAsk(form, read.settings)).toEqual({
    changed: { driftDelta: 0.2 },
    workTypes: [{ name: 'hard', timesAsFast: 1.25 }],
  });
  expect(settingsAsk({ ...form, texts: { ...form.texts, driftDelta: '0.15' } }, read.settings)?.changed).toEqual({});
});

it('is not read beyond bounds, in halves of a count, or with a kind of work named twice', () => {
  const form = settingsForm(read, '.');
  const typed = (texts: Record<string, string>) =>
    settingsAsk({ ...form, texts: { ...form.texts, ...texts } }, read.settings);
  expect(typed({ driftDelta: '0.6' })).toBeNull();
  expect(typed({ classNodes: '6.5' })).toBeNull();
  expect(typed({ driftDelta: '' })).toBeNull();
  const twice = { ...form, workTypes: [...form.workTypes, { name: ' Hard', timesText: '1.1' }] };
  expect(isSoundType(twice, 0)).toBe(true);
  expect(isSoundType(twice, 1)).toBe(false);
  expect(settingsAsk(twice, read.settings)).toBeNull();
});
