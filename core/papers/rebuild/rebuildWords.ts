import type { Rebuild } from '../../contract/rebuild.ts';
import { decimalFigure, hoursText, THIN_GAP, type Writing } from '../../words/quantityText.ts';
import { whereaboutsText } from '../../words/whereabouts.ts';

/** Everything the papers of a job say. */
export const rebuildWords = {
  titles: {
    'job-card': 'Job card',
    'machining-list': 'Machining list',
    'cut-list': 'Parts to make',
    'close-out': 'Found, done, left',
  },
  job: 'Job',
  machine: 'Machine',
  customer: 'Customer',
  printed: 'Printed',
  page: (page: number, pages: number): string => `page ${page} of ${pages}`,
  doNotUse: 'DO NOT USE:',
  machineLine: ({ machine, customer }: Rebuild): string => [machine, customer].filter(Boolean).join(', '),
  plateLine: (rebuild: Rebuild): string =>
    [
      rebuild.makeModel === rebuild.machine ? '' : rebuild.makeModel,
      rebuild.serial && `serial ${rebuild.serial}`,
      rebuild.dialHours !== null && `meter at intake ${hoursText(rebuild.dialHours)}`,
      `taken in ${rebuild.takenInOn}`,
      rebuild.wantedBy && `wanted by ${rebuild.wantedBy}`,
      whereaboutsText(rebuild) && `stands ${whereaboutsText(rebuild)}`,
      rebuild.comebackOf && `comes back from ${rebuild.comebackOf.number}`,
    ]
      .filter(Boolean)
      .join(', '),
  complaint: 'Complaint',
  takeOffs: 'What comes off, in order; each once',
  works: 'Work agreed',
  nothingOff: 'Nothing is noted that must come off first.',
  nothingAgreed: 'No work is agreed yet.',
  declined: 'Declined by the customer, in his own words',
  parts: 'Parts made or bought',
  inMm: 'Sizes are in mm.',
  noParts: 'No parts are agreed on this job.',
  nothingChosen: 'No repair with a part to make is chosen yet.',
  cautions: 'Cautions',
  sides: 'Left and right as seen from the driver’s seat, looking forward. Sizes are in mm.',
  cuts: 'One line a cut',
  noCuts: 'No cuts are agreed on this job.',
  checks: 'Before it leaves',
  asBored: (size: string): string => `bored ${size}`,
  nothingFound: 'No strip-down is on record between intake and hand-over.',
  noWork: 'no work agreed here',
  foundSize: (station: string, size: string, parked: boolean): string =>
    [station, size, parked ? '(in question)' : ''].filter(Boolean).join(' '),
  foundSizes: (point: string, sizes: readonly string[]): string => `${point}: ${sizes.join(', ')}`,
  heads: {
    item: 'Item',
    position: 'Position',
    work: 'What is done',
    hours: 'h',
    done: 'Done',
    takeOff: 'Take off',
    part: 'Part',
    material: 'Material',
    count: 'No.',
    sizes: 'Finished sizes, mm',
    stock: 'Cut from, mm',
    from: 'Made or bought',
    cut: 'Cut',
    centre: 'Centre and datum',
    limits: 'Limits, mm',
    bored: 'As bored, mm',
    words: 'His words',
    check: 'Check',
    answer: 'Answer',
    by: 'By',
    found: 'Found, mm',
    left: 'Left, mm',
    bar: 'Bar, mm',
    cutsOff: 'Cut off, mm',
    leftOver: 'Left over, mm',
  },
  partHead: (item: string, count: number, part: string): string =>
    `${item === '' ? '' : `Item ${item}: `}${count}${THIN_GAP}×${THIN_GAP}${part}`,
  keepEnd: ', back on the rack',
  notProven: 'Another way to cut might use less bar: this one is not proven the least.',
  everyMachine: 'every machine with repairs chosen',
  made: 'make',
  bought: (leadDays: number | null): string => (leadDays === null ? 'buy' : `buy, ${leadDays} days`),
  kinds: { pin: 'Pin', bush: 'Bush', strip: 'Strip', boss: 'Boss', other: '' },
  answers: { done: 'done', 'does-not-apply': 'does not apply' } as Readonly<Record<string, string>>,
  hows: { 'in-person': 'in person', 'by-telephone': 'by telephone', 'in-writing': 'in writing' } as Readonly<
    Record<string, string>
  >,
} as const;

const mm = (sizeMm: number, writing: Writing): string => decimalFigure(sizeMm, 2, writing);

export const sizeMmText = (sizeMm: number, writing: Writing): string => decimalFigure(sizeMm, 3, writing);

export const limitsMmText = (lowerMm: number, upperMm: number, writing: Writing): string =>
  `${decimalFigure(lowerMm, 3, writing)} to ${decimalFigure(upperMm, 3, writing)}`;

type Make = Rebuild['lines'][number]['makes'][number];

/** "Pin, Boom foot pin, left". */
export const partName = ({ kind, what }: Make): string => [rebuildWords.kinds[kind], what].filter(Boolean).join(', ');

/** "Ø50.00 / Ø40.00 × 60.00, size after pressing". */
export function makeSizesText(make: Make, writing: Writing): string {
  const round = make.kind === 'pin' || make.kind === 'bush' || make.kind === 'boss' ? 'Ø' : '';
  const across = [make.outsideMm, make.insideMm]
    .filter((size) => size !== null)
    .map((size) => `${round}${mm(size, writing)}`);
  const along = [make.widthMm, make.lengthMm].filter((size) => size !== null).map((size) => mm(size, writing));
  const sizes = [across.join(' / '), ...along].filter(Boolean).join(`${THIN_GAP}×${THIN_GAP}`);
  return [sizes, make.limits].filter(Boolean).join(', ');
}

export const hoursFigure1 = (hours: number, writing: Writing): string => decimalFigure(hours, 1, writing);
