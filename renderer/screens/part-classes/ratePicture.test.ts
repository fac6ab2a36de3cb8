import { expect, test } from 'vitest';
import type { PartClassSheet } from '#core/contract/partClass.ts';
import { ratePicture } from './ratePicture.ts';

const rate = (high: number) => ({ low: high / 3, middle: high / 2, high });
const sheets = [0.26, 0.23, 0.3, 0.75].map((high) => ({
  ...{ state: 'learned', readings: 9, ratePer1000hNowMm: rate(high), ratePer1000hBeforeMm: rate(2 * high) },
})) as unknown as PartClassSheet[];

test('marks of the scale are round in the shop’s own unit and stand where the bars count from', () => {
  const mm = ratePicture(sheets, 260, 1);
  expect(mm.ticks.map(({ rate: at, places }) => at.toFixed(places))).toEqual(['0.0', '0.2', '0.4', '0.6', '0.8']);
  // an inch is 25.4 mm: NIST SP 811, B.8
  const inches = ratePicture(sheets, 260, 25.4);
  expect(inches.ticks.map(({ rate: at, places }) => at.toFixed(places))).toEqual(['0.00', '0.01', '0.02', '0.03']);
  const pxOfMm = (ticks: typeof mm.ticks, unitMm: number) => (ticks[1]!.x - ticks[0]!.x) / (ticks[1]!.rate * unitMm);
  const widthOf = (picture: typeof mm) =>
    (picture.rows[0]?.bar?.ahead?.x1 ?? 0) - (picture.rows[0]?.bar?.ahead?.x0 ?? 0);
  expect(widthOf(inches)).toBeCloseTo(pxOfMm(inches.ticks, 25.4) * ((0.26 * 2) / 3), 0);
  expect(widthOf(mm)).toBeCloseTo(pxOfMm(mm.ticks, 1) * ((0.26 * 2) / 3), 0);
});
