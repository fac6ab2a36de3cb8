import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { DialEvent, HoursSource, MachineLife } from '../shop/machineLife.ts';
import { addDays, type Day, day } from '../units/day.ts';
import { type GatherFrom, gatheredHours } from './gatheredHours.ts';
import { type HoursLine, hoursLine } from './hoursLine.ts';
import { machineHoursOn, presentDial } from './machineHours.ts';
import { EVEN_USE } from './season.ts';

const dial = (takenOn: string, kind: DialEvent['kind'], dialHours: number | null, more: Partial<DialEvent> = {}) => ({
  id: 1,
  takenOn: day(takenOn),
  kind,
  dialHours,
  newDialHours: null,
  errorHours: null,
  parked: false,
  ...more,
});
const aLife = (dialEvents: DialEvent[], hoursSources: HoursSource[] = []): MachineLife => ({
  machineId: 1,
  meterDigits: null,
  hoursBefore: null,
  dialEvents,
  workShares: [],
  hoursSources,
});
const AS_OF = day('2026-01-01');
const PULLER = hoursLine(
  aLife([
    dial('2020-01-01', 'reading', 1000),
    dial('2022-01-01', 'reading', 3000),
    dial('2026-01-01', 'reading', 5000),
  ]),
  AS_OF,
);
const FROM: GatherFrom = {
  ownDays: [],
  pullerOf: () => ({ line: PULLER, hoursPerYear: 500 }),
  season: EVEN_USE,
};
const pulled = (from: string, share: number, errorShare: number | null = null): HoursSource => ({
  kind: 'pulled',
  from: day(from),
  pullerId: 2,
  share,
  errorShare,
});
const yearly = (from: string, hoursPerYear: number): HoursSource => ({
  kind: 'yearly',
  from: day(from),
  hoursPerYear,
  errorShare: null,
});

/** The line of a machine without a meter, with its own rows if it has any. */
const lineOf = (sources: HoursSource[], events: DialEvent[] = [], from: GatherFrom = FROM): HoursLine => {
  const ownDays = events.map(({ takenOn }) => takenOn);
  return hoursLine(aLife(events, sources), AS_OF, undefined, gatheredHours(sources, AS_OF, { ...from, ownDays }));
};
const on = (line: HoursLine, at: string) => machineHoursOn(line, day(at))!;

describe('a machine that another pulls', () => {
  it('runs a share of what its puller runs, bends of the puller included', () => {
    const line = lineOf([pulled('2020-01-01', 0.3)]);
    expect(on(line, '2022-01-01').hours).toBeCloseTo(600, 6);
    expect(on(line, '2024-01-01').hours).toBeCloseTo(900, 0);
    expect(on(line, '2026-01-01').hours).toBeCloseTo(1200, 6);
    expect(on(line, '2026-01-01').kind).toBe('estimated');
    expect(presentDial(line, 1200)).toBeNull();
  });
  it('goes on from the hours it came with, and carries their doubt', () => {
    const came = dial('2020-01-01', 'estimate', 2400, { errorHours: 300 });
    const line = lineOf([pulled('2020-01-01', 0.3, 0)], [came]);
    expect(on(line, '2026-01-01').hours).toBeCloseTo(3600, 6);
    expect(on(line, '2026-01-01').sdHours).toBeCloseTo(300, 6);
  });
  it('each year of a share is out by itself: after six years by the root of six of one year’s', () => {
    const share = 0.3;
    const line = lineOf([pulled('2020-01-01', share, 0.25)]);
    // 4000 h of the puller at 500 h a year: eight years' worth
    expect(on(line, '2026-01-01').sdHours).toBeCloseTo(0.25 * share * 500 * Math.sqrt(8), 6);
  });
  it('a share that changes holds from its day on', () => {
    const line = lineOf([pulled('2020-01-01', 0.3), pulled('2022-01-01', 0.1)]);
    expect(on(line, '2022-01-01').hours).toBeCloseTo(600, 6);
    expect(on(line, '2026-01-01').hours).toBeCloseTo(800, 6);
  });
  it('a meter fitted to it begins where the gathered hours stand', () => {
    const fitted = dial('2022-01-01', 'new-meter', null, { newDialHours: 0 });
    const read = dial('2025-01-01', 'reading', 450, { id: 2 });
    const line = lineOf(
      [pulled('2020-01-01', 0.3), { kind: 'own', from: day('2022-01-01'), errorShare: null }],
      [fitted, read],
    );
    expect(on(line, '2022-01-01').hours).toBeCloseTo(600, 6);
    expect(on(line, '2025-01-01')).toMatchObject({ kind: 'read' });
    expect(on(line, '2025-01-01').hours).toBeCloseTo(1050, 6);
  });
  it('adds nothing while its puller has no hours on record, and says that it is estimated', () => {
    const line = lineOf([pulled('2020-01-01', 0.3)], [], { ...FROM, pullerOf: () => undefined });
    expect(line.nodes).toHaveLength(1);
    expect(line.nodes[0]).toMatchObject({ machineHours: 0, kind: 'estimated' });
  });
});

