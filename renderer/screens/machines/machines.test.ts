import { describe, expect, it } from 'vitest';
import type { Finding, MachineLine } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { basisLine, missingText, readText, stopText } from '#renderer/words/machinesWords.ts';
import { filterMachines, forThisWinter, listItems, machinesOf, stopOf, winterAfter } from './listItems.ts';
import { listLayout } from './listLayout.ts';
import { listRange } from './listRange.ts';
import { listTarget } from './useListKeys.ts';

type First = NonNullable<MachineLine['first']>;

const aFirst = (low: number, middle: number, high: number, its: Partial<First> = {}): First => ({
  pointId: 1,
  item: 4,
  position: 'Boom foot pin, left',
  point: '',
  hoursLeft: { low, middle, high },
  decides: 'middle',
  decidingHoursLeft: middle,
  dateMiddle: null,
  dateDeciding: null,
  ownReadings: 2,
  likeParts: 14,
  chancePastLimit: 0.1,
  pastLimitMm: null,
  ...its,
});

const aLine = (machineId: number, its: Partial<MachineLine> = {}): MachineLine => ({
  machineId,
  name: `Vessel ${machineId}`,
  makeModel: 'Harrod V118',
  serial: `V118-${machineId}`,
  customer: 'Hollin Top',
  place: 'Osmere',
  assemblies: ['Front loader'],
  hours: {
    machineHours: 4000,
    sdHours: 20,
    estimated: true,
    machineHoursRead: 3950,
    readOn: day('2026-10-12'),
    dialHours: 4000,
    dialMachine: null,
  },
  hoursPerYear: 700,
  winters: [
    { name: '26/27', fromHours: 0, toHours: 110 },
    { name: '27/28', fromHours: 700, toHours: 870 },
  ],
  planLineHours: 700,
  planWinter: '26/27',
  group: 'later',
  first: aFirst(900, 1500, 2400),
  others: [],
  openFindings: [],
  ...its,
});

const aFinding = (its: Partial<Finding> = {}): Finding => ({
  findingId: 1,
  machineId: 1,
  assemblyId: 1,
  positionId: 1,
  item: 11,
  position: 'Pivot boss, left',
  takenOn: day('2026-10-12'),
  kind: 'crack',
  severity: 'do-not-use',
  note: 'At weld toe, 34 mm',
  closedOn: null,
  outcome: null,
  declined: null,
  ...its,
});

describe('the list under its heads', () => {
  const machines = [
    aLine(1, { group: 'later' }),
    aLine(2, { group: 'do-not-use', openFindings: [aFinding()] }),
    aLine(3, { group: 'this-winter' }),
    aLine(4, { group: 'later' }),
    aLine(5, { group: 'may-be-passed' }),
    aLine(6, { group: 'no-forecast', first: null }),
  ];
  const items = listItems(machines);

  it('stands in the order of what is to be done, and within a head as given', () => {
    expect(items.map((item) => (item.kind === 'head' ? `${item.group} ${item.count}` : item.line.machineId))).toEqual([
      ...['do-not-use 1', 2, 'may-be-passed 1', 5, 'this-winter 1', 3, 'later 2', 1, 4, 'no-forecast 1', 6],
    ]);
  });

  it('counts rows for the arrow keys without the heads', () => {
    expect(items.flatMap((item) => (item.kind === 'machine' ? [item.at] : []))).toEqual([0, 1, 2, 3, 4, 5]);
    expect(machinesOf(items).map((line) => line.machineId)).toEqual([2, 5, 3, 1, 4, 6]);
  });

  it('counts for this winter what must not be used, may be past, or is due before the next', () => {
    expect(forThisWinter(machines)).toBe(3);
  });

  it('is empty without machines', () => {
    expect(listItems([])).toEqual([]);
  });

  it('names the winter after the one being planned, from any machine whose use is known', () => {
    expect(winterAfter([aLine(1, { winters: [] }), aLine(2)])).toBe('27/28');
    expect(winterAfter([aLine(1, { winters: [] })])).toBeNull();
  });

  it('lets the finding that forbids use take the place of the bar, not another one', () => {
    const watch = aFinding({ severity: 'watch' });
    expect(stopOf(aLine(1, { openFindings: [watch] }))).toBeNull();
    expect(stopOf(aLine(1, { openFindings: [watch, aFinding({ findingId: 2 })] }))?.findingId).toBe(2);
  });
});

