import { describe, expect, it } from 'vitest';
import { hoursLine } from '../reading/hoursLine.ts';
import type { DialEvent, MachineLife, WorkShare } from '../shop/machineLife.ts';
import type { PointLife, Renewal, Size } from '../shop/measuringPoint.ts';
import { type Day, day } from '../units/day.ts';
import type { MachineOnLine } from './partClock.ts';
import { partSeries } from './partSeries.ts';

const AS_OF = day('2026-01-01');

const aMachine = (machineId: number, dials: [string, number][], workShares: WorkShare[] = []): MachineLife => ({
  machineId,
  meterDigits: 5,
  hoursBefore: null,
  workShares,
  dialEvents: dials.map(
    ([takenOn, dialHours], index): DialEvent => ({
      id: index + 1,
      takenOn: day(takenOn),
      kind: 'reading',
      dialHours,
      newDialHours: null,
      errorHours: null,
      parked: false,
    }),
  ),
});

const linesOf = (lives: MachineLife[], asOf: Day = AS_OF): Map<number, MachineOnLine> =>
  new Map(lives.map((life) => [life.machineId, { life, line: hoursLine(life, asOf) }]));

let sizeId = 0;
const aSize = (takenOn: string, sizeMm: number, more: Partial<Size> = {}): Size => ({
  id: ++sizeId,
  takenOn: day(takenOn),
  dialHours: null,
  station: '',
  sizeMm,
  event: 'as-found',
  gaugeErrorMm: null,
  gaugeStepMm: 0,
  parked: false,
  ...more,
});

const aRenewal = (takenOn: string, more: Partial<Renewal> = {}): Renewal => ({
  id: 1,
  takenOn: day(takenOn),
  dialHours: null,
  hoursKnown: true,
  sizeMm: null,
  ...more,
});

const aStrip = (more: Partial<PointLife> = {}): PointLife => ({
  pointId: 7,
  partClass: 'nylon strip',
  wears: 'down',
  safety: false,
  gaugeErrorMm: 0.05,
  fittedMachineHours: 0,
  limits: [{ from: null, newSizeMm: 12, newSizeTolMm: 0.2, renewAtMm: 9.5, rejectAtMm: 9, source: null }],
  sizes: [],
  renewals: [],
  sittings: [{ machineId: 1, from: null, dialHours: null, toDialHours: null }],
  ...more,
});

const TRACTOR = aMachine(1, [
  ['2020-01-01', 1000],
  ['2022-01-01', 3000],
  ['2024-01-01', 5000],
  ['2026-01-01', 7000],
]);
const readingsOf = (series: { readings: readonly { workedHours: number; wearMm: number }[] }) =>
  series.readings.map(({ workedHours, wearMm }) => [workedHours, Number(wearMm.toFixed(6))]);

