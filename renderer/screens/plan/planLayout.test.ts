import { expect, test } from 'vitest';
import type { VisitLine } from '#core/contract/plan.ts';
import { day } from '#core/units/day.ts';
import { heldOutside, inOrder, scaleHours, weekRows } from './planLayout.ts';

const aVisit = (visitId: number, weeks: [string, number][], own: Partial<VisitLine> = {}) =>
  ({
    ...{ visitId, stands: 'proposed', doNotUse: false },
    weeks: weeks.map(([weekFrom, benchHours]) => ({ weekFrom, benchHours })),
    ...own,
  }) as VisitLine;
const aWeek = (weekFrom: string, benchHours = 38) => ({
  weekFrom: day(weekFrom),
  benchHours,
  note: null,
  hours: 0,
  farmHours: 0,
  overHours: 0,
});

test('visits of a week lie end to end, what must not be used first, then what is agreed', () => {
  const visits = [
    aVisit(1, [['2026-11-02', 10]]),
    aVisit(2, [['2026-11-02', 5]], { stands: 'agreed' }),
    aVisit(3, [['2026-11-02', 8]], { doNotUse: true }),
    aVisit(4, [['2026-11-02', 9]], { stands: 'postponed' }),
  ];
  const [row] = weekRows({ weeks: [aWeek('2026-11-02')], visits });
  expect(row!.stretches.map(({ visit, fromHours, hours }) => [visit.visitId, fromHours, hours])).toEqual([
    [3, 0, 8],
    [2, 8, 5],
    [1, 13, 10],
  ]);
});

test('a visit over two weeks goes on in the next, and is stood on once', () => {
  const visit = aVisit(1, [
    ['2026-11-02', 20],
    ['2026-11-09', 20],
  ]);
  const rows = weekRows({ weeks: [aWeek('2026-11-02'), aWeek('2026-11-09')], visits: [visit] });
  expect(rows.map(({ stretches }) => stretches[0]?.continues)).toEqual(['into-next', 'from-before']);
  expect(inOrder(rows, [])).toHaveLength(1);
});

test('held in weeks this winter has not, a visit is listed by itself; without a week it is not placed', () => {
  const weeks = [aWeek('2026-11-02')];
  const outside = aVisit(1, [['2027-02-22', 8]], { stands: 'agreed' });
  const half = aVisit(2, [
    ['2026-11-02', 8],
    ['2026-11-09', 8],
  ]);
  expect(heldOutside({ weeks }, [outside, half, aVisit(3, [])])).toEqual([outside]);
});

test('the scale has room for the fullest week', () => {
  expect(scaleHours([{ benchHours: 38, hours: 0 }])).toBe(45);
  expect(scaleHours([{ benchHours: 38, hours: 60 }])).toBeGreaterThanOrEqual(60);
});
