import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import { zAssemblyKind } from '#core/contract/shop.ts';
import { builtInAssemblyKinds } from '#core/shop/assemblyKinds.ts';
import { COLUMNS, writeDemo } from './make.ts';
import { random } from './random.ts';
import { TRUE_CLASSES, wearPath } from './wear.ts';

const HERE = import.meta.dirname;
const fresh = mkdtempSync(join(tmpdir(), 'demo-'));
afterAll(() => rmSync(fresh, { recursive: true }));

type Row = Record<string, string>;
const rowsOf = (file: keyof typeof COLUMNS): Row[] =>
  Papa.parse<Row>(readFileSync(join(HERE, 'workshop', file), 'utf8'), { header: true, skipEmptyLines: true }).data;
const pointOf = (row: Row) => [row.machine, row.assembly, row.position, row.point].join(' / ');
const count = <T>(items: T[], is: (item: T) => boolean) => items.filter(is).length;

describe('the demo workshop', () => {
  it('comes out of the generator byte for byte as it is kept here', () => {
    writeDemo(fresh);
    const kept = readdirSync(join(HERE, 'workshop')).sort();
    expect(readdirSync(join(fresh, 'workshop')).sort()).toEqual(kept);
    for (const name of [...kept.map((file) => join('workshop', file)), 'truth.csv'])
      expect(readFileSync(join(fresh, name), 'utf8'), name).toBe(readFileSync(join(HERE, name), 'utf8'));
  });

  it('has the columns of the import format, and only files of that format', () => {
    expect(readdirSync(join(HERE, 'workshop')).sort()).toEqual(Object.keys(COLUMNS).sort());
    for (const [file, columns] of Object.entries(COLUMNS))
      expect(readFileSync(join(HERE, 'workshop', file), 'utf8').split('\n')[0], file).toBe(columns.join(','));
  });

  it('is a shop of the promised size: 14 customers, 30 machines, 4 kinds, several hundred sizes in 8 winters', () => {
    const machines = rowsOf('machines.csv');
    expect(new Set(machines.map((row) => row.customer)).size).toBeGreaterThanOrEqual(14);
    expect(machines.length).toBeGreaterThanOrEqual(30);
    const sizes = rowsOf('sizes.csv').filter((row) => row.size_mm !== '');
    expect(sizes.length).toBeGreaterThanOrEqual(600);
    expect(sizes.length).toBeLessThanOrEqual(1100);
    // a winter belongs to the year it begins in; July parts one from the next
    const winters = new Set(
      sizes.map((row) => Number(row.date!.slice(0, 4)) - (Number(row.date!.slice(5, 7)) < 7 ? 1 : 0)),
    );
    for (let year = 2018; year <= 2025; year++) expect(winters, `winter ${year}`).toContain(year);
    const seen = new Set(rowsOf('points.csv').map((row) => row.position));
    for (const kind of builtInAssemblyKinds) {
      expect(zAssemblyKind.safeParse(kind).success, kind.name).toBe(true);
      for (const position of kind.positions) expect(seen, kind.name).toContain(position.name);
    }
  });

  it('is as large as its README says', () => {
    const sizes = rowsOf('sizes.csv');
    const machines = rowsOf('machines.csv');
    const counts = [
      `${machines.length} machines`,
      `${new Set(machines.map((row) => row.customer)).size} customers`,
      `${rowsOf('points.csv').length} measuring points`,
      `${count(sizes, (row) => row.size_mm !== '')} sizes`,
      `${count(sizes, (row) => row.event === 'renewed')} renewals`,
      `${rowsOf('findings.csv').length} findings`,
    ];
    expect(readFileSync(join(HERE, 'README.md'), 'utf8')).toContain(`In it: ${counts.join(', ')}.`);
  });

  it('speaks of no machine, point or class it has not named', () => {
    const machines = new Set(rowsOf('machines.csv').map((row) => row.machine));
    const points = rowsOf('points.csv');
    const known = new Set(points.map(pointOf));
    expect(known.size).toBe(points.length);
    for (const file of ['hours.csv', 'points.csv', 'sizes.csv', 'moves.csv', 'findings.csv'] as const)
      for (const row of rowsOf(file)) expect(machines, file).toContain(row.machine);
    for (const row of rowsOf('sizes.csv')) expect(known).toContain(pointOf(row));
    const classes = new Set(points.map((row) => row.part_class));
    for (const row of rowsOf('classes.csv')) expect(classes).toContain(row.part_class);
    // one class has no trade knowledge
    expect(classes.size).toBe(rowsOf('classes.csv').length + 1);
  });

  it('holds the awkward cases', () => {
    const hours = rowsOf('hours.csv');
    const sizes = rowsOf('sizes.csv');
    const findings = rowsOf('findings.csv');
    const newMeters = hours.filter((row) => row.event === 'new-meter');
    expect(count(newMeters, (row) => row.dial_hours !== '')).toBeGreaterThan(0);
    expect(count(newMeters, (row) => row.dial_hours === '')).toBeGreaterThan(0);
    expect(count(hours, (row) => row.event === 'rollover')).toBe(1);
    expect(count(hours, (row) => row.event === 'estimate' && row.hours_error !== '')).toBeGreaterThan(2);
    expect(count(sizes, (row) => row.event === 'renewed' && row.dial_hours === '')).toBe(2);
    expect(rowsOf('moves.csv')).toHaveLength(1);
    expect(count(findings, (row) => row.severity === 'do-not-use' && row.closed_date === '')).toBe(1);
    expect(count(findings, (row) => row.closed_date !== '')).toBeGreaterThan(3);
    const measured = new Set(sizes.map((row) => row.machine));
    expect(
      rowsOf('machines.csv')
        .filter((row) => !measured.has(row.machine))
        .map((row) => row.machine),
    ).toEqual(['Durvane 310', 'Hulverd 1600 tanker', 'Meddrick M48']);
    const strip = sizes.filter(
      (row) => row.machine === 'Tillmere 88' && row.position === 'Slide strip, top rear' && row.date! >= '2025',
    );
    const worst = (date: string) =>
      Math.min(...strip.filter((row) => row.date === date).map((row) => Number(row.size_mm)));
    expect(worst('2025-05-27')).toBeGreaterThan(worst('2025-02-04'));
  });

  it('counts every meter upward between its events', () => {
    const last = new Map<string, number>();
    for (const row of rowsOf('hours.csv')) {
      const dial = Number(row.dial_hours);
      if (row.event === 'new-meter') last.set(row.machine!, Number(row.new_dial_hours));
      else {
        if (row.event !== 'rollover')
          expect(dial, `${row.machine} ${row.date}`).toBeGreaterThanOrEqual(last.get(row.machine!) ?? 0);
        last.set(row.machine!, dial);
      }
    }
  });
});

