import { describe, expect, it } from 'vitest';
import { aFinding, aPoint, aShopLife, aSize } from '#tests/support/aShopLife.ts';
import type { PointForecast } from '../contract/forecast.ts';
import type { Slip } from '../contract/slip.ts';
import { day } from '../units/day.ts';
import { forecastShop } from '../way.ts';
import { forecastSlip, type SlipFrom } from './forecastSlip.ts';

const AS_OF = day('2026-11-10');
const NOW = 5000;

type Given = Partial<PointForecast> & { hours?: [number, number, number]; assemblyId?: number };

/** A forecast by its hours left; its dates follow at 500 h a year. */
function aForecast(item: number, { hours = [500, 900, 1500], ...its }: Given = {}): SlipFrom['points'][number] {
  const left = { low: hours[0], middle: hours[1], high: hours[2] };
  const on = (h: number) => new Date(Date.UTC(2026, 10, 10) + (h / 500) * 365 * 86_400_000).toISOString().slice(0, 10);
  const decides = its.safety ? 'low' : 'middle';
  return {
    pointId: item,
    machineId: 1,
    machine: 'Vessel 118',
    assembly: 'Front loader',
    item,
    position: `Pin ${item}`,
    point: 'diameter',
    partClass: 'loader pin',
    safety: false,
    ownReadings: 2,
    machineHours: NOW,
    machineHoursRead: NOW,
    readOn: AS_OF,
    partHours: NOW,
    wearMm: { low: 0.4, middle: 0.5, high: 0.6 },
    ratePer1000hMm: { low: 0.1, middle: 0.12, high: 0.14 },
    limitWearMm: 1,
    machineHoursAtLimit: { low: NOW + hours[0], middle: NOW + hours[1], high: NOW + hours[2] },
    hoursLeft: left,
    dateAtLimit: { low: on(hours[0]), middle: on(hours[1]), high: on(hours[2]) },
    chancePastLimit: 0,
    pastLimitMm: null,
    basis: { own: 0.8, borrowed: 0.2 },
    cautions: [],
    cautionFacts: [],
    openFindings: [],
    likeParts: 14,
    likeMachines: 5,
    settingsChanged: 0,
    decides,
    decidingHoursLeft: left[decides],
    assemblyId: 1,
    visited: { positionId: item, wears: 'down', gaugeErrorMm: 0.03, history: [], renewals: [] },
    ...its,
  };
}

/** Winters of 150 h at 500 h a year; the one running began 20 h ago. */
const winters = Array.from({ length: 8 }, (_, i) => ({
  name: `${26 + i}/${27 + i}`,
  fromMachineHours: NOW - 20 + 500 * i,
  toMachineHours: NOW + 130 + 500 * i,
}));

const aSlipOf = (its: Partial<SlipFrom> = {}): Slip =>
  forecastSlip({
    head: {
      number: null,
      madeOn: AS_OF,
      shop: { name: 'Fenwater Works', headLines: [], phone: '', email: '', decimalMark: '.' },
      customer: { name: 'Hollin Top', place: 'Osmere' },
      machine: { name: 'Vessel 118', makeModel: '', serial: '' },
      measuredBy: '',
      greaseAndWatch: [],
      sketch: null,
    },
    asOf: AS_OF,
    hours: { machineHoursNow: NOW, dialHoursNow: 880, hoursPerDialHour: 1 },
    dialMachine: null,
    estimated: false,
    readOn: AS_OF,
    meterDigits: 5,
    hoursPerYear: 500,
    winters,
    points: [aForecast(1)],
    findings: [],
    ...its,
  });

