import { describe, expect, it } from 'vitest';
import { pictureRange } from './pictureRange.ts';

const row = (low: number, middle: number, high: number) => ({ low, middle, high });

describe('the hours a machine picture spans', () => {
  it('reach from the first mark of its history past its bars', () => {
    const range = pictureRange({
      nowHours: 6840,
      historyFromHours: 1940,
      planLineHours: 7640,
      hoursPerYear: 780,
      rows: [row(7260, 7720, 8330), row(8050, 8700, 9560), row(6990, 7310, 7720), row(7900, 9050, 10700)],
    });
    expect(range.fromHours).toBeLessThan(1940);
    expect(range.fromHours).toBeGreaterThan(1500);
    expect(range.toHours).toBeGreaterThan(9560);
    expect(range.toHours).toBeLessThan(11_500);
  });

  it('do not let a long history squeeze the forecasts', () => {
    const range = pictureRange({
      nowHours: 58_000,
      historyFromHours: 0,
      planLineHours: 58_900,
      hoursPerYear: 900,
      rows: [row(58_400, 59_000, 60_000)],
    });
    const ahead = range.toHours - 58_000;
    expect(ahead / (range.toHours - range.fromHours)).toBeGreaterThan(0.4);
  });

  it('do not run off to one bar that nobody knows anything of', () => {
    const rows = [row(60, 110, 230), row(100, 180, 300), row(150, 210, 400), row(2000, 9000, 40_000)];
    const range = pictureRange({ nowHours: 0, historyFromHours: null, planLineHours: 60, hoursPerYear: 60, rows });
    expect(range.toHours).toBeLessThan(1000);
    expect(range.toHours).toBeGreaterThan(400);
  });

  it('show how far a limit has been passed', () => {
    const range = pictureRange({
      nowHours: 5000,
      historyFromHours: 4950,
      planLineHours: 5600,
      hoursPerYear: 600,
      rows: [row(4480, 4730, 4940), row(5300, 5600, 6100)],
    });
    expect(range.fromHours).toBeLessThan(4480);
  });

  it('span something for a machine with nothing on record', () => {
    const range = pictureRange({
      nowHours: 0,
      historyFromHours: null,
      planLineHours: null,
      hoursPerYear: null,
      rows: [],
    });
    expect(range.toHours).toBeGreaterThan(range.fromHours);
  });
});