describe('what is expected of it', () => {
  it('is asked of machines and points that exist, in ranges that are ranges', () => {
    const expected = Papa.parse<Row>(readFileSync(join(HERE, 'expected.csv'), 'utf8'), {
      header: true,
      skipEmptyLines: true,
    }).data;
    const machines = new Set(rowsOf('machines.csv').map((row) => row.machine));
    const moved = rowsOf('moves.csv').map((row) => `${row.to_machine} / ${row.assembly}`);
    const points = new Set(rowsOf('points.csv').map(pointOf));
    expect(new Set(expected.map((row) => row.machine)).size).toBeGreaterThanOrEqual(12);
    for (const row of expected) {
      expect(machines).toContain(row.machine);
      const isMoved = moved.includes(`${row.machine} / ${row.assembly}`);
      if (row.assembly && !isMoved) expect(points).toContain(pointOf(row));
      const [from, to] = [Number(row.from), Number(row.to)];
      if (Number.isFinite(from) && row.to !== '') expect(from, `${row.machine} ${row.what}`).toBeLessThanOrEqual(to);
      expect(row.why, `${row.machine} ${row.what}`).not.toBe('');
    }
  });
});

describe('the truth it is drawn from', () => {
  it('wears at the rate of its class on average, with the scatter it states', () => {
    const strip = TRUE_CLASSES['Nylon slide strip']!;
    const worn = Array.from({ length: 400 }, (_, i) =>
      wearPath(random(7, `path ${i}`), strip, 1, 0).wearMmAt(strip.lifeHours),
    );
    const mean = worn.reduce((sum, mm) => sum + mm, 0) / worn.length;
    const sd = Math.sqrt(worn.reduce((sum, mm) => sum + (mm - mean) ** 2, 0) / (worn.length - 1));
    const stated = (strip.ratePer1000hMm * strip.lifeHours) / 1000;
    // 400 paths: the mean is good to 0.6 %, the scatter to 3.5 %; five of those
    expect(Math.abs(mean / stated - 1)).toBeLessThan(0.03);
    expect(Math.abs(sd / stated / strip.pathScatter - 1)).toBeLessThan(0.18);
  });

  it('passes a size at the hours it says', () => {
    const path = wearPath(random(3, 'one path'), TRUE_CLASSES['Greased pin']!, 1.1, 0.01);
    expect(path.wearMmAt(path.workedHoursAtWear(0.8))).toBeCloseTo(0.8, 9);
    expect(path.wearMmAt(4000)).toBeGreaterThan(path.wearMmAt(3900));
  });
});