describe('the headline', () => {
  it('asks for the machine by the earliest deciding hours of all its parts, on the dial of the present meter', () => {
    const { headline, hoursAre, dialHours } = aSlipOf({
      points: [aForecast(1, { hours: [500, 900, 1500] }), aForecast(2, { hours: [100, 700, 1300] })],
    });
    expect(headline).toMatchObject({ kind: 'come-in', items: [2], dialHours: 880 + 700, decides: 'middle' });
    expect(headline).toMatchObject({ range: { low: 980, middle: 1580, high: 2180 } });
    expect([hoursAre, dialHours]).toEqual(['dial', 880]);
  });

  it('goes by the low figure of a towing or lifting part, even when another reaches its middle first', () => {
    const { headline } = aSlipOf({
      points: [aForecast(1, { hours: [100, 400, 900] }), aForecast(2, { safety: true, hours: [390, 900, 2000] })],
    });
    expect(headline).toMatchObject({ items: [2], decides: 'low', dialHours: 880 + 390 });
  });

  it.each([
    { middle: 100, winter: '26/27', why: 'within the winter that runs' },
    { middle: 400, winter: '26/27', why: 'in the summer after it: come in before, not after' },
    { middle: 490, winter: '27/28', why: 'within the next winter' },
    { middle: 990, winter: '28/29', why: 'within the one after' },
  ])('names winter $winter for hours $why', ({ middle, winter }) => {
    expect(aSlipOf({ points: [aForecast(1, { hours: [middle - 50, middle, middle + 50] })] }).headline).toMatchObject({
      winter,
    });
  });

  it('names no winter when the hours come before the first one', () => {
    const later = winters.map((winter) => ({ ...winter, fromMachineHours: winter.fromMachineHours + 300 }));
    expect(aSlipOf({ winters: later, points: [aForecast(1, { hours: [50, 200, 400] })] }).headline).toMatchObject({
      winter: null,
    });
  });

  it('says about when, but past two seasons leaves it to a look next winter', () => {
    expect(aSlipOf({ points: [aForecast(1, { hours: [500, 990, 1500] })] }).headline).toMatchObject({
      about: '2028-11-01',
    });
    expect(aSlipOf({ points: [aForecast(1, { hours: [500, 1010, 1500] })] }).headline).toMatchObject({ about: null });
  });

  it('is passed once the deciding hours have gone by, or a limit was past when last measured', () => {
    expect(aSlipOf({ points: [aForecast(1, { hours: [-300, -40, 200] })] }).headline).toMatchObject({
      kind: 'passed',
      dialHours: 840,
    });
    const measured = aForecast(1, { hours: [-10, -10, -10], pastLimitMm: 0.36 });
    expect(aSlipOf({ points: [measured] }).headline).toMatchObject({ kind: 'passed', range: { low: 870, high: 870 } });
    expect(aSlipOf({ points: [aForecast(1, { hours: [-300, 40, 200] })] }).headline.kind).toBe('come-in');
  });

  it('is never an order to come in by a guess alone: a part nobody has measured is to be measured first', () => {
    const guess = { ...aForecast(1, { hours: [-300, -40, 2200] }), ownReadings: 0 };
    expect(aSlipOf({ points: [guess] }).headline).toMatchObject({
      kind: 'not-measured',
      items: [1],
      winter: winters[0]!.name,
      range: { middle: 840 },
    });
    expect(aSlipOf({ winters: [], points: [guess] }).headline).toMatchObject({ kind: 'not-measured', winter: null });
    // one that was measured and has gone by says so, though a guess comes before it
    const measured = aForecast(2, { hours: [-60, -30, 200] });
    expect(aSlipOf({ points: [guess, measured] }).headline).toMatchObject({ kind: 'passed', items: [2] });
    // to come, a guess is a plan like any other
    const later = { ...aForecast(1, { hours: [100, 900, 2200] }), ownReadings: 0 };
    expect(aSlipOf({ points: [later] }).headline.kind).toBe('come-in');
  });

  it('is the open do-not-use finding, and then there is no axis and nothing to do by hours', () => {
    const stop = { finding: aFinding(), item: 2, label: 'Hook', open: true };
    const slip = aSlipOf({ findings: [stop] });
    expect(slip.headline).toEqual({
      kind: 'do-not-use',
      items: [2],
      label: 'Hook',
      finding: 'crack',
      foundOn: '2026-10-12',
      note: 'At weld toe, 34 mm',
      declined: null,
    });
    expect(slip.axis).toBeNull();
    expect(slip.thenDo).toEqual([]);
    expect(slip.watch).toEqual([]);
    expect(aSlipOf({ findings: [{ ...stop, open: false }] }).headline.kind).toBe('come-in');
  });

  it('says that nothing can be said where no part has a forecast', () => {
    const none = { low: null, middle: null, high: null };
    const blank = aForecast(1, { hoursLeft: none, machineHoursAtLimit: none, decidingHoursLeft: null });
    expect(aSlipOf({ points: [blank] }).headline).toEqual({ kind: 'no-forecast' });
    expect(aSlipOf({ points: [] }).headline).toEqual({ kind: 'no-forecast' });
    expect(aSlipOf({ hours: null }).headline).toEqual({ kind: 'no-forecast' });
  });
});

