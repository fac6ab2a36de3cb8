import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { caseCount } from '#tests/support/counts.ts';
import { hoursLine } from '../reading/hoursLine.ts';
import { machineHoursAtDial, machineHoursOn, presentDial } from '../reading/machineHours.ts';
import type { DialEvent, DialEventKind, MachineLife, WorkShare } from '../shop/machineLife.ts';
import type { PointLife, Renewal, Size } from '../shop/measuringPoint.ts';
import { addDays, type Day, day } from '../units/day.ts';
import type { MachineOnLine } from './partClock.ts';
import { partSeries } from './partSeries.ts';

const FIRST = day('2012-01-01');
const AS_OF = day('2026-01-01');
const RUNS = { numRuns: caseCount(4000), seed: 20_120_101 };

const aDay = fc.integer({ min: 0, max: 5000 }).map((days) => addDays(FIRST, days));

/** Rows as they might come: sound, odd and impossible ones alike. */
const anyRow = fc.record({
  takenOn: aDay,
  kind: fc.constantFrom<DialEventKind>('reading', 'reading', 'reading', 'estimate', 'new-meter', 'rollover'),
  dialHours: fc.option(fc.integer({ min: 0, max: 12_000 }), { freq: 8 }),
  newDialHours: fc.option(fc.integer({ min: 0, max: 50 })),
  errorHours: fc.option(fc.integer({ min: 0, max: 300 }), { freq: 2 }),
  parked: fc.boolean(),
});
const anyLife: fc.Arbitrary<MachineLife> = fc
  .record({
    rows: fc.array(anyRow, { maxLength: 12 }),
    hoursBefore: fc.option(fc.integer({ min: 0, max: 9000 })),
    meterDigits: fc.option(fc.constantFrom(4, 5)),
  })
  .map(({ rows, ...life }) => ({
    ...life,
    machineId: 1,
    workShares: [],
    dialEvents: rows.map((row, index): DialEvent => ({ ...row, id: index + 1 })).sort(byDay),
  }));

function byDay(a: { takenOn: Day }, b: { takenOn: Day }): number {
  return a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0;
}

/** A machine that was read truly: some hours between readings, meters changed and rolled over on the way. */
const trueLife = (machineId: number): fc.Arbitrary<{ life: MachineLife; hours: [Day, number][] }> =>
  fc
    .record({
      steps: fc.array(
        fc.record({
          days: fc.integer({ min: 1, max: 500 }),
          hours: fc.integer({ min: 0, max: 900 }),
          newMeter: fc.boolean(),
        }),
        { minLength: 2, maxLength: 9 },
      ),
      shares: fc.array(fc.record({ from: aDay, share: fc.constantFrom(0.1, 0.4, 0.8, 1) }), { maxLength: 3 }),
    })
    .map(({ steps, shares }) => {
      const dialEvents: DialEvent[] = [];
      const hours: [Day, number][] = [];
      let at = FIRST;
      let machineHours = 9500;
      let dialAt = 9500;
      for (const step of steps) {
        at = addDays(at, step.days);
        machineHours += step.hours;
        hours.push([at, machineHours]);
        const dial = dialAt + step.hours;
        const id = dialEvents.length + 1;
        const row = { id, takenOn: at, errorHours: null, parked: false, newDialHours: null };
        if (dialEvents.length > 0 && dial >= 10_000) {
          dialAt = dial - 10_000;
          dialEvents.push({ ...row, kind: 'rollover', dialHours: dialAt });
        } else if (step.newMeter && dial < 10_000) {
          dialAt = 7;
          dialEvents.push({ ...row, kind: 'new-meter', dialHours: dial, newDialHours: 7 });
        } else {
          dialAt = dial;
          dialEvents.push({ ...row, kind: 'reading', dialHours: dial });
        }
      }
      const workShares: WorkShare[] = shares.map(({ from, share }) => ({ from, share, workType: null })).sort(byFrom);
      return { life: { machineId, meterDigits: 4, hoursBefore: null, workShares, dialEvents }, hours };
    });

function byFrom(a: { from: Day | null }, b: { from: Day | null }): number {
  return byDay({ takenOn: a.from! }, { takenOn: b.from! });
}

describe('any life of a machine', () => {
  it('has machine hours that never fall, from node to node and from day to day', () => {
    fc.assert(
      fc.property(anyLife, fc.array(aDay, { minLength: 2, maxLength: 12 }), (life, days) => {
        const line = hoursLine(life, AS_OF);
        line.nodes.reduce((last, { machineHours }) => {
          expect(machineHours).toBeGreaterThanOrEqual(last);
          return machineHours;
        }, 0);
        const hours = days.sort().map((on) => machineHoursOn(line, on)?.hours ?? 0);
        for (let index = 1; index < hours.length; index++)
          expect(hours[index]!).toBeGreaterThanOrEqual(hours[index - 1]! - 1e-9);
      }),
      RUNS,
    );
  });

  it('is the same whatever the order of rows of different days', () => {
    fc.assert(
      fc.property(anyLife, (life) => {
        const daysBackwards = [...new Set(life.dialEvents.map(({ takenOn }) => takenOn))].reverse();
        const dialEvents = daysBackwards.flatMap((on) => life.dialEvents.filter(({ takenOn }) => takenOn === on));
        expect(hoursLine({ ...life, dialEvents }, AS_OF)).toEqual(hoursLine(life, AS_OF));
      }),
      RUNS,
    );
  });

  it('truly read gives the true hours at every reading, and every dial means them', () => {
    fc.assert(
      fc.property(trueLife(1), ({ life, hours }) => {
        const line = hoursLine(life, AS_OF);
        expect(line.cautions).toEqual([]);
        for (const [on, machineHours] of hours) {
          expect(machineHoursOn(line, on)!.hours).toBeCloseTo(machineHours, 6);
        }
        for (const { takenOn, dialHours } of life.dialEvents) {
          const meant = machineHoursAtDial(line, takenOn, dialHours!)!;
          expect(meant.hours).toBeCloseTo(machineHoursOn(line, takenOn)!.hours, 6);
        }
        const last = line.nodes.at(-1)!;
        expect(presentDial(line, last.machineHours)!.dialHours % 10_000).toBeCloseTo(last.dialHours % 10_000, 6);
      }),
      RUNS,
    );
  });

  it('seen as of an earlier day knows only the rows up to it', () => {
    fc.assert(
      fc.property(anyLife, aDay, (life, asOf) => {
        const earlier = { ...life, dialEvents: life.dialEvents.filter(({ takenOn }) => takenOn <= asOf) };
        expect(hoursLine(life, asOf)).toEqual(hoursLine(earlier, asOf));
      }),
      RUNS,
    );
  });
});

