import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import { lineThroughOrigin } from '#core/maths/leastSquares.ts';
import { orRefuse } from '#core/outcome.ts';
import { referenceRows } from '#tests/accuracy/csv.ts';
import { foretell, liners } from '#tests/accuracy/lastReadingOut.ts';
import { lineForetell } from '#tests/accuracy/lineForetell.ts';
import { scoreReadings } from '#tests/accuracy/scores.ts';

const expected = JSON.parse(readFileSync(new URL('expected.json', import.meta.url), 'utf8'));

it('a line through new size per liner has the slope that R gives, to 1e-9', () => {
  const rows = Map.groupBy(referenceRows('marine-liners/marine_liners.csv'), (row) => row.liner!);
  expect(rows.size).toBe(32);
  for (const [liner, own] of rows) {
    const found = orRefuse(
      lineThroughOrigin(
        own.map((row) => Number(row.hours_h)),
        own.map((row) => Number(row.wear_mm)),
      ),
    );
    const want = expected.per_liner[liner].through_origin;
    expect(Math.abs(found.slope / want.slope - 1)).toBeLessThan(1e-9);
    if (want.slope_se !== null && found.slopeSe !== null && want.slope_se > 1e-12)
      expect(Math.abs(found.slopeSe / want.slope_se - 1)).toBeLessThan(1e-6);
  }
});

it('the last reading of 17 liners, foretold from the rest: as good as the bar, and far better than a line', () => {
  const line = scoreReadings(lineForetell(liners()));
  const model = scoreReadings(foretell(liners(), defaultModelSettings));
  const bar = expected.last_reading_out.table['per-unit line through new size, interval from gauge error only'];
  expect(Math.abs(line.mae - bar.mae)).toBeLessThan(1e-6);
  expect(Math.abs(line.cover - bar.cover80)).toBeLessThan(1e-6);
  expect(Math.abs(line.crps / bar.crps - 1)).toBeLessThan(1e-3);
  expect(model.parts).toBe(17);
  expect(model.mae).toBeLessThan(0.26);
  expect(model.crps).toBeLessThan(0.175);
  expect(model.intervalScore).toBeLessThan(1.15);
  expect(model.cover * 17).toBeGreaterThanOrEqual(12);
});
