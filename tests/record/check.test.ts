import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { checkExplain, checkRead, checkWorth } from '#core/contract/check.ts';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { slipMake } from '#core/contract/slip.ts';
import { stripDownJudge, stripDownSave } from '#core/contract/stripDown.ts';
import { keptForecastsOf } from '#core/record/keptForecastStore.ts';
import { recordOf } from '#core/use-cases/context.ts';
import { aShopWithAHitch, aSize } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

/** Forecasts kept as they stood and laid against what came, through the record. The hitch and its sizes are invented. */
let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
beforeEach(async () => {
  program = aProgram();
  shop = await aShopWithAHitch(program);
});
afterEach(() => program.end());

const saved = (takenOn: string, dialHours: number, frontMm: number, renewed = false) => {
  const pointId = shop.strip.pointId;
  const renewals = renewed ? [{ pointId, sizeMm: null, hoursKnown: true }] : [];
  const sizes = [aSize(pointId, frontMm, 'front'), aSize(pointId, frontMm + 0.1, 'rear')].map((size) => ({
    ...size,
    answer: 'right-as-read' as const,
  }));
  return program.ask(stripDownSave, { ...shop.draft(takenOn, dialHours), sizes, renewals, dialSure: true });
};

const kept = () => keptForecastsOf(recordOf(program.context));

describe('a forecast is kept', () => {
  test('with a slip, for each point of the machine; it says what it rested on', async () => {
    await saved('2024-01-10', 2500, 11.2);
    const { slipId } = await program.ask(slipMake, { machineId: shop.machineId, by: 'Bo' });
    const own = kept().filter(({ why }) => why === 'slip');
    expect(own.map(({ pointId }) => pointId)).toEqual([shop.strip.pointId, shop.pin.pointId]);
    expect(own[0]).toMatchObject({ slipId, entryId: null, partOrdinal: 0, asOf: '2026-11-09' });
    expect(own[0]!.foretold).toMatchObject({
      last: { workedHours: 2500, wearMm: expect.closeTo(0.8, 9) },
      basis: { ownReadings: 1 },
    });
  });

  test('of each part a strip-down opens, as it stood just before; taken back with the strip-down', async () => {
    await saved('2024-01-10', 2500, 11.2);
    const { stripDownId } = await saved('2026-01-10', 3400, 10.9);
    const own = kept().filter((one) => one.stripDownId === stripDownId);
    expect(own).toHaveLength(1);
    expect(own[0]).toMatchObject({ why: 'strip-down', asOf: '2026-01-10', foretold: { last: { workedHours: 2500 } } });
    const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    await program.ask(entriesUndoLast, { entryId: entries[0]!.entryId, by: 'Bo' });
    expect(kept().some((one) => one.stripDownId === stripDownId)).toBe(false);
  });

  test('as it stands when it is saved, worked out while the sheet was typed or not', async () => {
    await saved('2024-01-10', 2500, 11.2);
    const typed = { ...shop.draft('2026-11-09', 3600), sizes: [aSize(shop.strip.pointId, 10.7, 'front')] };
    await program.ask(stripDownJudge, typed);
    await saved('2026-01-10', 3400, 10.9); // entered meanwhile
    const save = async () => {
      const { stripDownId } = await program.ask(stripDownSave, { ...typed, dialSure: true, anotherSure: true });
      return kept().find((one) => one.stripDownId === stripDownId)!.foretold;
    };
    const notJudged = await save();
    expect(notJudged).toMatchObject({ last: { workedHours: 3400 }, basis: { ownReadings: 2 } });
    const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    await program.ask(entriesUndoLast, { entryId: entries[0]!.entryId, by: 'Bo' });
    await program.ask(stripDownJudge, typed);
    expect(await save()).toEqual(notJudged);
  });
});

