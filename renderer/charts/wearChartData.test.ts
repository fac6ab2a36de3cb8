import { describe, expect, it } from 'vitest';
import { hoursScale, hoursToPx } from '#core/axis/scale.ts';
import { samplePictures } from '#renderer/screens/marks/samplePictures.ts';
import { type ChartedPoint, wearChartData } from './wearChartData.ts';

const on = {
  hours: hoursScale({ fromHours: 1500, toHours: 11_000, fromPx: 260, toPx: 1010 }),
  heightPx: 240,
  nowHours: 6840,
  writing: '.' as const,
};
const strip = samplePictures.ordinary?.chosen as ChartedPoint;

describe('what the wear chart shows of a point', () => {
  const data = wearChartData(strip, on);

  it('is every size of every station, the worst of each visit with its label and whisker', () => {
    expect(data.chart.readings).toHaveLength(10);
    expect(data.chart.readings.filter((r) => r.governs).map((r) => r.text)).toEqual([
      '12.02',
      '11.18',
      '10.84',
      '10.19',
    ]);
    for (const reading of data.chart.readings) expect(reading.y1 > reading.y0).toBe(reading.governs);
  });

  it('is a fan that stops at the limit', () => {
    expect(data.fan[0]?.hours).toBe(6840);
    for (const slice of data.fan) expect(slice.span[0]).toBeGreaterThanOrEqual(9.5);
    expect(data.fan.at(-1)?.span).toEqual([9.5, 9.5]);
    expect(data.fan.at(-1)?.hours).toBeLessThan(11_000);
  });

  it('is a bar at the hours of the forecast', () => {
    expect(data.chart.bar?.lowX).toBe(hoursToPx(on.hours, 8050));
    expect(data.chart.bar?.highX).toBe(hoursToPx(on.hours, 9560));
  });

  it('keeps an old reading that was put right, with both dates in words', () => {
    expect(data.chart.putRight[0]?.text).toBe('8.84 typed, put right 3 May 2024');
  });
});

it('an earlier part is joined up on its own, apart from the present one', () => {
  const visit = strip.visits[1];
  if (!visit) throw new Error('the sample has visits');
  const before = { ...visit, machineHours: 1700, governingSizeMm: 9.4 };
  const older = { ...visit, machineHours: 1600, governingSizeMm: 9.9 };
  const visits = [older, before, ...strip.visits];
  expect(wearChartData({ ...strip, visits }, on).joined.map(({ size }) => size)).toEqual([9.9, 9.4]);
  const unfitted = wearChartData({ ...strip, visits, fitted: [], fan: [] }, on).joined;
  expect(unfitted.map(({ size }) => size)).toEqual([9.9, 9.4, null, 12.02, 12.02, 11.18, 10.84, 10.19]);
});

it('readings of a part that nothing was fitted to are joined up', () => {
  const { joined } = wearChartData({ ...strip, fitted: [], fan: [] }, on);
  expect(joined.map(({ size }) => size)).toEqual([12.02, 12.02, 11.18, 10.84, 10.19]);
});

it('a finding that forbids use leaves readings and limits, and takes bar and fan away', () => {
  const data = wearChartData({ ...strip, doNotUse: true }, on);
  expect(data.fan).toEqual([]);
  expect(data.chart.bar).toBeNull();
  expect(data.chart.limits).toHaveLength(3);
  expect(data.chart.readings).toHaveLength(10);
});

it('a size kept out of the forecast is marked questioned and governs nothing', () => {
  const parked = strip.visits.map((v) => ({ ...v, stations: v.stations.map((s) => ({ ...s, parked: s.governs })) }));
  const { readings } = wearChartData({ ...strip, visits: parked }, on).chart;
  expect(readings.filter((r) => r.questioned)).toHaveLength(4);
  expect(readings.some((r) => r.governs)).toBe(false);
});

it('a shop that writes commas reads commas', () => {
  expect(wearChartData(strip, { ...on, writing: ',' }).chart.readings.at(-1)?.text).toBe('10,19');
});