describe('a machine of which somebody reckons the hours a year', () => {
  it('gathers so many a year, and is the less sure the longer it goes', () => {
    const line = lineOf([yearly('2020-01-01', 300)]);
    expect(on(line, '2025-12-31').hours).toBeCloseTo((300 / 365) * 2191, 6);
    expect(on(line, '2022-01-01').sdHours).toBeLessThan(on(line, '2025-01-01').sdHours);
  });
  it('an estimate of its hours takes the place of what was reckoned until then', () => {
    const line = lineOf([yearly('2020-01-01', 300)], [dial('2024-01-01', 'estimate', 900, { errorHours: 50 })]);
    expect(on(line, '2024-01-01').hours).toBe(900);
    expect(on(line, '2023-12-01').hours).toBeLessThanOrEqual(900);
    expect(on(line, '2026-01-01').hours).toBeCloseTo(900 + (300 / 365) * 731, 6);
  });
});

test('hours of a machine that is pulled never fall, through any sources, shares, and rows of its own', () => {
  const someDay = fc.integer({ min: 0, max: 2190 }).map((days): Day => addDays(day('2020-01-01'), days));
  const aSource = fc.oneof(
    fc.record({
      kind: fc.constant('pulled' as const),
      pullerId: fc.constant(2),
      share: fc.double({ min: 0.01, max: 1, noNaN: true }),
    }),
    fc.record({ kind: fc.constant('yearly' as const), hoursPerYear: fc.double({ min: 1, max: 3000, noNaN: true }) }),
    fc.record({ kind: fc.constant('own' as const) }),
  );
  const sources = fc.array(fc.record({ from: someDay, source: aSource }), { minLength: 1, maxLength: 5 });
  const rows = fc.array(
    fc.record({
      takenOn: someDay,
      kind: fc.constantFrom('estimate' as const, 'reading' as const, 'new-meter' as const),
      dialHours: fc.double({ min: 0, max: 9000, noNaN: true }),
    }),
    { maxLength: 5 },
  );
  fc.assert(
    fc.property(sources, rows, (said, typed) => {
      const ordered = said
        .map(({ from, source }): HoursSource => ({ ...source, from, errorShare: null }))
        .sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
      const events = typed
        .map((row, i) =>
          dial(row.takenOn, row.kind, row.dialHours, { id: i, newDialHours: row.kind === 'new-meter' ? 0 : null }),
        )
        .sort((a, b) => (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0));
      const line = lineOf(ordered, events);
      let before = 0;
      for (let at = 0; at <= 2600; at += 37) {
        const now = machineHoursOn(line, addDays(day('2020-01-01'), at));
        if (!now) continue;
        expect(now.hours).toBeGreaterThanOrEqual(before - 1e-6);
        expect(now.ownVariance + now.driftVariance).toBeGreaterThanOrEqual(0);
        before = now.hours;
      }
    }),
    { numRuns: 300 },
  );
});
