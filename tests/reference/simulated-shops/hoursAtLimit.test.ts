import { expect, it } from 'vitest';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import { forecastSet } from '#tests/accuracy/forecastSet.ts';
import { lineForecast } from '#tests/accuracy/lineForecast.ts';
import { scoreHours } from '#tests/accuracy/scores.ts';
import { shopH, workshopA, workshopH } from '#tests/accuracy/shopSets.ts';

for (const [title, set, parts, bar] of [
  ['45 machines worked hard and softly', workshopH(), 284, 300],
  ['60 machines with renewals and parts never read', shopH(), 480, 315],
] as const)
  it(`hours at limit, ${title}: pinball under ${bar} h, and the range holds`, () => {
    const score = scoreHours(forecastSet(set, defaultModelSettings).cases);
    expect(score.parts).toBe(parts);
    expect(score.pinball).toBeLessThan(bar);
    expect(score.cover).toBeGreaterThan(0.74);
    expect(score.cover).toBeLessThan(0.88);
    expect(score.mae).toBeLessThan(scoreHours(lineForecast(set)).mae);
  });

it('hours at limit of parts whose machines are not told: as good as the plain model', () => {
  const score = scoreHours(forecastSet(workshopA(), defaultModelSettings).cases);
  expect(score.pinball).toBeLessThan(327.03 * 1.02);
  expect(score.cover).toBeGreaterThan(0.72);
});
