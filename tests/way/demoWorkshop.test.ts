import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { beforeAll, describe, expect, test } from 'vitest';
import type { ForecastRow } from '#core/contract/forecast.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { day } from '#core/units/day.ts';
import { forecastsOfMachine, seriesOfShop } from '#core/way.ts';
import { aRecord, brought, filesOf } from '#tests/support/aRecord.ts';
import { learningOfDemo } from '#tests/support/learnedDemo.ts';

/** The demo workshop in, what demo-data/expected.md says of it out. */
const DEMO = join(import.meta.dirname, '..', '..', 'demo-data');
const AS_OF = day('2026-11-09');

type Expected = {
  machine: string;
  assembly: string;
  position: string;
  point: string;
  what: string;
  from: string;
  to: string;
  why: string;
};
type Truth = { machine: string; assembly: string; position: string; point: string } & Record<string, string>;

const table = <T>(file: string): T[] =>
  Papa.parse<T>(readFileSync(join(DEMO, file), 'utf8'), { header: true, skipEmptyLines: true }).data;

let rows: ForecastRow[] = [];

beforeAll(async () => {
  const record = aRecord();
  const account = brought(record, filesOf(join(DEMO, 'workshop')), { asOf: AS_OF });
  expect(account.faults).toEqual([]);
  // the same workshop a week before, its jobs in: what it teaches of its classes is as good as the same
  const learning = await learningOfDemo();
  const shop = seriesOfShop(loadShopLife(record, { asOf: AS_OF }), AS_OF, learning.habit);
  const { machines } = shop.life;
  rows = machines.flatMap(({ machineId }) => forecastsOfMachine(shop, machineId, learning).points);
  record.close();
});

const FIGURES: Record<string, (row: ForecastRow) => number | string | null> = {
  machine_hours: (row) => row.machineHours,
  machine_hours_read: (row) => row.machineHoursRead,
  read_on: (row) => row.readOn,
  own_readings: (row) => row.ownReadings,
  part_hours: (row) => row.partHours,
  hours_left_low: (row) => row.hoursLeft.low,
  hours_left_middle: (row) => row.hoursLeft.middle,
  hours_left_high: (row) => row.hoursLeft.high,
  machine_hours_at_limit_middle: (row) => row.machineHoursAtLimit.middle,
  date_middle: (row) => row.dateAtLimit.middle,
  past_limit_mm: (row) => row.pastLimitMm,
  chance_past_limit: (row) => row.chancePastLimit,
};

const of = ({ machine, assembly, position, point }: Expected): ForecastRow[] =>
  rows.filter(
    (row) =>
      row.machine === machine &&
      (assembly === '' || row.assembly === assembly) &&
      (position === '' || row.position === position) &&
      (point === '' || row.point === point),
  );

function holds(row: ForecastRow, { what, from, to }: Expected): boolean {
  if (what === 'caution') return row.cautions.includes(from);
  if (what === 'open_finding') return row.openFindings.some(({ severity }) => severity === from);
  if (what === 'hours_left') return from === 'null' && Object.values(row.hoursLeft).every((hours) => hours === null);
  const figure = FIGURES[what]?.(row) ?? null;
  if (figure === null) return from === 'null';
  return typeof figure === 'number' ? figure >= Number(from) && figure <= Number(to) : figure >= from && figure <= to;
}

describe('the demo workshop, as of 9 November 2026', () => {
  const expected = table<Expected>('expected.csv');

  test('is told about in full', () => {
    expect(expected.length).toBeGreaterThan(40);
    const figures = new Set([...Object.keys(FIGURES), 'caution', 'open_finding', 'hours_left']);
    expect(expected.filter(({ what }) => !figures.has(what))).toEqual([]);
  });

  test.each(expected.map((line) => [Object.values(line).slice(0, 7).filter(Boolean).join(', '), line] as const))(
    '%s',
    (_told, line) => {
      const found = of(line);
      expect(found.length).toBeGreaterThan(0);
      // a line about a machine holds for each of its points
      for (const row of found) expect({ row, holds: holds(row, line), why: line.why }).toMatchObject({ holds: true });
    },
  );

  test('covers the true hours left of 65 to 95 % of the points in service', () => {
    const truth = table<Truth>('truth.csv');
    const judged = rows.flatMap((row) => {
      const { low, high } = row.hoursLeft;
      if (row.limitWearMm === null || row.pastLimitMm !== null || row.machineHours === null) return [];
      if (row.openFindings.some(({ severity }) => severity === 'do-not-use')) return [];
      const its = truth.find(
        (one) =>
          one.machine === row.machine &&
          one.assembly === row.assembly &&
          one.position === row.position &&
          one.point === row.point,
      );
      if (!its?.true_hours_left) return [];
      const left = Number(its.true_hours_left);
      return [(low === null || left >= low) && (high === null || left <= high)];
    });
    expect(judged.length).toBeGreaterThan(300);
    const covered = judged.filter(Boolean).length / judged.length;
    expect(covered).toBeGreaterThan(0.65);
    expect(covered).toBeLessThan(0.95);
  });
});
