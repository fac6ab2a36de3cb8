import { describe, expect, it } from 'vitest';
import { fanToLimit } from './fan.ts';
import { boxesMeet } from './labels.ts';
import { limitStrip } from './limitStrip.ts';
import { hoursScale, hoursToPx, sizeScale, sizeToPx } from './scale.ts';
import { sizeTicks } from './sizeTicks.ts';
import { wearChart } from './wearChart.ts';
import { wearLives } from './wearLives.ts';

const hours = hoursScale({ fromHours: 1500, toHours: 10600, fromPx: 260, toPx: 1010 });
const reading = (machineHours: number, sizeMm: number, more = {}) => ({
  machineHours,
  sizeMm,
  errorSdMm: 0.05,
  governs: true,
  questioned: false,
  text: sizeMm.toFixed(2),
  ...more,
});
const strip = {
  hours,
  heightPx: 230,
  wears: 'down' as const,
  limits: { newSizeMm: 12, renewAtMm: 9.5, rejectAtMm: 8.5 },
  readings: [reading(1940, 12.02), reading(4310, 11.18), reading(5220, 10.84), reading(6840, 10.19)],
  putRight: [{ machineHours: 5220, sizeMm: 8.84, newSizeMm: 10.84, text: '8.84 typed, put right 3 May 2024' }],
  curveSizesMm: [],
  nowHours: 6840,
  bar: { low: 8050, middle: 8700, high: 9560, decides: 'middle' as const, ownReadings: 3 },
  unitMm: 1,
  labelPx: 14,
};

describe('the wear chart', () => {
  const chart = wearChart(strip);

  it('stands on the hours of the axis above it', () => {
    expect(chart.readings.map((r) => r.x)).toEqual(strip.readings.map((r) => hoursToPx(hours, r.machineHours)));
    expect(chart.nowX).toBe(hoursToPx(hours, 6840));
  });

  it('draws the gauge error to scale, twice its sd either way', () => {
    const last = chart.readings[3];
    expect((last?.y1 ?? 0) - (last?.y0 ?? 0)).toBeCloseTo(sizeToPx(chart.size, 0) - sizeToPx(chart.size, 0.2), 6);
  });

  it('hangs the bar beyond the line at which the part is renewed, low to high', () => {
    const renewY = chart.limits.find((limit) => limit.kind === 'renew-at')?.y ?? 0;
    expect(chart.bar?.y).toBeGreaterThan(renewY);
    expect(chart.bar).toMatchObject({
      lowX: hoursToPx(hours, 8050),
      middleX: hoursToPx(hours, 8700),
      highX: hoursToPx(hours, 9560),
    });
    const bore = wearChart({
      ...strip,
      wears: 'up',
      limits: { newSizeMm: 40, renewAtMm: 41, rejectAtMm: 42 },
      readings: [reading(4310, 40.4)],
      putRight: [],
    });
    expect(bore.bar?.y).toBeLessThan(bore.limits.find((limit) => limit.kind === 'renew-at')?.y ?? 0);
  });

  it('keeps everything inside its height, and no label on a dot or another label', () => {
    for (const shape of [...chart.readings, ...chart.putRight]) expect(shape.y > 5 && shape.y < 225).toBe(true);
    const labels = [...chart.readings, ...chart.putRight].map((shape) => shape.label).filter((label) => label !== null);
    expect(labels).toHaveLength(5);
    for (const [i, a] of labels.entries()) {
      for (const b of labels.slice(i + 1)) expect(boxesMeet(a, b)).toBe(false);
      for (const dot of chart.readings)
        expect(boxesMeet(a, { x: dot.x - 3, y: dot.y - 3, width: 6, height: 6 })).toBe(false);
    }
  });

  it('parts the labels of limits that lie close together', () => {
    const close = wearChart({
      ...strip,
      limits: { newSizeMm: 32, renewAtMm: 31.9, rejectAtMm: 31.85 },
      readings: [reading(4310, 20)],
      putRight: [],
    });
    const ys = close.limits.map((limit) => limit.labelY);
    for (const [i, y] of ys.entries()) if (i > 0) expect(y - (ys[i - 1] ?? 0)).toBeGreaterThanOrEqual(16.9);
  });

  it('has no bar and one line only when no limit is set', () => {
    const bare = wearChart({ ...strip, limits: { newSizeMm: 12, renewAtMm: null, rejectAtMm: null } });
    expect(bare.limits.map((limit) => limit.kind)).toEqual(['new-size']);
    expect(bare.bar).toBeNull();
  });

  it('stands with nothing measured yet', () => {
    const empty = wearChart({ ...strip, readings: [], putRight: [], nowHours: null });
    expect(empty.readings).toEqual([]);
    expect(empty.ticks.filter((tick) => tick.figure).length).toBeGreaterThan(2);
  });
});