describe('what came is laid against it', () => {
  test('a size within its range is scored as kept; one far out is told with the save', async () => {
    await saved('2024-01-10', 2500, 11.2);
    const { against } = await saved('2026-01-10', 3400, 10.9);
    expect(against).toEqual({ sizes: 1, beyond: [] });
    const { beyond } = (await saved('2026-06-10', 3600, 9.6)).against;
    expect(beyond).toMatchObject([{ pointId: shop.strip.pointId, sizeMm: 9.6 }]);
    expect(beyond[0]!.mostWornMm).toBeGreaterThan(9.6);
    const read = await program.ask(checkRead, {});
    expect(read.kept).toMatchObject({ stripDown: 3, scored: 3, slip: 0, plan: 0 });
    expect(read.beyond[0]).toMatchObject({ takenOn: '2026-06-10', origin: 'kept', sizeMm: 9.6 });
    const strip = read.classes.find(({ partClass }) => partClass === 'Nylon slide strip')!;
    expect(strip).toMatchObject({ sizes: 3, kept: 3, verdict: 'too-few', widenedBy: 1 });
    expect(strip.tenths.reduce((sum, n) => sum + n, 0)).toBe(3);
    expect(strip.lined!.sizes).toBe(2);
  });

  test('a part renewed before its limit is cut off, not wrong', async () => {
    await saved('2024-01-10', 2500, 11.2);
    await saved('2025-01-10', 3000, 11.0, true);
    const { kept: account, limits } = await program.ask(checkRead, {});
    expect(account.renewedEarly).toBe(2);
    expect(limits).toEqual({ within: 0, tooEarly: 0, tooLate: 0 });
  });

  test('two sizes with the limit between them tell of the hours at limit', async () => {
    await saved('2024-01-10', 2500, 10.9);
    await saved('2026-01-10', 5500, 9.3);
    const { limits } = await program.ask(checkRead, {});
    expect(limits.within + limits.tooEarly + limits.tooLate).toBe(1);
  });

  test('nothing measured twice is no fault', async () => {
    const read = await program.ask(checkRead, {});
    expect(read.classes.every(({ sizes }) => sizes === 0)).toBe(true);
    expect(read.beyond).toEqual([]);
  });
});

describe('a size beyond its range', () => {
  test('more worn: the dial, the gauge, the share or the work may be wrong; each with its forecast, nothing saved', async () => {
    await saved('2024-01-10', 2500, 11.2);
    await saved('2026-06-10', 3600, 9.3);
    const rows = kept().length;
    const size = { pointId: shop.strip.pointId, takenOn: '2026-06-10' };
    const told = await program.ask(checkExplain, size);
    expect(told.size).toMatchObject({ origin: 'kept', inside: false, sizeMm: 9.3 });
    expect(told.explanations.map(({ code }) => code).sort()).toEqual(['gauge', 'hard-worked', 'hours', 'share']);
    const by = Object.fromEntries(told.explanations.map((one) => [one.code, one]));
    expect(by.gauge!.hoursLeft!.middle!).toBeGreaterThan(told.now.hoursLeft.middle ?? 0);
    expect(by.hours).toMatchObject({ explains: true, facts: { machineHours: 3600, possible: true } });
    expect(by.hours!.facts.wouldBe).toBeGreaterThan(3600);
    expect(told.stood.machineHoursAtLimit.middle).toBeGreaterThan(3600);
    expect(kept()).toHaveLength(rows);
    expect(await program.ask(checkExplain, size)).toEqual(told);
  });

  test('less worn than it was: a renewal nobody noted explains it', async () => {
    await saved('2024-01-10', 2500, 10.4);
    await saved('2026-06-10', 3600, 11.8);
    const told = await program.ask(checkExplain, { pointId: shop.strip.pointId, takenOn: '2026-06-10' });
    const renewal = told.explanations.find(({ code }) => code === 'renewal')!;
    expect(renewal).toMatchObject({ explains: true, facts: { fromOn: '2024-01-10', toOn: '2026-06-10' } });
    expect(renewal.hoursLeft!.middle).toBeGreaterThan(0);
  });

  test('is refused where no size of that day has a forecast', async () => {
    const unknown = { pointId: shop.pin.pointId, takenOn: '2026-06-10' };
    await expect(program.ask(checkExplain, unknown)).rejects.toThrow(/size-without-forecast/);
  });
});

test('the points worth measuring: never measured and wide first, together worth more than nothing', async () => {
  await saved('2024-01-10', 2500, 11.2);
  const { points, best } = await program.ask(checkWorth, { machineId: shop.machineId });
  expect(points.map(({ pointId }) => pointId).sort()).toEqual([shop.strip.pointId, shop.pin.pointId].sort());
  expect(points[0]!.pointId).toBe(shop.pin.pointId);
  expect(best!.narrowsHours).toBeGreaterThan(0);
  expect(best!.narrowsHours).toBeLessThan(best!.widthHours);
});
