import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { forecastAll, forecastWhy } from '#core/contract/forecast.ts';
import { forecastSettingsRead, forecastSettingsSave, forecastSettingsTry } from '#core/contract/forecastSettings.ts';
import { readForecastSettings } from '#core/record/forecastSettingsStore.ts';
import { USUAL_WORK_TYPES } from '#core/shop/forecastSettings.ts';
import { recordOf } from '#core/use-cases/context.ts';
import { learningSettled } from '#core/use-cases/learning/shopLearning.ts';
import { aHitchMeasuredTwice } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';
import { COARSE } from '#tests/support/coarseForecasts.ts';

let program: Program;
let pointId = 0;
const usual = { workTypes: [...USUAL_WORK_TYPES], reason: '' };
const settingNamed = async (name: string) =>
  (await program.ask(forecastSettingsRead, {})).settings.find((setting) => setting.name === name)!;
const rows = async () => {
  await program.ask(forecastAll, {});
  await learningSettled(program.context);
  return (await program.ask(forecastAll, {})).rows;
};

async function undo(): Promise<void> {
  const { undoableEntryId } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
  await program.ask(entriesUndoLast, { entryId: undoableEntryId!, by: 'Bo' });
}

async function openOne(): Promise<void> {
  program = aProgram();
  // nothing is odd about its sizes: a law drifts on from the last of them
  pointId = (await aHitchMeasuredTwice(program)).strip.pointId;
}

describe('settings of the forecast', () => {
  beforeEach(openOne);
  afterEach(() => program.end());

  test('what the shop changes moves its forecasts, is said beside them, and undo takes it back', async () => {
    const before = await rows();
    await program.ask(forecastSettingsSave, { ...usual, changed: { ...COARSE, driftDelta: 0.4, tradeDistrust: 2 } });
    expect(await settingNamed('driftDelta')).toMatchObject({ value: 0.4, usual: 0.15 });
    // only what differs is kept
    expect(readForecastSettings(recordOf(program.context)).changed).toEqual({ ...COARSE, driftDelta: 0.4 });
    const after = await rows();
    // the further a law may drift, the sooner a limit may come
    const soonest = (of: typeof before) => of.reduce((sum, { hoursLeft }) => sum + (hoursLeft.low ?? 0), 0);
    expect(soonest(after)).toBeLessThan(soonest(before));
    const why = await program.ask(forecastWhy, { pointId });
    expect(why.forecast.settingsChanged).toBe(2);
    expect(why.steps.find(({ code }) => code === 'settings')?.facts).toEqual({
      driftDelta: '0.4 (0.15)',
      classNodes: '4 (15)',
    });
    await program.ask(forecastSettingsSave, { ...usual, changed: { ...COARSE, driftDelta: 0.3 } });
    await undo();
    expect((await settingNamed('driftDelta')).value).toBe(0.4);
    await undo();
    expect(await rows()).toEqual(before);
  });

  test('it is told beforehand how many forecasts would move, and nothing is saved by asking', async () => {
    const kept = program.rows();
    expect(await program.ask(forecastSettingsTry, { changed: COARSE, workTypes: usual.workTypes })).toMatchObject({
      moved: 0,
      most: null,
    });
    const moved = await program.ask(forecastSettingsTry, {
      changed: { ...COARSE, tradeDistrust: 5, driftDelta: 0 },
      workTypes: [],
    });
    expect(moved.forecasts).toBeGreaterThan(0);
    expect(moved.moved).toBeLessThanOrEqual(moved.forecasts);
    expect(moved.most).not.toBeNull();
    expect(program.rows()).toBe(kept);
  });
});

describe('a setting that cannot be', () => {
  beforeAll(openOne);
  afterAll(() => program.end());

  test.each([
    ['a setting there is none of', { changed: { moonPhase: 1 } }, 'changed.moonPhase'],
    ['a value beyond its bounds', { changed: { driftDelta: 3 } }, 'changed.driftDelta'],
    ['half a node', { changed: { classNodes: 6.5 } }, 'changed.classNodes'],
    ['no number', { changed: { driftDelta: '0.2' } }, 'changed.driftDelta'],
    [
      'one kind of work twice',
      {
        workTypes: [
          { name: 'Silage', timesAsFast: 1.2 },
          { name: ' silage', timesAsFast: 1.1 },
        ],
      },
      'workTypes.1.name',
    ],
    [
      'work that wears parts a hundredfold',
      { workTypes: [{ name: 'x', timesAsFast: 100 }] },
      'workTypes.0.timesAsFast',
    ],
  ])('%s, is refused by name, and nothing is kept', async (_what, its, path) => {
    const kept = program.rows();
    const answer = await program.answer(forecastSettingsSave, { changed: {}, ...usual, ...its });
    expect(answer).toMatchObject({ ok: false, fault: { path } });
    expect(program.rows()).toBe(kept);
  });
});