describe('a size scale', () => {
  it('has figures at round sizes with room between them', () => {
    const { ticks, figureStep, decimals } = sizeTicks(sizeScale({ fromMm: 8.2, toMm: 12.4, fromPx: 230, toPx: 0 }));
    expect(figureStep).toBe(0.5);
    expect(decimals).toBe(1);
    expect(ticks.filter((tick) => tick.figure).map((tick) => Math.round(tick.sizeMm * 10) / 10)).toEqual([
      8.5, 9, 9.5, 10, 10.5, 11, 11.5, 12,
    ]);
  });
  it('reads in hundredths over a micrometer’s range', () => {
    const inInches = sizeTicks(sizeScale({ fromMm: 8.2, toMm: 12.4, fromPx: 230, toPx: 0 }), 25.4);
    expect(inInches.ticks.filter(({ figure }) => figure).map(({ size }) => Math.round(size * 100) / 100)).toEqual([
      0.34, 0.36, 0.38, 0.4, 0.42, 0.44, 0.46, 0.48,
    ]);
    expect(inInches.decimals).toBe(2);
    expect(sizeTicks(sizeScale({ fromMm: 40, toMm: 40.12, fromPx: 230, toPx: 0 })).decimals).toBe(2);
  });
});

describe('the fan', () => {
  const curve = [
    { machineHours: 0, low: 10, middle: 10, high: 10 },
    { machineHours: 1000, low: 8, middle: 9, high: 9.5 },
    { machineHours: 2000, low: 6, middle: 8, high: 9 },
    { machineHours: 4000, low: 2, middle: 6, high: 8 },
  ];
  it('stops at the limit, where its edges meet it exactly', () => {
    const slices = fanToLimit(curve, 9, 'down');
    expect(slices[0]).toEqual({ machineHours: 0, low: 10, middle: 10, high: 10 });
    expect(slices.find((slice) => slice.low === 9)?.machineHours).toBe(500);
    expect(slices.filter((slice) => slice.middle !== null).at(-1)).toMatchObject({ machineHours: 1000, middle: 9 });
    expect(slices.at(-1)).toMatchObject({ machineHours: 2000, high: 9 });
    for (const slice of slices) expect(slice.low >= 9 && slice.high >= 9).toBe(true);
  });
  it('of a bore rises to its limit', () => {
    const up = curve.map((p) => ({
      machineHours: p.machineHours,
      low: 20 - p.high,
      middle: 20 - p.middle,
      high: 20 - p.low,
    }));
    const slices = fanToLimit(up, 11, 'up');
    expect(slices.at(-1)).toMatchObject({ machineHours: 2000, low: 11, high: 11 });
    for (const slice of slices) expect(slice.high <= 11).toBe(true);
  });
  it('runs on where no limit is set', () => {
    expect(fanToLimit(curve, null, 'down')).toEqual(curve);
  });
});

describe('lives at a position', () => {
  it('are joined from one renewal to the next, as found before it and as left after', () => {
    const lives = wearLives(
      [
        { machineHours: 1000, sizeMm: 11, asLeft: false },
        { machineHours: 2000, sizeMm: 9.4, asLeft: false },
        { machineHours: 2000, sizeMm: 12.05, asLeft: true },
        { machineHours: 3000, sizeMm: 11.2, asLeft: false },
        { machineHours: 3500, sizeMm: null, asLeft: false },
      ],
      [{ machineHours: 2000, known: true, sizeMm: null }],
    );
    expect(lives.map((life) => life.map((p) => p.sizeMm))).toEqual([
      [11, 9.4],
      [12.05, 11.2],
    ]);
  });
  it('begin with the size of the part put in, where it is known when', () => {
    const renewals = [
      { machineHours: 2000, known: true, sizeMm: 12 },
      { machineHours: 4000, known: false, sizeMm: 12 },
    ];
    expect(wearLives([{ machineHours: 5000, sizeMm: 11, asLeft: false }], renewals)).toEqual([
      [{ machineHours: 2000, sizeMm: 12 }],
      [{ machineHours: 5000, sizeMm: 11 }],
    ]);
  });
});

describe('sizes between new and reject', () => {
  const needs = {
    wears: 'down' as const,
    newSizeMm: 12,
    renewAtMm: 9.5,
    rejectAtMm: 8.5,
    lastMm: 10.84,
    foundMm: 10.19,
    errorSdMm: 0.05,
    fromPx: 0,
    toPx: 200,
  };
  it('run from left to right as the part wears, whichever way it wears', () => {
    const down = limitStrip(needs);
    const up = limitStrip({
      ...needs,
      wears: 'up',
      newSizeMm: 40,
      renewAtMm: 42.5,
      rejectAtMm: 43.5,
      lastMm: 41.16,
      foundMm: 41.81,
    });
    expect(down?.newX).toBe(12);
    expect(down?.rejectX).toBeCloseTo(188, 9);
    expect(up?.lastX).toBeCloseTo(down?.lastX ?? 0, 6);
    expect(up?.found?.x).toBeCloseTo(down?.found?.x ?? 0, 6);
    expect(down?.found).toMatchObject({ pastRenew: false, pastReject: false });
  });
  it('past reject stay at the end of the strip and are said to be past', () => {
    expect(limitStrip({ ...needs, foundMm: 5 })?.found).toMatchObject({ x: 200, pastRenew: true, pastReject: true });
  });
  it('have no strip without limits', () => {
    expect(limitStrip({ ...needs, renewAtMm: null, rejectAtMm: null })).toBeNull();
  });
});