describe('hours on the dial', () => {
  it('are machine hours where no meter was ever read', () => {
    const slip = aSlipOf({ hours: { machineHoursNow: NOW, dialHoursNow: null, hoursPerDialHour: 1 } });
    expect(slip.hoursAre).toBe('machine');
    expect(slip.headline).toMatchObject({ dialHours: 5900 });
  });

  it('go at the pace of the clock', () => {
    const slip = aSlipOf({ hours: { machineHoursNow: NOW, dialHoursNow: 880, hoursPerDialHour: 0.8 } });
    expect(slip.headline).toMatchObject({ dialHours: 880 + 900 / 0.8 });
  });
});

describe('the axis', () => {
  it('has all parts with a forecast, soonest first by deciding hours, those beyond reckoning last', () => {
    const beyond = { low: 3000, middle: null, high: null };
    const slip = aSlipOf({
      points: [
        aForecast(1, { hours: [500, 900, 1500] }),
        aForecast(2, { hoursLeft: beyond, machineHoursAtLimit: { ...beyond, low: 8000 }, decidingHoursLeft: null }),
        aForecast(3, { hours: [10, 300, 900] }),
      ],
    });
    expect(slip.axis!.rows.map(({ items }) => items[0])).toEqual([3, 1, 2]);
    expect(slip.axis).toMatchObject({ nowDialHours: 880, comeInDialHours: 1180 });
    expect(slip.axis!.winters[1]).toEqual({ name: '27/28', fromDialHours: 1360, toDialHours: 1510 });
  });

  it('tells points of one position apart, and parts of another assembly', () => {
    const slip = aSlipOf({
      points: [
        aForecast(1, { position: 'Pivot', point: 'pin' }),
        aForecast(2, { position: 'Pivot', point: 'bush' }),
        aForecast(3, { assembly: 'Rear linkage', assemblyId: 2, hours: [2000, 3000, 4000] }),
      ],
    });
    expect(slip.axis!.rows.map(({ label }) => label)).toEqual(['Pivot, pin', 'Pivot, bush', 'Rear linkage: Pin 3']);
  });
});

describe('what we would do then', () => {
  it('is what ends before the winter after that visit, and with it what the same assembly loses a year on', () => {
    const slip = aSlipOf({
      points: [
        aForecast(1, { hours: [400, 600, 900] }), // visit in winter 27/28, from 480 h on
        aForecast(2, { hours: [500, 900, 1500] }), // before 28/29 begins at 980 h
        aForecast(3, { hours: [500, 1300, 2000] }), // before 29/30 begins at 1480 h, same assembly
        aForecast(4, { hours: [500, 1300, 2000], assemblyId: 2, assembly: 'Rear linkage' }),
        aForecast(5, { hours: [500, 1600, 2000] }),
      ],
    });
    expect(slip.thenDo.map(({ items, role }) => [items[0], role])).toEqual([
      [1, 'due'],
      [2, 'due'],
      [3, 'with-it'],
    ]);
  });
});