describe('a part and its readings', () => {
  it('counts its hours from new, and its wear from the new size', () => {
    const series = partSeries(
      aStrip({ sizes: [aSize('2022-01-01', 11.2), aSize('2024-01-01', 10.4)] }),
      linesOf([TRACTOR]),
      AS_OF,
    );
    expect(readingsOf(series.present)).toEqual([
      [3000, 0.8],
      [5000, 1.6],
    ]);
    expect(series).toMatchObject({
      partHoursNow: 7000,
      workedHoursNow: 7000,
      ownReadings: 2,
      machineHoursNow: 7000,
      pastLimitMm: null,
      presentStartMachineHours: { hours: 0, sdHours: 0 },
    });
    expect(series.renewAtWearMm).toBeCloseTo(2.5, 12);
    expect(series.present).toMatchObject({
      newSizeSdMm: 0.05,
      startHoursSd: 0,
      machineId: 1,
      ordinal: 0,
      present: true,
    });
  });

  it('a bore wears up; past its limit it says how far', () => {
    const bore = aStrip({
      wears: 'up',
      limits: [{ from: null, newSizeMm: 50, newSizeTolMm: null, renewAtMm: 50.8, rejectAtMm: null, source: null }],
      sizes: [aSize('2024-01-01', 51)],
    });
    const series = partSeries(bore, linesOf([TRACTOR]), AS_OF, 0.08);
    expect(readingsOf(series.present)).toEqual([[5000, 1]]);
    expect(series.pastLimitMm).toBeCloseTo(0.2, 12);
    expect(series.present.newSizeSdMm).toBeCloseTo(0.02, 12);
  });

  it('averages the repeats of a station, and lets the worst station govern', () => {
    const sizes = [
      aSize('2024-01-01', 10.4, { station: 'front' }),
      aSize('2024-01-01', 10.2, { station: 'front' }),
      aSize('2024-01-01', 10.8, { station: 'rear', gaugeStepMm: 0.1 }),
    ];
    const { history } = partSeries(aStrip({ sizes }), linesOf([TRACTOR]), AS_OF);
    const governing = history[0]!.governing!;
    expect(governing.station).toBe('front');
    expect(governing.sizeMm).toBeCloseTo(10.3, 12);
    expect(governing.errorSdMm).toBeCloseTo(0.05 / Math.SQRT2, 12);
    expect(history[0]!.stations[1]!.errorSdMm).toBeCloseTo(Math.sqrt(0.05 ** 2 + 0.1 ** 2 / 12), 12);
  });

  it('falls back to the stations common to all visits once one is missing', () => {
    const sizes = [
      aSize('2022-01-01', 11.0, { station: 'front' }),
      aSize('2022-01-01', 11.4, { station: 'middle' }),
      aSize('2024-01-01', 10.9, { station: 'middle' }),
      aSize('2024-01-01', 10.1, { station: 'rear' }),
    ];
    const series = partSeries(aStrip({ sizes }), linesOf([TRACTOR]), AS_OF);
    expect(series.history.map(({ governing }) => governing!.sizeMm)).toEqual([11.4, 10.9]);
    const missing = series.cautions.find(({ code }) => code === 'stations-missing')!;
    expect(missing.facts).toMatchObject({ stations: 'middle', worstLeftOut: 'rear' });
    expect(missing.facts!.worseByMm).toBeCloseTo(0.8, 12);
  });

  it('a station read more than before is no station missing', () => {
    const sizes = [
      aSize('2022-01-01', 11.4, { station: 'middle' }),
      aSize('2024-01-01', 10.9, { station: 'middle' }),
      aSize('2024-01-01', 10.1, { station: 'rear' }),
    ];
    const series = partSeries(aStrip({ sizes }), linesOf([TRACTOR]), AS_OF);
    expect(series.history.map(({ governing }) => governing!.sizeMm)).toEqual([11.4, 10.1]);
    expect(series.cautions).toEqual([]);
  });

  it('a renewal ends one part and begins the next: as-found is the old one, as-left the new one at 0 h', () => {
    const strip = aStrip({
      sizes: [
        aSize('2022-01-01', 11),
        aSize('2024-01-01', 9.4),
        aSize('2024-01-01', 12.05, { event: 'as-left' }),
        aSize('2026-01-01', 11.1),
      ],
      renewals: [aRenewal('2024-01-01')],
    });
    const series = partSeries(strip, linesOf([TRACTOR]), AS_OF);
    expect(series.finished.map(readingsOf)).toEqual([
      [
        [3000, 1],
        [5000, 2.6],
      ],
    ]);
    expect(series.finished[0]).toMatchObject({ present: false, ordinal: 0 });
    expect(readingsOf(series.present)).toEqual([
      [0, -0.05],
      [2000, 0.9],
    ]);
    expect(series).toMatchObject({ ownReadings: 1, partHoursNow: 2000, presentStartMachineHours: { hours: 5000 } });
    expect(series.renewals).toMatchObject([{ ordinal: 1, axisHours: { low: 5000, middle: 5000, high: 5000 } }]);
  });

  it('as-left without a renewal is a repeat of the same reading', () => {
    const sizes = [aSize('2024-01-01', 10.4), aSize('2024-01-01', 10.6, { event: 'as-left' })];
    const series = partSeries(aStrip({ sizes }), linesOf([TRACTOR]), AS_OF);
    expect(readingsOf(series.present)).toEqual([[5000, 1.5]]);
    expect(series.ownReadings).toBe(1);
  });

  it('renewed elsewhere: some time since the previous size, evenly', () => {
    const strip = aStrip({
      sizes: [aSize('2022-01-01', 10.5), aSize('2024-01-01', 11.8)],
      renewals: [aRenewal('2024-01-01', { hoursKnown: false })],
    });
    const series = partSeries(strip, linesOf([TRACTOR]), AS_OF);
    expect(readingsOf(series.finished[0]!)).toEqual([[3000, 1.5]]);
    expect(readingsOf(series.present)).toEqual([[1000, 0.2]]);
    expect(series.present.startHoursSd).toBeCloseTo(2000 / Math.sqrt(12), 9);
    expect(series).toMatchObject({ partHoursNow: 3000, presentStartMachineHours: { hours: 4000 } });
    expect(series.renewals).toMatchObject([{ axisHours: { low: 3000, middle: 4000, high: 5000 } }]);
  });

  it('a first part fitted nobody knows when: evenly between 0 and its first size', () => {
    const series = partSeries(
      aStrip({ fittedMachineHours: null, sizes: [aSize('2022-01-01', 11), aSize('2024-01-01', 10)] }),
      linesOf([TRACTOR]),
      AS_OF,
    );
    expect(readingsOf(series.present)).toEqual([
      [1500, 1],
      [3500, 2],
    ]);
    expect(series.present.startHoursSd).toBeCloseTo(3000 / Math.sqrt(12), 9);
  });

  it('the size put in is a reading at 0 h; an oversize pin is a new size of its own', () => {
    const plain = partSeries(
      aStrip({ renewals: [aRenewal('2024-01-01', { sizeMm: 12.06 })] }),
      linesOf([TRACTOR]),
      AS_OF,
    );
    expect(readingsOf(plain.present)).toEqual([[0, -0.06]]);
    const oversize = partSeries(
      aStrip({ renewals: [aRenewal('2024-01-01', { sizeMm: 13 })] }),
      linesOf([TRACTOR]),
      AS_OF,
    );
    expect(readingsOf(oversize.present)).toEqual([[0, 0]]);
    expect(oversize.presentNewSizeMm).toBe(13);
    expect(oversize.cautions.map(({ code }) => code)).toEqual(['odd-new-size']);
  });

  it('the size put in at unknown hours is a reading at 0 h too', () => {
    const renewals = [aRenewal('2024-01-01', { hoursKnown: false, sizeMm: 12.1 })];
    const series = partSeries(aStrip({ sizes: [aSize('2022-01-01', 10.8)], renewals }), linesOf([TRACTOR]), AS_OF);
    expect(readingsOf(series.present)).toEqual([[0, -0.1]]);
    expect(series.ownReadings).toBe(0);
    expect(series.partHoursNow).toBeCloseTo(3000, 9); // midway between 3000 h and 5000 h, seen at 7000 h
  });

  it('a size put in that no part has is shown and not used', () => {
    for (const sizeMm of [120, 1.2, 0.47]) {
      const point = aStrip({ renewals: [aRenewal('2024-01-01', { sizeMm })] });
      const series = partSeries(point, linesOf([TRACTOR]), AS_OF);
      expect(series.presentNewSizeMm).toBe(12);
      expect(series.present.readings).toEqual([]);
      expect(series.history.map(({ excluded }) => excluded)).toEqual(['parked']);
      expect(series.cautions.map(({ code }) => code)).toEqual(['put-in-size-not-used']);
    }
  });

  it('what is no ordinary new size is told by the tolerance of the class when the point has none', () => {
    const { limits } = aStrip();
    const point = aStrip({
      limits: limits.map((its) => ({ ...its, newSizeTolMm: null })),
      renewals: [aRenewal('2024-01-01', { sizeMm: 12.3 })],
    });
    expect(partSeries(point, linesOf([TRACTOR]), AS_OF, null).presentNewSizeMm).toBe(12.3);
    expect(partSeries(point, linesOf([TRACTOR]), AS_OF, 0.5).presentNewSizeMm).toBe(12);
  });

  it('parked sizes are shown and not used', () => {
    const sizes = [aSize('2022-01-01', 11), aSize('2024-01-01', 1.04, { parked: true })];
    const series = partSeries(aStrip({ sizes }), linesOf([TRACTOR]), AS_OF);
    expect(readingsOf(series.present)).toEqual([[3000, 1]]);
    expect(series.history[1]).toMatchObject({ excluded: 'parked', governing: null, stations: [{ parked: true }] });
  });

  it('hours follow the part to another machine; the shelf adds none', () => {
    const loader = aMachine(2, [
      ['2022-01-01', 8000],
      ['2026-01-01', 12000],
    ]);
    const strip = aStrip({
      sizes: [aSize('2024-01-01', 11)],
      sittings: [
        { machineId: 1, from: null, dialHours: null, toDialHours: null },
        { machineId: null, from: day('2022-01-01'), dialHours: 3000, toDialHours: null },
        { machineId: 2, from: day('2023-01-01'), dialHours: null, toDialHours: 9000 },
      ],
    });
    const series = partSeries(strip, linesOf([TRACTOR, loader]), AS_OF);
    expect(series.partHoursNow).toBe(3000 + 3000);
    expect(series.machineHoursNow).toBe(12000);
    expect(series.presentStartMachineHours!.hours).toBe(6000);
    expect(series.present.machineId).toBe(2);
    expect(series.history[0]!.machineHours).toBeCloseTo(8000 + (4000 * 730) / 1461, 9);
  });

  it('worked hours are machine hours times the share of their stretch', () => {
    const tractor = aMachine(
      1,
      [
        ['2020-01-01', 1000],
        ['2022-01-01', 3000],
        ['2026-01-01', 7000],
      ],
      [
        { from: null, share: 0.5, workType: null },
        { from: day('2022-01-01'), share: 0.1, workType: null },
      ],
    );
    const series = partSeries(aStrip({ sizes: [aSize('2026-01-01', 11)] }), linesOf([tractor]), AS_OF);
    expect(series).toMatchObject({ partHoursNow: 7000, workedHoursNow: 1900 });
    expect(readingsOf(series.present)).toEqual([[1900, 1]]);
  });

  it('rows after the as-of day count for nothing', () => {
    const strip = aStrip({
      sizes: [aSize('2022-01-01', 11), aSize('2024-01-01', 10)],
      renewals: [aRenewal('2025-01-01')],
    });
    const series = partSeries(strip, linesOf([TRACTOR], day('2023-01-01')), day('2023-01-01'));
    expect(readingsOf(series.present)).toEqual([[3000, 1]]);
    expect(series.renewals).toEqual([]);
  });

  it('a machine without hours on record: sizes are shown, and nothing is made up', () => {
    const series = partSeries(aStrip({ sizes: [aSize('2022-01-01', 11)] }), linesOf([aMachine(1, [])]), AS_OF);
    expect(series).toMatchObject({ partHoursNow: null, machineHoursNow: null, ownReadings: 0 });
    expect(series.history).toMatchObject([{ excluded: 'no-hours' }]);
  });
});
