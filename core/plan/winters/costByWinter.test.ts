import { expect, test } from 'vitest';
import { costByWinter } from './costByWinter.ts';
import type { PlanPart, PlanYears } from './planPart.ts';
import { costOf } from './planWinters.ts';

const YEARS: PlanYears = { winters: 3, takeOffHours: new Map(), breakdownCost: [30, 40, 50], visitHours: 0 };
const aPart = (partId: number, chancePast: number[]): PlanPart => ({
  ...{ partId, takeOffs: [], ownHours: 1, partsCost: 2, stripDownShare: 1, chancePast },
  chancePastNew: [[0.01, 0.1, 0.3], [0.01, 0.1], [0.01]],
  lifeLeft: [0.5, 0.3, 0.1, 0],
  lifeLeftNew: [
    [1, 0.8, 0.6, 0.4],
    [1, 0.8, 0.6],
    [1, 0.8],
  ],
});

test('what each winter costs adds up to what the plan costs', () => {
  const parts = [aPart(1, [0.2, 0.5, 0.8]), aPart(2, [0.1, 0.2, 0.4])];
  for (const renewed of [[], [0], [1], [0, 2]]) {
    const renewIn = new Map([
      [1, renewed],
      [2, []],
    ]);
    const [whole, winters] = [costOf(parts, YEARS, renewIn), costByWinter(parts, YEARS, renewIn)];
    const sum = (of: 'lifeThrownAway' | 'breakdownCost') => winters.reduce((so, one) => so + one[of], 0);
    expect(sum('lifeThrownAway')).toBeCloseTo(whole.lifeThrownAway, 9);
    expect(sum('breakdownCost')).toBeCloseTo(whole.breakdown, 9);
  }
});
