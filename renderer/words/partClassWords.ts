import type { PartClassSheet } from '#core/contract/partClass.ts';
import { counted } from './english.ts';

const count = (n: number, one: string, many: string): string => `${n} ${counted(n, one, many)}`;

/** Fewer scored sizes tell nothing of a share. */
const LEAST_TO_JUDGE = 20;

/** Words of the Part classes screen. */
export const partClassWords = {
  title: 'Part classes',
  sub: 'Parts that wear alike: the pool a forecast borrows from.',
  add: 'Add a class',
  emptyHead: 'No part classes yet',
  emptyNext: 'Take in a machine: its assembly names the classes its parts belong to.',
  takeIn: 'Take in a machine',
  class: 'Class',
  low: 'low',
  middle: 'middle',
  high: 'high',
  members: 'Seen here',
  state: 'Rests on',
  states: {
    'from-trade-prior': 'what the trade says',
    'from-wide-prior': 'a wide guess: nobody has said',
    learned: 'this shop’s own readings',
  } satisfies Record<PartClassSheet['state'], string>,
  seen: (parts: number, readings: number, machines: number) =>
    readings === 0
      ? parts === 0
        ? 'no parts'
        : `${count(parts, 'part', 'parts')}, none read`
      : `${count(parts, 'part', 'parts')}, ${count(readings, 'reading', 'readings')}, ${count(machines, 'machine', 'machines')}`,
  offCoverage: 'off its range',
  coverage: ({ sizes, inside, off }: NonNullable<PartClassSheet['coverage']>) =>
    `Of ${count(sizes, 'earlier size', 'earlier sizes')}, each forecast from what was known before it, ${inside} came out within the range that should hold 8 in 10${
      sizes < LEAST_TO_JUDGE ? ': too few to judge by.' : ` (${Math.round((100 * inside) / sizes)}\u00A0%).`
    }${off ? ' That is further off than chance goes: look at its gauges, its limits, and whether all these parts wear alike.' : ''}`,
  finished: (n: number) => `${count(n, 'worn-out part counts', 'worn-out parts count')} too.`,
  barNote: 'Thin line: before any reading here. Bar: with them. Open while all is borrowed.',
  sentence: (name: string, range: string, seen: string) => `${name}: ${range}; ${seen}`,
  noRate: 'rate not known',

  name: 'Name of the class',
  trade: 'What the trade says',
  tradeHint: 'all four figures, or none',
  wearFrom: 'Wear from',
  wearTo: 'to',
  hoursFrom: 'in hours from',
  hoursTo: 'to',
  source: 'Who says so',
  tolerance: 'Tolerance of a new part',
  toleranceHint: 'whole width: 12.0 ±0.1 is 0.2',
  save: 'Save class',
  saveKeys: 'Ctrl Enter',
  saved: 'Saved. Its forecasts have been worked out anew.',
  leave: 'Leave as it was',
  tradeHalf: 'Four figures, or none: wear from and to, hours from and to.',
  tradeOrder: 'The first figure of a pair is the smaller one.',
  nameMissing: 'A class has a name.',
  membersHead: 'Its members',
  noMembers: 'No parts belong to it yet.',
  machine: 'Machine',
  position: 'Position',
  own: 'own readings',
  block: {
    rests: 'Rests on',
    restsOn: (readings: number, parts: number) =>
      `${count(readings, 'reading', 'readings')} of ${count(parts, 'part', 'parts')}`,
    learned: 'Learned here',
    learnedOf: (n: number, of: number) => `${n} of ${of} classes`,
    bars: 'Bars',
    barsAre: 'low to high, 1 in 10 and 9 in 10',
  },
} as const;