describe('finding a machine', () => {
  const machines = [
    aLine(1, { name: 'Vessel 118', customer: 'Hollin Top' }),
    aLine(2, { name: 'Durvane 412', customer: 'Høgåsen', place: 'Ås', serial: 'DV-77' }),
  ];
  const found = (typed: string) => filterMachines(machines, typed).map((line) => line.machineId);

  it('goes by name, customer, place, serial and make, in any order and half typed', () => {
    expect(found('vess hol')).toEqual([1]);
    expect(found('dv-77')).toEqual([2]);
    expect(found('harrod')).toEqual([1, 2]);
    expect(found('osmere 118')).toEqual([1]);
  });
  it('does not ask for accents or capitals', () => {
    expect(found('AS durvane')).toEqual([2]);
  });
  it('finds nothing of a name nobody has, and everything when nothing is typed', () => {
    expect(found('zzz')).toEqual([]);
    expect(found('  ')).toEqual([1, 2]);
  });
});

describe('the one scale of the list', () => {
  it('shows every blue line, and most middles with room for their bars', () => {
    const machines = [300, 600, 900, 1200, 1500, 1800, 2100, 2400, 2700, 20_000].map((middle, i) =>
      aLine(i, { first: aFirst(middle / 2, middle, middle * 2), planLineHours: 200 + 100 * i }),
    );
    const { toHours } = listRange(machines);
    expect(toHours).toBeGreaterThan(1100);
    expect(toHours).toBeGreaterThan(2400);
    // one with far to go does not squeeze the others
    expect(toHours).toBeLessThan(5000);
    expect(toHours % 500).toBe(0);
  });
  it('leaves room for what has passed, but never more than a fifth of what is ahead', () => {
    const past = listRange([aLine(1, { first: aFirst(-5000, -2000, 100) }), aLine(2)]);
    expect(-past.fromHours / past.toHours).toBeCloseTo(0.2);
    const none = listRange([aLine(1)]);
    expect(-none.fromHours / none.toHours).toBeCloseTo(0.1);
  });
  it('stands without any forecast', () => {
    const { fromHours, toHours } = listRange([]);
    expect(toHours).toBeGreaterThan(0);
    expect(fromHours).toBeLessThan(0);
  });
  it('gives a wider window to the axis, and stands the words over it in a narrow one', () => {
    const range = listRange([aLine(1)]);
    const [plain, wide, narrow] = [1264, 1904, 640].map((widthPx) => listLayout(widthPx, range));
    const axisPx = (layout: typeof plain) => (layout ? layout.scale.toPx - layout.scale.fromPx : 0);
    expect(axisPx(plain)).toBeGreaterThan(380);
    expect(axisPx(wide)).toBeGreaterThan(axisPx(plain) + 300);
    expect(narrow?.kind).toBe('narrow');
    expect(axisPx(narrow)).toBeGreaterThan(500);
    // columns follow one another
    expect(plain?.scale.toPx).toBeLessThan(plain?.first.left ?? 0);
    expect(plain?.figures.high).toBeLessThan(plain?.likelyBy.left ?? 0);
  });
});

describe('moving along a list', () => {
  it('stops at either end', () => {
    expect(listTarget('ArrowUp', 0, 5, 3)).toBe(0);
    expect(listTarget('ArrowDown', 4, 5, 3)).toBe(4);
    expect(listTarget('PageDown', 1, 5, 3)).toBe(4);
    expect(listTarget('End', 0, 5, 3)).toBe(4);
  });
  it('leaves other keys alone', () => {
    expect(listTarget('x', 0, 5, 3)).toBeNull();
  });
});

describe('a machine in words', () => {
  it('says when it was read: the day within the year, else month and year', () => {
    const own = (readOn: string) => ({ readOn: day(readOn), dialMachine: null });
    expect(readText(own('2026-10-12'), '2026-11-02')).toBe('read 12 Oct');
    expect(readText(own('2024-10-12'), '2026-11-02')).toBe('read Oct 2024');
    expect(readText({ readOn: null, dialMachine: null }, '2026-11-02')).toBe('');
    const pulled = { readOn: day('2026-10-12'), dialMachine: { machineId: 2, name: 'Tarrow 90' } };
    expect(readText(pulled, '2026-11-02')).toBe('by Tarrow 90');
  });
  it('names what was seen beside what the forecast rests on', () => {
    const watch = aFinding({ severity: 'watch', kind: 'bent', note: 'slightly' });
    expect(basisLine(aLine(1))).toBe('2 own + 14');
    expect(basisLine(aLine(1, { openFindings: [watch] }))).toBe('2 own + 14 · bend, watch');
  });
  it('says the finding with its place and note', () => {
    expect(stopText(aFinding())).toBe('Pivot boss, left: crack, at weld toe, 34 mm');
    expect(stopText(aFinding({ note: 'Crack across the throat.', position: null }))).toBe('crack across the throat');
  });
  it('says what is missing for a forecast', () => {
    const noHours = { ...aLine(1).hours, machineHours: null };
    expect(missingText(aLine(1, { assemblies: [] }))).toBe('no assembly yet');
    expect(missingText(aLine(1, { hours: noHours }))).toBe('read the meter first');
    expect(missingText(aLine(1))).toBe('no limit set');
  });
});
