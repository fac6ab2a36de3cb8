import { describe, expect, it } from 'vitest';
import { day } from '../units/day.ts';
import { judgeSize, type SizeContext } from './judgeSize.ts';

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
  it('not when it is past reject: that is told, and used', () => {
    expect(judgeSize({ sizeMm: 8.9, errorSdMm: 0.04 }, strip)).toMatchObject({
      cautions: [{ code: 'past-reject', facts: { rejectAtMm: 9 } }],
      parked: false,
    });
  });
});
