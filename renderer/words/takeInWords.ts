import { type DecimalMark, limitFigure } from '#core/words/quantityText.ts';

type Facts = Record<string, string | number> | undefined;

/** Words of the Take in screen, and of the assembly table it shares with Shop. */
export const takeInWords = {
  title: 'Take in a machine',
  sub: 'Customer, machine, meter and assembly; what is not known stays empty.',
  asLeft: 'As you left it.',
  afresh: 'Start afresh',
  save: 'Take in',
  saveKeys: 'Ctrl Enter',
  addTitle: (machine: string) => `Lay out an assembly on ${machine}`,
  addTitleBare: 'Lay out an assembly',
  addSave: 'Lay out',
  from: 'On it since',
  fromHint: 'may stay empty: as long as the record goes back',

  customer: 'Customer',
  customerName: 'Name',
  customerHint: 'part of a name finds it; a new name makes a new customer',
  known: 'already on record',
  isNew: 'new customer',
  place: 'Farm or place',
  address: 'Address',
  phone: 'Telephone',
  email: 'E-mail',

  machine: 'Machine',
  machineName: 'Called',
  machineNameHint: 'as the shop says it',
  make: 'Make',
  model: 'Model',
  serial: 'Serial number',
  builtYear: 'Built',
  note: 'Note',
  workShare: 'Assemblies work',
  workShareUnit: '% of its hours',

  meter: 'Meter',
  meterKind: 'Hour meter',
  meterKinds: { meter: 'has one', none: 'has none' },
  digits: 'Digits on the dial',
  digitsHint: 'for when it rolls over',
  hoursBefore: 'Hours before this meter',
  hoursBeforeHint: 'empty: the dial is the machine’s hours',
  dial: 'Dial shows',
  machineHours: 'Hours, about',
  dialHint: 'empty: not read yet',
  dialKind: 'The figure is',
  dialKinds: { read: 'read off', estimate: 'an estimate' },
  day: 'Day',
  saidBy: 'Who said so',

  assembly: 'Assembly',
  chooseKind:
    'Which assembly does it carry? Its positions, sizes and limits are laid out, and all of them can be changed.',
  anotherKind: 'Another assembly',
  byHand: 'Lay out by hand',
  noKinds: 'No assembly kinds set up under Shop yet.',
  assemblyName: 'Called',
  assemblySerial: 'Serial number',
  fitted: 'Its parts are',
  fittedKinds: { 'as-built': 'as built', 'at-hours': 'fitted at', 'not-known': 'of unknown age' },
  fittedHours: 'Machine hours',
  dropAssembly: 'Take it out',
  sketchOf: (kind: string) => `${kind}, with its positions numbered`,

  tableOf: (assembly: string) => `Positions and measuring points of ${assembly}`,
  columns: {
    in: 'in',
    item: 'no.',
    position: 'Position',
    group: 'goes with',
    safety: 'tows or lifts',
    point: 'Point',
    measures: 'Measures',
    wears: 'wears',
    partClass: 'Part class',
    newSize: 'new',
    newSizeTol: 'tol.',
    renewAt: 'renew at',
    rejectAt: 'reject at',
    source: 'Limits from',
    gauge: 'gauge ±',
    stations: 'Stations',
  },
  mm: 'mm',
  wears: { down: 'down', up: 'up' },
  leaveIn: (position: string) => `${position}: lay it out`,
  cell: (column: string, row: string) => `${column}, ${row}`,
  addPosition: 'Another position',
  addPoint: 'Another point here',
  dropPoint: 'Take out',
  foot: 'Enter or an arrow goes to the next row. A position ticked off stays out; its figures are not lost.',
  limitsNote: 'Limits without a source are the shop’s own word. Empty: no hours are counted to it.',

  remarksHead: (n: number) => (n === 1 ? 'One thing stands in the way.' : `${n} things stand in the way.`),
  remarksSafe: 'Nothing was taken in, and nothing typed is lost.',
  toFirst: 'Go to the first',
  counts: (positions: number, points: number) => `${positions} positions, ${points} measuring points`,
  block: {
    where: 'Kept in',
    layout: 'Laid out',
    nothing: 'nothing yet',
    limits: 'Limits',
    withSource: (n: number, of: number) => `${n} of ${of} with a source`,
    next: 'Then',
    thenWhat: 'the machine’s page, with what like parts do',
  },
} as const;

const bounds = (facts: Facts): string => `${facts?.from} to ${facts?.to}`;

/** What keeps a field from being taken in: what was expected of it. */
export const takeInRemarks: Record<string, (facts: Facts, mark: DecimalMark) => string> = {
  missing: () => 'Needed',
  'not-a-number': () => 'A figure was expected',
  'two-decimal-marks': () => 'Two marks in one figure: write it with one',
  'thousands-mark': () => 'Thousands or decimals? Write 4120 or 4.12',
  'out-of-bounds': (facts) => `${bounds(facts)} was expected`,
  'not-a-day': () => 'A day was expected, such as 12 Oct 2026',
  refused: (facts) => `${facts?.expected}`,
  twice: (facts) => `Number ${facts?.item} stands at two positions`,
  'wrong-side': (facts, mark) =>
    `It wears ${facts?.wears} from ${limitFigure(Number(facts?.newSizeMm), mark)}: a limit lies ${facts?.wears === 'down' ? 'below' : 'above'} that`,
  'limits-crossed': (facts, mark) => `Reject comes after renew at ${limitFigure(Number(facts?.renewAtMm), mark)}`,
  'no-position': () => 'Every position is ticked off: leave one in, or take the assembly out',
};

export const remarkText = (why: string, facts: Facts, mark: DecimalMark): string =>
  takeInRemarks[why]?.(facts, mark) ?? why.replaceAll('-', ' ');
