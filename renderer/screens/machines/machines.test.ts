import { describe, expect, it } from 'vitest';
import type { Finding, MachineLine } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { basisLine, missingText, readText, stopText } from '#renderer/words/machinesWords.ts';
import { listItems, machinesOf, stopOf } from './listItems.ts';
import { listLayout } from './listLayout.ts';
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
  const groups = [
    { group: 'do-not-use' as const, machineIds: [2] },
    { group: 'later' as const, machineIds: [1, 4] },
  ];

  it('stands group by group, and counts rows for the arrow keys without the heads', () => {
    expect(listItems(groups)).toEqual([
      { kind: 'head', group: 'do-not-use', count: 1 },
      { kind: 'machine', machineId: 2, at: 0 },
      { kind: 'head', group: 'later', count: 2 },
      { kind: 'machine', machineId: 1, at: 1 },
      { kind: 'machine', machineId: 4, at: 2 },
    ]);
    expect(machinesOf(groups)).toEqual([2, 1, 4]);
    expect(listItems([])).toEqual([]);
  });

  it('lets the finding that forbids use take the place of the bar, not another one', () => {
    const watch = aFinding({ severity: 'watch' });
    expect(stopOf(aLine(1, { openFindings: [watch] }))).toBeNull();
    expect(stopOf(aLine(1, { openFindings: [watch, aFinding({ findingId: 2 })] }))?.findingId).toBe(2);
  });
});

describe('the one scale of the list', () => {
  it('gives a wider window to the axis, and stands the words over it in a narrow one', () => {
    const range = { fromHours: -150, toHours: 1500 };
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
