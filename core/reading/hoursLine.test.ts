import { describe, expect, it } from 'vitest';
import type { DialEvent, MachineLife } from '../shop/machineLife.ts';
import { day } from '../units/day.ts';
import { hoursLine } from './hoursLine.ts';
import { lastRead, machineHoursAtDial, machineHoursOn, presentDial, useStretches } from './machineHours.ts';

type Row = [takenOn: string, kind: DialEvent['kind'], dialHours: number | null, more?: Partial<DialEvent>];

const aLife = (rows: Row[], more: Partial<MachineLife> = {}): MachineLife => ({
  machineId: 1,
  meterDigits: 5,
  hoursBefore: null,
  workShares: [],
  dialEvents: rows.map(([takenOn, kind, dialHours, extra], index) => ({
    id: index + 1,
    takenOn: day(takenOn),
    kind,
    dialHours,
    newDialHours: null,
    errorHours: null,
    parked: false,
    ...extra,
  })),
  ...more,
});
const lineOf = (rows: Row[], more: Partial<MachineLife> = {}, asOf = '2030-01-01') =>
  hoursLine(aLife(rows, more), day(asOf));
const hoursOf = (rows: Row[], more?: Partial<MachineLife>) =>
  lineOf(rows, more).nodes.map(({ machineHours }) => machineHours);

