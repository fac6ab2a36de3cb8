import { describe, expect, it } from 'vitest';
import type { PointLife, Renewal, Size } from '../shop/measuringPoint.ts';
import { day } from '../units/day.ts';
import { judgePointSizes, judgeSize, type SizeContext } from './judgeSize.ts';

const strip: SizeContext = {
  wears: 'down',
  limits: { newSizeMm: 12, newSizeTolMm: 0.2, renewAtMm: 9.5, rejectAtMm: 9 },
  last: { sizeMm: 11, errorSdMm: 0.03, takenOn: day('2024-01-10') },
};
const bore: SizeContext = {
  wears: 'up',
  limits: { newSizeMm: 30, newSizeTolMm: 0.1, renewAtMm: 30.6, rejectAtMm: null },
  last: null,
};
const codesOf = (sizeMm: number, context: SizeContext, errorSdMm = 0.04) =>
  judgeSize({ sizeMm, errorSdMm }, context).cautions.map(({ code }) => code);

describe('a size is questioned', () => {
  it('not when it is better than the last within gauge error', () => {
    expect(codesOf(11.14, strip)).toEqual([]);
  });
  it('when it is better than the last beyond gauge error; it may have been renewed', () => {
    expect(judgeSize({ sizeMm: 11.16, errorSdMm: 0.04 }, strip)).toMatchObject({
      cautions: [{ code: 'better-than-last', facts: { lastSizeMm: 11, lastOn: '2024-01-10' } }],
      parked: true,
      choices: ['measure-again', 'right-as-read', 'was-renewed', 'wrong-place'],
    });
  });
  it('when it is better than new beyond gauge error and tolerance', () => {
    expect(codesOf(12.19, { ...strip, last: null })).toEqual([]);
    expect(codesOf(12.3, { ...strip, last: null })).toEqual(['better-than-new']);
    expect(codesOf(29.7, bore)).toEqual(['better-than-new']);
  });
  it('1.18 for a 30 mm bore is taken for inches', () => {
    const judged = judgeSize({ sizeMm: 1.18, errorSdMm: 0.04 }, bore);
    expect(judged.cautions).toMatchObject([{ code: 'wrong-unit', facts: { unit: 'inch' } }]);
    expect(judged.cautions[0]!.facts!.likelyMm).toBeCloseTo(29.972, 9);
    expect(judged.parked).toBe(true);
  });
  it('1181 for a 30 mm bore is taken for thousandths of an inch', () => {
    expect(judgeSize({ sizeMm: 1181, errorSdMm: 0.04 }, bore).cautions[0]).toMatchObject({ code: 'wrong-unit' });
  });
  it('ten times off, up or down', () => {
    expect(judgeSize({ sizeMm: 107, errorSdMm: 0.04 }, strip).cautions[0]).toMatchObject({
      code: 'ten-times-off',
      facts: { likelyMm: 10.7 },
    });
    expect(codesOf(1.07, strip)).toEqual(['ten-times-off']);
  });
  it('a tenth of a strip that may wear by a third is ten times off, not a strip worn through', () => {
    const thirdWorn = { ...strip, limits: { ...strip.limits, renewAtMm: 9, rejectAtMm: 8 }, last: null };
    expect(codesOf(1.12, thirdWorn)).toEqual(['ten-times-off']);
    expect(codesOf(4.4, thirdWorn)).toEqual(['past-reject']);
    expect(codesOf(12.9, thirdWorn)).toEqual(['better-than-new']);
  });
  it('not when it is past reject: that is told, and used', () => {
    expect(judgeSize({ sizeMm: 8.9, errorSdMm: 0.04 }, strip)).toMatchObject({
      cautions: [{ code: 'past-reject', facts: { rejectAtMm: 9 } }],
      parked: false,
    });
  });
});

const aStrip = (sizes: Partial<Size>[], renewals: Partial<Renewal>[] = []): PointLife => ({
  pointId: 1,
  partClass: 'nylon strip',
  wears: 'down',
  safety: false,
  gaugeErrorMm: 0.05,
  fittedMachineHours: 0,
  limits: [{ from: null, newSizeMm: 12, newSizeTolMm: 0.2, renewAtMm: 9.5, rejectAtMm: 9, source: null }],
  sizes: sizes.map((size, place) => ({
    id: place + 1,
    takenOn: day('2024-01-10'),
    dialHours: null,
    station: '',
    sizeMm: 11,
    event: 'as-found',
    gaugeErrorMm: null,
    gaugeStepMm: 0,
    parked: false,
    ...size,
  })),
  renewals: renewals.map((renewal, place) => ({
    id: place + 1,
    takenOn: day('2024-01-10'),
    dialHours: null,
    hoursKnown: true,
    sizeMm: null,
    ...renewal,
  })),
  sittings: [{ machineId: 1, from: null, dialHours: null, toDialHours: null }],
});
const oddOf = (point: PointLife, classNewSizeTolMm: number | null = null) =>
  [...judgePointSizes(point, classNewSizeTolMm)].map(([id, { cautions }]) => [id, cautions.map(({ code }) => code)]);

describe('the sizes of a point', () => {
  it('as-left better than as-found of its day is questioned when nobody wrote down a renewal', () => {
    const foundAndLeft = [{ sizeMm: 10 }, { sizeMm: 11.9, event: 'as-left' as const }];
    expect(oddOf(aStrip(foundAndLeft))).toEqual([[2, ['better-than-last']]]);
    expect(oddOf(aStrip(foundAndLeft, [{}]))).toEqual([]);
    expect(oddOf(aStrip([{ sizeMm: 10 }, { sizeMm: 10.05, event: 'as-left' }]))).toEqual([]);
  });
  it('are judged by the size their own part was put in with', () => {
    const later = { takenOn: day('2025-01-10'), sizeMm: 12.8 };
    expect(oddOf(aStrip([later], [{ sizeMm: 13 }]))).toEqual([]);
    expect(oddOf(aStrip([later], [{}]))).toEqual([[1, ['better-than-new']]]);
    const renewedAgain = [{ sizeMm: 13 }, { takenOn: day('2024-06-10') }];
    expect(oddOf(aStrip([later], renewedAgain))).toEqual([[1, ['better-than-new']]]);
  });
  it('take the tolerance of the class when the point has none', () => {
    const point = aStrip([{ sizeMm: 12.5 }]);
    const without = { ...point, limits: point.limits.map((limits) => ({ ...limits, newSizeTolMm: null })) };
    expect(oddOf(without)).toEqual([[1, ['better-than-new']]]);
    expect(oddOf(without, 1)).toEqual([]);
  });
});