describe('found and done', () => {
  const slipOfLife = (its: Parameters<typeof aShopLife>[0], findings: SlipFrom['findings'] = []): Slip => {
    const { shop, machines } = forecastShop(aShopLife(its), AS_OF);
    const points = machines[0]!.points.map((forecast, i) => {
      const point = shop.life.points[i]!;
      const { history, renewals } = shop.ofPoint(point);
      const { positionId, wears, gaugeErrorMm, assemblyId } = point;
      return { ...forecast, assemblyId, visited: { positionId, wears, gaugeErrorMm, history, renewals } };
    });
    return aSlipOf({ points, findings });
  };

  it('are of the last strip-down: worst first, renewals and as-left sizes beside', () => {
    const slip = slipOfLife({
      points: [
        aPoint(1, { sizes: [aSize(1, '2023-11-01', 39.9), aSize(2, '2026-11-01', 39.5)] }),
        aPoint(2, {
          sizes: [aSize(3, '2026-11-01', 38.9), aSize(4, '2026-11-01', 40.02, { event: 'as-left' })],
          renewals: [{ id: 1, takenOn: day('2026-11-01'), dialHours: null, hoursKnown: true, sizeMm: null }],
        }),
        aPoint(3, { sizes: [aSize(5, '2026-11-01', 39.2), aSize(6, '2026-11-02', 39.3, { event: 'as-left' })] }),
      ],
    });
    expect([slip.foundOn, slip.doneOn]).toEqual(['2026-11-01', '2026-11-02']);
    expect(
      slip.found.map(({ items, sizeMm, pastMm }) => [items[0], sizeMm, pastMm && Number(pastMm.toFixed(6))]),
    ).toEqual([
      [2, 38.9, 0.1],
      [3, 39.2, null],
      [1, 39.5, null],
    ]);
    expect(slip.done.map(({ items, what, sizeMm }) => [items[0], what, sizeMm])).toEqual([
      [2, 'renewed', 40.02],
      [3, 'left-at', 39.3],
    ]);
    expect(slip.axis!.rows.find(({ items }) => items[0] === 2)!.renewed).toBe(true);
  });

  it('take in findings from that day on, and what became of them', () => {
    const finding = aFinding({
      severity: 'repair',
      takenOn: day('2026-11-01'),
      closedOn: day('2026-11-03'),
      outcome: 'Straightened',
    });
    const slip = slipOfLife({ points: [aPoint(1, { sizes: [aSize(1, '2026-11-01', 39.5)] })] }, [
      { finding, item: 1, label: 'Pin 1', open: false },
    ]);
    expect(slip.found[0]).toMatchObject({ finding: 'crack', severity: 'repair', label: 'Pin 1' });
    expect(slip.done).toEqual([
      { items: [1], label: 'Pin 1', what: 'closed', sizeMm: null, decimals: 2, note: 'Straightened' },
    ]);
    expect(slip.doneOn).toBe('2026-11-03');
  });

  it('leave out what was done at an earlier strip-down', () => {
    const slip = slipOfLife({
      points: [
        aPoint(1, {
          sizes: [aSize(1, '2023-11-01', 38.9), aSize(2, '2026-11-01', 39.5)],
          renewals: [{ id: 1, takenOn: day('2023-11-01'), dialHours: null, hoursKnown: true, sizeMm: null }],
        }),
      ],
    });
    expect(slip.found).toHaveLength(1);
    expect(slip.done).toEqual([]);
    expect(slip.doneOn).toBeNull();
  });

  it('say when a size is queried and left out', () => {
    const parked = aSize(2, '2026-11-01', 3.95, { parked: true });
    expect(slipOfLife({ points: [aPoint(1, { sizes: [parked] })] }).cautions).toContain('sizes-questioned');
  });
});

describe('open findings', () => {
  it('to watch or repair are listed to be watched', () => {
    const finding = aFinding({ severity: 'watch', kind: 'bent', note: '' });
    expect(aSlipOf({ findings: [{ finding, item: 4, label: 'Pin 4', open: true }] }).watch).toEqual([
      {
        items: [4],
        label: 'Pin 4',
        finding: 'bent',
        severity: 'watch',
        foundOn: '2026-10-12',
        note: '',
        declined: null,
      },
    ]);
  });
});

it('counts own readings over all rows, like parts once a class', () => {
  const slip = aSlipOf({ points: [aForecast(1), aForecast(2), aForecast(3, { partClass: 'ring', likeParts: 5 })] });
  expect(slip.restsOn).toEqual({ ownReadings: 6, likeParts: 19 });
});