describe('machine hours from the dial', () => {
  it('go straight between two readings', () => {
    const line = lineOf([
      ['2024-01-01', 'reading', 1000],
      ['2024-01-11', 'reading', 1100],
    ]);
    expect(machineHoursOn(line, day('2024-01-06'))).toMatchObject({ hours: 1050, kind: 'between' });
    expect(machineHoursOn(line, day('2024-01-11'))).toMatchObject({ hours: 1100, sdHours: 0, kind: 'read' });
    expect(lastRead(line)).toEqual({ takenOn: '2024-01-11', machineHours: 1100, dialHours: 1100 });
  });

  it('a meter replaced at 4120 h goes on counting from 4120 h', () => {
    const line = lineOf([
      ['2022-03-01', 'reading', 3900],
      ['2023-03-01', 'new-meter', 4120, { newDialHours: 0 }],
      ['2024-03-01', 'reading', 310],
    ]);
    expect(line.nodes.map((node) => node.machineHours)).toEqual([3900, 4120, 4430]);
    expect(machineHoursAtDial(line, day('2022-09-01'), 4000)).toMatchObject({
      hours: 4000,
      kind: 'read',
      caution: null,
    });
    expect(machineHoursAtDial(line, day('2023-09-01'), 150)).toMatchObject({
      hours: 4270,
      kind: 'read',
      caution: null,
    });
    expect(presentDial(line, 4500)).toEqual({ dialHours: 380, laps: 0 });
    expect(useStretches(line).map(({ hours }) => hours)).toEqual([220, 310]);
  });

  it('an unknown last figure is bridged from use, and all later hours carry the doubt', () => {
    const line = lineOf([
      ['2022-03-01', 'reading', 4000],
      ['2023-03-01', 'new-meter', null, { newDialHours: 0 }],
      ['2024-03-01', 'reading', 310],
    ]);
    expect(line.nodes[1]!.machineHours).toBeCloseTo(4500, 6);
    const last = machineHoursOn(line, day('2024-03-01'))!;
    expect(last.hours).toBeCloseTo(4810, 6);
    expect(last.sdHours).toBeGreaterThan(200);
    expect(useStretches(line)).toMatchObject([{ hours: 310 }]);
  });

  it('estimates of a machine without a meter speak for its use once, from the first to the last', () => {
    const line = lineOf([
      ['2020-01-10', 'estimate', 1100],
      ['2022-01-10', 'estimate', 1700],
      ['2024-01-10', 'estimate', 2300],
    ]);
    expect(useStretches(line)).toMatchObject([{ from: '2020-01-10', to: '2024-01-10', hours: 1200 }]);
  });

  it('a rollover adds the full scale', () => {
    const line = lineOf(
      [
        ['2022-03-01', 'reading', 9800],
        ['2023-03-01', 'rollover', 150],
        ['2024-03-01', 'reading', 400],
      ],
      { meterDigits: 4 },
    );
    expect(line.nodes.map((node) => node.machineHours)).toEqual([9800, 10150, 10400]);
    expect(machineHoursAtDial(line, day('2022-08-01'), 9900)).toMatchObject({ hours: 9900, caution: null });
    expect(machineHoursAtDial(line, day('2022-10-01'), 20)).toMatchObject({ hours: 10020, caution: null });
    expect(presentDial(line, 20050)).toEqual({ dialHours: 50, laps: 1 });
  });

  it('hours before the first dial are added to it', () => {
    expect(hoursOf([['2022-03-01', 'reading', 250]], { hoursBefore: 4000 })).toEqual([4250]);
    expect(
      hoursOf([
        ['2022-03-01', 'new-meter', 5000, { newDialHours: 0 }],
        ['2022-04-01', 'reading', 20],
      ]),
    ).toEqual([5000, 5020]);
  });

  it('an estimate is out by a quarter of the hours since the last reading, until the next reading', () => {
    const line = lineOf([
      ['2022-03-01', 'reading', 1000],
      ['2023-03-01', 'estimate', 1400],
      ['2024-03-01', 'reading', 1900],
    ]);
    expect(machineHoursOn(line, day('2023-03-01'))).toMatchObject({ hours: 1400, sdHours: 100, kind: 'estimated' });
    expect(machineHoursOn(line, day('2024-03-01'))).toMatchObject({ hours: 1900, sdHours: 0 });
  });

  it('a first estimate is out by a quarter of what it says, not of the hours before it', () => {
    const line = lineOf([['2023-03-01', 'estimate', 1000]], { hoursBefore: 4000 });
    expect(machineHoursOn(line, day('2023-03-01'))).toMatchObject({ hours: 5000, sdHours: 250 });
  });

  it('an estimate above a later reading comes down to it', () => {
    const line = lineOf([
      ['2022-03-01', 'reading', 1000],
      ['2023-03-01', 'estimate', 1900, { errorHours: 50 }],
      ['2024-03-01', 'reading', 1500],
    ]);
    expect(line.nodes.map((node) => node.machineHours)).toEqual([1000, 1500, 1500]);
    expect(line.cautions.map(({ code }) => code)).toEqual(['estimate-above-reading']);
  });

  it('a meter that stood still for a year: the estimate counts, not the dead dial', () => {
    const line = lineOf([
      ['2022-03-01', 'reading', 4120],
      ['2023-03-01', 'estimate', 4700, { errorHours: 120 }],
      ['2023-03-01', 'new-meter', 4120, { newDialHours: 0 }],
      ['2024-03-01', 'reading', 500],
    ]);
    expect(line.nodes.at(-1)!.machineHours).toBe(5200);
    expect(machineHoursOn(line, day('2024-03-01'))!.sdHours).toBeCloseTo(120, 6);
  });

  it('rows after the as-of day, and parked rows, count for nothing', () => {
    const rows: Row[] = [
      ['2022-03-01', 'reading', 1000],
      ['2022-06-01', 'reading', 12345, { parked: true }],
      ['2023-03-01', 'reading', 1400],
      ['2024-03-01', 'reading', 1900],
    ];
    expect(lineOf(rows, {}, '2023-12-31').nodes.map((node) => node.machineHours)).toEqual([1000, 1400]);
  });

  it('several rows of one day count in their order', () => {
    expect(
      hoursOf([
        ['2022-03-01', 'reading', 1000],
        ['2022-03-01', 'new-meter', 1002, { newDialHours: 10 }],
        ['2022-03-01', 'reading', 12],
      ]),
    ).toEqual([1000, 1002, 1004]);
  });

  it('a fall that was stored all the same is left out, with a caution', () => {
    const line = lineOf([
      ['2022-03-01', 'reading', 1000],
      ['2023-03-01', 'reading', 400],
    ]);
    expect(line.nodes).toHaveLength(1);
    expect(line.cautions).toMatchObject([{ code: 'dial-went-back', facts: { dialHours: 400, lastDialHours: 1000 } }]);
  });

  it('a clock that runs at another pace counts by its factor', () => {
    expect(
      hoursOf([
        ['2022-03-01', 'new-meter', 1000, { newDialHours: 0, hoursPerDialHour: 0.8 }],
        ['2023-03-01', 'reading', 500],
      ]),
    ).toEqual([1000, 1400]);
  });

  it('a machine without any row has no hours; one with estimates only has no dial', () => {
    expect(machineHoursOn(lineOf([]), day('2024-01-01'))).toBeNull();
    const trailer = lineOf([['2024-01-01', 'estimate', 800]]);
    expect(machineHoursOn(trailer, day('2024-01-01'))).toMatchObject({ hours: 800, sdHours: 200 });
    expect(presentDial(trailer, 900)).toBeNull();
  });
});
