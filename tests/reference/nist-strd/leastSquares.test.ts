import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { line, lineThroughOrigin } from '#core/maths/leastSquares.ts';
import { orRefuse } from '#core/outcome.ts';
import { referenceRows } from '#tests/accuracy/csv.ts';

const certified = JSON.parse(readFileSync(new URL('expected.json', import.meta.url), 'utf8'));

const points = (name: string) => {
  const rows = referenceRows(`nist-strd/${name}.csv`);
  return { x: rows.map((row) => Number(row.x)), y: rows.map((row) => Number(row.y)) };
};

/** Certified values agree to 9 digits. */
const nineDigits = (found: number, value: number) => expect(Math.abs(found / value - 1)).toBeLessThan(1e-9);

describe('straight lines against the certified answers of NIST', () => {
  for (const name of ['nist_noint1', 'nist_noint2'])
    it(`${name}: through the origin, slope, its error and what is left over`, () => {
      const { x, y } = points(name);
      const found = orRefuse(lineThroughOrigin(x, y));
      const want = certified[name].certified;
      nineDigits(found.slope, want.slope);
      nineDigits(found.slopeSe!, want.slope_se);
      nineDigits(found.residualSs, want.residual_ss);
      expect(found.residualDf).toBe(want.residual_df);
      nineDigits(Math.sqrt(found.residualSs / found.residualDf), want.residual_sd);
    });

  it('nist_norris: with intercept', () => {
    const { x, y } = points('nist_norris');
    const found = orRefuse(line(x, y));
    const want = certified.nist_norris.certified;
    nineDigits(found.slope, want.slope);
    nineDigits(found.intercept, want.intercept);
    nineDigits(found.slopeSe!, want.slope_se);
    nineDigits(found.interceptSe!, want.intercept_se);
    nineDigits(Math.sqrt(found.residualSs / found.residualDf), want.residual_sd);
  });

  it('refuses a line through no point, through one, and through points at one place', () => {
    expect(lineThroughOrigin([], [])).toMatchObject({ ok: false, refusal: { code: 'too-few-points' } });
    expect(lineThroughOrigin([0, 0], [1, 2])).toMatchObject({ ok: false, refusal: { code: 'all-at-one-place' } });
    expect(line([1], [1])).toMatchObject({ ok: false, refusal: { code: 'too-few-points' } });
    expect(line([3, 3], [1, 2])).toMatchObject({ ok: false, refusal: { code: 'all-at-one-place' } });
  });
});
