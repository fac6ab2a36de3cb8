import { expect, it } from 'vitest';
import { day } from '#core/units/day.ts';
import { movedPicture, worthShowing } from './movedPicture.ts';

const point = (pointId: number, before: [number, number, number], after: [number, number, number]) => ({
  pointId,
  item: pointId,
  position: 'Slide strip',
  point: 'thickness',
  before: { low: before[0], middle: before[1], high: before[2] },
  after: { low: after[0], middle: after[1], high: after[2] },
});

it('what moved stands on one scale, and a bar comes from where it stood', () => {
  const { rows, nowX } = movedPicture(
    [point(1, [900, 2000, 4000], [420, 880, 1490]), point(2, [-50, 300, 700], [-420, -220, -30])],
    (pointId) =>
      pointId === 1 ? { ownReadings: 3, likeParts: 14, decides: 'low', pastLimitMm: null, openFindings: [] } : null,
    600,
  );
  expect(rows[0]?.bar?.basis).toBe('own');
  expect(rows[0]?.cameFromPx).toBeGreaterThan(100);
  expect(rows[1]?.bar?.basis).toBe('borrowed');
  expect(rows[1]?.bar?.past?.x1).toBeLessThan(nowX);
});

it('a point never forecast before has nowhere to come from', () => {
  const { rows } = movedPicture(
    [{ ...point(1, [0, 0, 0], [420, 880, 1490]), before: { low: null, middle: null, high: null } }],
    () => null,
    600,
  );
  expect(rows[0]).toMatchObject({ was: null, cameFromPx: 0 });
});

it('a finding that forbids use stands in place of the bar', () => {
  const finding = { finding: 'crack' as const, severity: 'do-not-use' as const, date: day('2026-11-02'), note: '' };
  const { rows } = movedPicture(
    [point(1, [420, 880, 1490], [420, 880, 1490])],
    () => ({ ownReadings: 1, likeParts: 4, decides: 'low', pastLimitMm: null, openFindings: [finding] }),
    600,
  );
  expect(rows[0]?.bar).toBeNull();
});

it('what was measured is shown however little it moved, the rest only when it moved enough', () => {
  const little = point(1, [420, 880, 1490], [415, 875, 1485]);
  const much = point(2, [420, 880, 1490], [300, 700, 1400]);
  expect(worthShowing([little, much], new Set())).toEqual({ shown: [much], little: 1 });
  expect(worthShowing([little, much], new Set([1]))).toEqual({ shown: [little, much], little: 0 });
});
