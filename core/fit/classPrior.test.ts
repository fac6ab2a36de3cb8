import { expect, it } from 'vitest';
import { classPrior } from './classPrior.ts';
import { modelSettingNotes, defaultModelSettings as settings } from './modelSettings.ts';

const trade = { wearFromMm: 2, wearToMm: 3, hoursFrom: 5000, hoursTo: 6000, source: 'the shop' };

it('slides that lose 2 to 3 mm in 5,000 to 6,000 h: typical life 5,477 h, ln 2.449, spread 0.35', () => {
  const prior = classPrior({ name: 'slide', tradeWear: trade, newSizeTolMm: null }, 2.5, settings);
  expect(prior.hRefHours).toBeCloseTo(5477.2, 1);
  expect(Math.exp(prior.m0)).toBeCloseTo(2.449, 3);
  expect(prior.s0).toBeCloseTo(0.35, 2);
  expect(prior.from).toBe('trade');
});

it('without trade knowledge: the median limit in 6,000 h, a factor of 2.7 either way', () => {
  const prior = classPrior({ name: 'ring', tradeWear: null, newSizeTolMm: null }, 4, settings);
  expect(prior).toMatchObject({ hRefHours: 6000, m0: Math.log(4), s0: 1, from: 'wide' });
});

it('without even a limit it still has a prior, and a range of no width keeps some doubt', () => {
  expect(Number.isFinite(classPrior({ name: 'ring', tradeWear: null, newSizeTolMm: null }, null, settings).m0)).toBe(
    true,
  );
  const point = { ...trade, wearToMm: 2, hoursTo: 5000 };
  expect(classPrior({ name: 'slide', tradeWear: point, newSizeTolMm: null }, 2.5, settings).s0).toBeGreaterThan(0);
});

it('every setting says what it is, in what unit, and from where', () => {
  expect(Object.keys(modelSettingNotes).sort()).toEqual(Object.keys(settings).sort());
  for (const note of Object.values(modelSettingNotes))
    for (const text of Object.values(note)) expect(text).not.toBe('');
});
