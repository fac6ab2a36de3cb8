import { describe, expect, test } from 'vitest';
import { caseCount } from '#tests/support/counts.ts';
import { seededDice } from '#tests/support/seededDice.ts';
import { fairShares, type PlanPart, type PlanYears } from './planPart.ts';
import { costOf, planWinters } from './planWinters.ts';
import { whyThisWinter } from './whyThisWinter.ts';

const TAKE_OFFS = ['wash', 'ram out', 'carrier out', 'latch off'] as const;
const YEARS: PlanYears = {
  winters: 4,
  takeOffHours: new Map([
    ['wash', 0.5],
    ['ram out', 0.5],
    ['carrier out', 2.5],
    ['latch off', 0.8],
  ]),
  breakdownCost: [30, 30, 30, 30],
  visitHours: 1,
};

/** A part of a middle life in years, so many of them gone: chances rise about its life, straight life left. */
function aPart(partId: number, lifeYears: number, goneYears: number, own: Partial<PlanPart> = {}): PlanPart {
  const past = (years: number) => 1 / (1 + Math.exp(-(years - lifeYears) * 2));
  const left = (years: number) => Math.max(0, 1 - years / lifeYears);
  const ages = (from: number, count: number) => Array.from({ length: count }, (_, k) => from + k);
  return {
    partId,
    takeOffs: ['wash', 'ram out', 'carrier out'],
    ownHours: 0.3,
    partsCost: 1,
    stripDownShare: 4.5,
    chancePast: ages(goneYears + 1, YEARS.winters).map(past),
    chancePastNew: ages(0, YEARS.winters).map((winter) => ages(1, YEARS.winters - winter).map(past)),
    lifeLeft: ages(goneYears, YEARS.winters + 1).map(left),
    lifeLeftNew: ages(0, YEARS.winters).map((winter) => ages(0, YEARS.winters - winter + 1).map(left)),
    ...own,
  };
}

const MACHINES = caseCount(300);

describe('winters of one machine', () => {
  test('a sound part is left, a worn one renewed at once', async () => {
    expect((await planWinters([aPart(1, 12, 0)], YEARS)).renewIn.get(1)).toEqual([]);
    expect((await planWinters([aPart(1, 12, 13)], YEARS)).renewIn.get(1)).toEqual([0]);
  });

  test('what would be opened anyway next year is done with what must be done now, and it says what that saves', async () => {
    const parts = [aPart(1, 8, 8), aPart(2, 8, 5)];
    const plan = await planWinters(parts, YEARS);
    expect(plan.renewIn.get(2)).toEqual([0]);
    expect(plan.visits[0]).toMatchObject({ winter: 0, partIds: [1, 2], hours: 1 + 3.5 + 0.6 });
    const why = (await whyThisWinter(parts, YEARS, plan)).find(({ partId }) => partId === 2)!;
    expect(why.openedWith).toEqual([1]);
    expect(why.leavingItCosts).toBeGreaterThan(0);
    // alone it waits
    expect((await planWinters([aPart(2, 8, 5)], YEARS)).renewIn.get(2)).not.toEqual([0]);
  });

  test('parts behind different take-offs do not wait for each other', async () => {
    const latch = aPart(2, 12, 2, { takeOffs: ['latch off'] });
    const plan = await planWinters([aPart(1, 8, 8), latch], YEARS);
    expect(plan.renewIn.get(2)).toEqual([]);
  });

  test('what the manager holds is held, and costs no less', async () => {
    const free = await planWinters([aPart(1, 8, 8)], YEARS);
    const held = await planWinters([aPart(1, 8, 8, { held: new Map([[2, true]]) })], YEARS);
    expect(held.renewIn.get(1)).toContain(2);
    expect(held.cost.total).toBeGreaterThanOrEqual(free.cost.total);
  });

  test('the strip-down is shared fairly by the parts it reaches, whole', () => {
    const parts = [{ takeOffs: ['wash', 'carrier out'] }, { takeOffs: ['wash'] }];
    expect(fairShares(parts, YEARS)).toEqual([0.25 + 2.5 + 0.5, 0.25 + 0.5]);
  });

  test('a machine without parts needs no visit', async () => {
    expect(await planWinters([], YEARS)).toMatchObject({ visits: [], proven: true, cost: { total: 0 } });
  });

  test(`no other choice of winters costs less: every choice tried, on ${MACHINES} random small machines`, async () => {
    const { uniform } = seededDice(20_261_125);
    const pick = () => TAKE_OFFS.filter(() => uniform() < 0.6);
    for (let machine = 0; machine < MACHINES; machine++) {
      const years = {
        ...YEARS,
        winters: 1 + Math.floor(4 * uniform()),
        breakdownCost: [10 + 90 * uniform(), 10 + 90 * uniform(), 10 + 90 * uniform()],
        visitHours: 2 * uniform(),
      };
      const parts = Array.from({ length: 1 + Math.floor(uniform() * 3) }, (_, place) =>
        aPart(place, 1 + 9 * uniform(), 8 * uniform(), {
          takeOffs: pick(),
          ownHours: 0.2 + 2 * uniform(),
          partsCost: 4 * uniform(),
        }),
      );
      const plan = await planWinters(parts, years);
      expect(plan.proven).toBe(true);
      expect(plan.cost.total).toBeCloseTo(costOf(parts, years, plan.renewIn).total, 9);
      expect(plan.cost.total, `machine ${machine}`).toBeCloseTo(leastOfAll(parts, years), 5);
    }
  });
});

/** Least cost over every choice of winters for every part. */
function leastOfAll(parts: readonly PlanPart[], years: PlanYears): number {
  const choices = 2 ** years.winters;
  let least = Number.POSITIVE_INFINITY;
  for (let number = 0; number < choices ** parts.length; number++) {
    const renewIn = new Map(
      parts.map((part, place) => {
        const choice = Math.floor(number / choices ** place) % choices;
        return [part.partId, Array.from({ length: years.winters }, (_, w) => w).filter((w) => (choice >> w) & 1)];
      }),
    );
    least = Math.min(least, costOf(parts, years, renewIn).total);
  }
  return least;
}
