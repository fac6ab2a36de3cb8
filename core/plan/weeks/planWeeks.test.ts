import { describe, expect, test } from 'vitest';
import { planWeeks } from './planWeeks.ts';
import type { WeeksShop, WeekVisit } from './weeksShop.ts';

const aVisit = (visitId: string, own: Partial<WeekVisit> = {}): WeekVisit => ({
  visitId,
  hours: 10,
  earliestWeek: 0,
  awayWeeks: new Set(),
  promisedWeek: null,
  risk: 5,
  alreadyIn: false,
  held: null,
  lastPlannedWeek: null,
  mostPieces: 1,
  farmCall: null,
  ...own,
});

const aShop = (visits: readonly WeekVisit[], own: Partial<WeeksShop> = {}): WeeksShop => ({
  visits,
  weeks: [20, 20, 20].map((benchHours) => ({ benchHours, mostOverload: 0 })),
  setUpHours: new Map(),
  ...own,
});

const weekOf = (plan: Awaited<ReturnType<typeof planWeeks>>, visitId: string) =>
  plan.placed.find((one) => one.visitId === visitId)?.week;

describe('weeks of the shop', () => {
  test('a farmer away in the first week is called in the next', async () => {
    const plan = await planWeeks(aShop([aVisit('a', { awayWeeks: new Set([0]) })]));
    expect(weekOf(plan, 'a')).toBe(1);
    expect(plan.harm).toEqual({ cost: 0, bound: 0, gap: 0 });
  });

  test('what does not fit is listed with what it risks', async () => {
    const plan = await planWeeks(aShop('abcdefg'.split('').map((id) => aVisit(id, { risk: id === 'd' ? 1 : 5 }))));
    expect(plan.unplaced).toEqual([{ visitId: 'd', risk: 1 }]);
    expect(plan.weeks.map(({ hours }) => hours)).toEqual([20, 20, 20]);
  });

  test('an agreed visit stays where it is, and says by how much it overloads its week', async () => {
    const held = { week: 1, pieces: 1 };
    const plan = await planWeeks(aShop([aVisit('a', { hours: 26, held })]));
    expect(weekOf(plan, 'a')).toBe(1);
    expect(plan.weeks[1]).toMatchObject({ hours: 26, overload: 6 });
  });

  test('two calls at one farm go in one week and pay the way once', async () => {
    const calls = ['a', 'b'].map((id) => aVisit(id, { hours: 4, farmCall: 'Upper Farm' }));
    const plan = await planWeeks(aShop(calls, { setUpHours: new Map([['Upper Farm', 3]]) }));
    expect(plan.cost.setUpHours).toBe(3);
    expect(plan.weeks[0]).toMatchObject({ hours: 11, setUpHours: 3, farmCalls: ['Upper Farm'] });
  });
});
