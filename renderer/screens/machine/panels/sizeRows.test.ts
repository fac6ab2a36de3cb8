import { describe, expect, it } from 'vitest';
import { day } from '#core/units/day.ts';
import { aPointSheet, aVisit } from '../aPointSheet.ts';
import { readBefore, sizeLines, stationColumns, struckAlone } from './sizeRows.ts';

const renewal = (takenOn: string, machineHours: number) => ({
  takenOn: day(takenOn),
  machineHours,
  fromMachineHours: machineHours,
  toMachineHours: machineHours,
  known: true,
  sizeMm: 40,
  kind: 'new-part' as const,
});
const putRight = (takenOn: string, sizeMm: number) => ({
  takenOn: day(takenOn),
  machineHours: 3000,
  sizeMm,
  putRightOn: day('2026-05-03'),
  newSizeMm: 39.6,
});

describe('the table of sizes', () => {
  it('runs from the newest visit down', () => {
    const point = aPointSheet(1, {
      visits: [aVisit('2022-01-02', 1000, { '': 39.9 }), aVisit('2026-01-02', 3800, { '': 39 })],
    });
    expect(sizeLines(point).map((line) => (line.kind === 'visit' ? line.visit.takenOn : 'renewal'))).toEqual([
      '2026-01-02',
      '2022-01-02',
    ]);
  });

  it('puts a renewal between what was found of the old part and what was left of the new one', () => {
    const point = aPointSheet(1, {
      visits: [
        aVisit('2026-01-02', 3800, { '': 38.8 }),
        aVisit('2026-01-02', 3800, { '': 40.02 }, { event: 'as-left' }),
      ],
      renewals: [renewal('2026-01-02', 3800)],
    });
    expect(sizeLines(point).map((line) => (line.kind === 'visit' ? line.visit.event : 'renewal'))).toEqual([
      'as-left',
      'renewal',
      'as-found',
    ]);
  });

  it('keeps a struck size in sight under its visit, once', () => {
    const point = aPointSheet(1, {
      visits: [
        aVisit('2026-01-02', 3800, { '': 38.8 }),
        aVisit('2026-01-02', 3800, { '': 40.02 }, { event: 'as-left' }),
      ],
      putRight: [putRight('2026-01-02', 36.8), putRight('2020-01-02', 12)],
    });
    const struck = sizeLines(point).flatMap((line) => (line.kind === 'visit' ? line.struck : []));
    expect(struck.map((old) => old.sizeMm)).toEqual([36.8]);
    // a visit of which nothing is left stands by itself
    expect(struckAlone(point).map((old) => old.sizeMm)).toEqual([12]);
  });

  it('has a column for each station laid out, and for any other that was read', () => {
    expect(stationColumns(aPointSheet(1, { stations: ['front', 'rear'] }))).toEqual(['front', 'rear']);
    const more = aPointSheet(1, {
      stations: ['front'],
      visits: [aVisit('2026-01-02', 3800, { middle: 39, front: 38 })],
    });
    expect(stationColumns(more)).toEqual(['front', 'middle']);
    expect(stationColumns(aPointSheet(1))).toEqual(['']);
  });

  it('tells what the same station read the time before, questioned sizes passed over', () => {
    const first = aVisit('2022-01-02', 1000, { A: 39.9, B: 39.8 });
    const second = aVisit('2024-01-02', 2400, { A: 39.5, B: 39.4 });
    const third = aVisit('2026-01-02', 3800, { A: 39.7 });
    const parked = { ...second, stations: second.stations.map((size) => ({ ...size, parked: size.station === 'A' })) };
    const point = aPointSheet(1, { visits: [first, parked, third] });
    expect(readBefore(point, third, 'A')).toBe(39.9);
    expect(readBefore(point, parked, 'B')).toBe(39.8);
    expect(readBefore(point, first, 'A')).toBeNull();
  });
});
