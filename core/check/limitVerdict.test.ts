import { expect, it } from 'vitest';
import { type LifeAfter, limitVerdict } from './limitVerdict.ts';

const verdict = (after: Partial<LifeAfter>, limitWearMm: number | null = 2) =>
  limitVerdict(
    { limitWearMm, hoursAtLimit: { low: 3000, middle: 4000, high: 5000 } },
    { readings: [], renewedAt: null, ...after },
  );
const at = (workedHours: number, wearMm: number) => ({ workedHours, wearMm });

it('hours at limit are judged only between two sizes that have it between them', () => {
  expect(verdict({ readings: [at(2800, 1.5), at(3500, 2.1)] })).toMatchObject({ kind: 'bracketed', said: 'within' });
  expect(verdict({ readings: [at(1500, 1), at(2900, 2.1)] })).toMatchObject({ said: 'too-late' });
  expect(verdict({ readings: [at(5100, 1.9), at(6000, 2.4)] })).toMatchObject({ said: 'too-early' });
  expect(verdict({ readings: [at(6000, 1.9)] })).toEqual({ kind: 'not-yet' });
});

it('a part renewed before its limit cuts the forecast off: it was not wrong', () => {
  expect(verdict({ readings: [at(2800, 1.5)], renewedAt: 2800 })).toEqual({ kind: 'renewed-early', atHours: 2800 });
  expect(verdict({ readings: [at(2800, 1.5), at(3500, 2.1)], renewedAt: 3500 })).toMatchObject({ kind: 'bracketed' });
});

it('nothing is judged without a limit', () => {
  expect(verdict({ readings: [at(2800, 1.5), at(3500, 2.1)] }, null)).toBeNull();
});
