import { expect, test } from 'vitest';
import {
  defaultModelSettings,
  isLegalSetting,
  modelSettingNames,
  modelSettingNotes,
  modelSettingsWith,
} from '#core/fit/modelSettings.ts';
import { settingGroups, settingName } from '#core/words/settingText.ts';

test('every setting of the forecast has a name, a place on the sheet, a unit, a meaning and a source', () => {
  const shown = settingGroups.flatMap(({ names }) => names);
  expect([...shown].sort()).toEqual([...modelSettingNames].sort());
  for (const name of modelSettingNames) {
    const { unit, meaning, source } = modelSettingNotes[name];
    expect(settingName(name)).not.toBe(name);
    for (const text of [unit, meaning, source]) expect(text).not.toBe('');
  }
});

test('the values a record begins with may be given by a shop; absurd ones are passed over', () => {
  for (const name of modelSettingNames) expect(isLegalSetting(name, defaultModelSettings[name]), name).toBe(true);
  const absurd = Object.fromEntries(modelSettingNames.map((name) => [name, -1]));
  expect(modelSettingsWith(absurd)).toEqual(defaultModelSettings);
  expect(modelSettingsWith({ ...absurd, driftDelta: 0.2, classNodes: 6.5, unheardOf: 3 })).toEqual({
    ...defaultModelSettings,
    driftDelta: 0.2,
  });
});
