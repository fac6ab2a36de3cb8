import { describe, expect, it } from 'vitest';
import type { DialEvent, MachineLife } from '../shop/machineLife.ts';
import { day } from '../units/day.ts';
import { hoursLine } from './hoursLine.ts';
import { judgeDial, judgeLife } from './judgeDial.ts';

type Row = [takenOn: string, kind: DialEvent['kind'], dialHours: number | null, more?: Partial<DialEvent>];

let id = 0;
const anEvent = ([takenOn, kind, dialHours, more]: Row): DialEvent => ({
  id: ++id,
  takenOn: day(takenOn),
  kind,
  dialHours,
  newDialHours: null,
  errorHours: null,
  parked: false,
  ...more,
});
const aLife = (rows: Row[], meterDigits: number | null = 5): MachineLife => ({
  machineId: 1,
  meterDigits,
  hoursBefore: null,
  workShares: [],
  dialEvents: rows.map(anEvent),
});
const judge = (rows: Row[], row: Row, meterDigits: number | null = 5) =>
  judgeDial(hoursLine(aLife(rows, meterDigits), day('2030-01-01')), anEvent(row));
const codesOf = (judged: ReturnType<typeof judgeDial>) => [
  ...(judged.refusal ? [judged.refusal.code] : []),
  ...judged.cautions.map(({ code }) => code),
];

const TRACTOR: Row[] = [
  ['2023-10-10', 'reading', 1200],
  ['2024-10-10', 'reading', 1700],
];

describe('a dial row is judged', () => {
  it('sound when it rises as the machine is used', () => {
    expect(judge(TRACTOR, ['2025-10-10', 'reading', 2250])).toMatchObject({
      refusal: null,
      cautions: [],
      parked: false,
    });
  });

  it('refused when it falls without an event, saying what was read when', () => {
    const judged = judge(TRACTOR, ['2025-10-10', 'reading', 900]);
    expect(judged.refusal).toMatchObject({
      code: 'dial-went-back',
      facts: {
        dialHours: 900,
        lastDialHours: 1700,
        lastReadOn: '2024-10-10',
        rolloverPlausible: false,
        tenTimesFits: false,
      },
    });
    expect(judged.choices).toContain('new-meter');
  });

  it('a digit left out is seen through: 221 for 2210', () => {
    expect(judge(TRACTOR, ['2025-10-10', 'reading', 221]).refusal).toMatchObject({ facts: { tenTimesFits: true } });
  });

  it('a fall near the full scale may be a rollover', () => {
    const rows: Row[] = [['2024-10-10', 'reading', 9800]];
    expect(judge(rows, ['2025-10-10', 'reading', 250], 4).refusal).toMatchObject({
      facts: { rolloverPlausible: true, fullScaleHours: 10_000 },
    });
    expect(codesOf(judge(rows, ['2025-10-10', 'rollover', 250], 4))).toEqual([]);
    expect(codesOf(judge(rows, ['2025-10-10', 'rollover', 250], null))).toEqual(['meter-digits-not-known']);
    expect(codesOf(judge(rows, ['2025-10-10', 'rollover', 9900], 4))).toEqual(['rollover-without-fall']);
    expect(codesOf(judge(rows, ['2024-10-20', 'rollover', 5000], 4))).toEqual(['rise-over-24-a-day']);
  });

  it('parked when it rises by more than 24 h a day', () => {
    const judged = judge(TRACTOR, ['2024-10-12', 'reading', 1749]);
    expect(judged).toMatchObject({
      refusal: null,
      parked: true,
      cautions: [{ code: 'rise-over-24-a-day', facts: { riseHours: 49, days: 2 } }],
    });
    expect(judge(TRACTOR, ['2024-10-12', 'reading', 1748]).parked).toBe(false);
  });

  it('parked when ten times off, even within 24 h a day', () => {
    const rows: Row[] = [['2022-10-10', 'reading', 1200]];
    const judged = judge(rows, ['2025-10-10', 'reading', 26_000]);
    expect(judged).toMatchObject({
      parked: true,
      cautions: [{ code: 'ten-times-off', facts: { likelyDialHours: 2600 } }],
    });
    expect(judge(rows, ['2025-10-10', 'reading', 2600]).cautions).toEqual([]);
  });

  it('parked when the meter cannot show it', () => {
    expect(codesOf(judge([['2015-10-10', 'reading', 9900]], ['2025-10-10', 'reading', 10_050], 4))).toEqual([
      'dial-over-full-scale',
    ]);
  });

  it('told when the dial has not moved for a year', () => {
    expect(judge(TRACTOR, ['2025-10-10', 'reading', 1700])).toMatchObject({
      parked: false,
      cautions: [{ code: 'meter-may-have-stopped' }],
    });
  });

  it('a back-dated row must fit between its neighbours', () => {
    expect(codesOf(judge(TRACTOR, ['2024-04-10', 'reading', 1450]))).toEqual([]);
    expect(codesOf(judge(TRACTOR, ['2024-04-10', 'reading', 1750]))).toEqual(['dial-above-later']);
    expect(codesOf(judge(TRACTOR, ['2024-04-10', 'reading', 1150]))).toEqual(['dial-went-back']);
    expect(codesOf(judge(TRACTOR, ['2022-04-10', 'reading', 1150]))).toEqual([]);
    expect(codesOf(judge(TRACTOR, ['2022-04-10', 'reading', 1250]))).toEqual(['dial-above-later']);
  });

  it('a back-dated row from before a rollover or a new meter is read on the meter of its day', () => {
    const rolled: Row[] = [
      ['2024-10-10', 'reading', 9800],
      ['2025-10-10', 'rollover', 250],
    ];
    expect(codesOf(judge(rolled, ['2025-01-10', 'reading', 9900], 4))).toEqual([]);
    expect(codesOf(judge(rolled, ['2025-09-10', 'reading', 200], 4))).toEqual([]);
    const renewed: Row[] = [
      ['2024-10-10', 'reading', 4000],
      ['2025-04-10', 'new-meter', 4150, { newDialHours: 0 }],
      ['2025-10-10', 'reading', 300],
    ];
    expect(codesOf(judge(renewed, ['2025-01-10', 'reading', 4050]))).toEqual([]);
    expect(codesOf(judge(renewed, ['2025-07-10', 'reading', 150]))).toEqual([]);
    expect(codesOf(judge(renewed, ['2025-07-10', 'reading', 4200]))).toEqual(['dial-above-later']);
  });

  it('an estimate does not bind: a lower reading after it is sound', () => {
    const rows: Row[] = [...TRACTOR, ['2025-03-10', 'estimate', 2400]];
    expect(codesOf(judge(rows, ['2025-10-10', 'reading', 2250]))).toEqual([]);
    expect(codesOf(judge(rows, ['2025-10-10', 'reading', 1650]))).toEqual(['dial-went-back']);
  });
});

describe('a whole life is judged', () => {
  it('row by row, each against the sound rows before it', () => {
    const life = aLife([
      ['2023-10-10', 'reading', 1200],
      ['2024-01-10', 'reading', 13_000],
      ['2024-10-10', 'reading', 1700],
      ['2025-04-10', 'reading', 1650],
      ['2025-10-10', 'new-meter', 2100, { newDialHours: 0 }],
      ['2026-04-10', 'reading', 240],
    ]);
    expect(judgeLife(life).map(codesOf)).toEqual([
      [],
      ['rise-over-24-a-day', 'ten-times-off'],
      [],
      ['dial-went-back'],
      [],
      [],
    ]);
  });
});