const anySize = fc.record({
  takenOn: aDay,
  station: fc.constantFrom('front', 'rear'),
  sizeMm: fc.integer({ min: 80, max: 122 }).map((tenths) => tenths / 10),
  event: fc.constantFrom<Size['event']>('as-found', 'as-left'),
  parked: fc.integer({ min: 0, max: 7 }).map((n) => n === 0),
});
const anyRenewal = fc.record({ takenOn: aDay, hoursKnown: fc.boolean(), sizeMm: fc.option(fc.constant(12)) });
const anyStrip = fc
  .record({
    sizes: fc.array(anySize, { maxLength: 10 }),
    renewals: fc.uniqueArray(anyRenewal, { maxLength: 3, selector: ({ takenOn }) => takenOn }),
    moves: fc.uniqueArray(fc.record({ from: aDay, machineId: fc.constantFrom(1, 2, null) }), {
      maxLength: 4,
      selector: ({ from }) => from,
    }),
    fittedMachineHours: fc.option(fc.integer({ min: 0, max: 500 })),
  })
  .map(
    ({ sizes, renewals, moves, fittedMachineHours }): PointLife => ({
      pointId: 1,
      partClass: 'strip',
      wears: 'down',
      safety: false,
      gaugeErrorMm: 0.05,
      fittedMachineHours,
      limits: [{ from: null, newSizeMm: 12, newSizeTolMm: 0.2, renewAtMm: 9, rejectAtMm: null, source: null }],
      sizes: sizes
        .map((size, index): Size => ({ ...size, id: index + 1, dialHours: null, gaugeErrorMm: null, gaugeStepMm: 0 }))
        .sort(byDay),
      renewals: renewals.map((renewal, index): Renewal => ({ ...renewal, id: index + 1, dialHours: null })).sort(byDay),
      sittings: [
        { machineId: 1, from: null, dialHours: null, toDialHours: null },
        ...moves.sort(byFrom).map((move) => ({ ...move, dialHours: null, toDialHours: null })),
      ],
    }),
  );
const twoMachines = fc
  .tuple(trueLife(1), trueLife(2))
  .map(
    (lives) =>
      new Map<number, MachineOnLine>(lives.map(({ life }) => [life.machineId, { life, line: hoursLine(life, AS_OF) }])),
  );

describe('any life of a part', () => {
  it('has part hours that are the sum of its machines’ hours while it sat on them', () => {
    fc.assert(
      fc.property(anyStrip, twoMachines, (strip, lines) => {
        const alone = { ...strip, sizes: [], renewals: [], fittedMachineHours: 0 };
        let sum = 0;
        strip.sittings.forEach(({ machineId, from }, index) => {
          if (machineId === null) return;
          const { line } = lines.get(machineId)!;
          const until = strip.sittings[index + 1]?.from ?? AS_OF;
          sum += machineHoursOn(line, until)!.hours - (from === null ? 0 : machineHoursOn(line, from)!.hours);
        });
        expect(partSeries(alone, lines, AS_OF).partHoursNow!).toBeCloseTo(sum, 6);
      }),
      RUNS,
    );
  });

  it('keeps every visit, sorts its readings, and never counts hours below nothing', () => {
    fc.assert(
      fc.property(anyStrip, twoMachines, (strip, lines) => {
        const series = partSeries(strip, lines, AS_OF);
        const all = [...series.finished, series.present];
        expect(all).toHaveLength(strip.renewals.length + 1);
        for (const { readings, startHoursSd } of all) {
          expect(startHoursSd).toBeGreaterThanOrEqual(0);
          readings.reduce((last, { workedHours, errorSdMm }) => {
            expect(workedHours).toBeGreaterThanOrEqual(last);
            expect(errorSdMm).toBeGreaterThan(0);
            return workedHours;
          }, 0);
        }
        const shown = series.history.flatMap(({ stations }) => stations.flatMap(({ sizeIds }) => sizeIds));
        expect(shown.sort((a, b) => a - b)).toEqual(strip.sizes.map(({ id }) => id).sort((a, b) => a - b));
      }),
      RUNS,
    );
  });

  it('is the same whatever the order of rows of different days', () => {
    fc.assert(
      fc.property(anyStrip, twoMachines, (strip, lines) => {
        const backwards = <Row extends { takenOn: Day }>(rows: readonly Row[]): Row[] =>
          [...new Set(rows.map(({ takenOn }) => takenOn))]
            .reverse()
            .flatMap((on) => rows.filter(({ takenOn }) => takenOn === on));
        const turned = { ...strip, sizes: backwards(strip.sizes), renewals: backwards(strip.renewals) };
        expect(partSeries(turned, lines, AS_OF)).toEqual(partSeries(strip, lines, AS_OF));
      }),
      RUNS,
    );
  });
});
