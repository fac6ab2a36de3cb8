import type { ShopFigure } from '#core/contract/shopFigures.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { decimalFigure } from '#core/words/quantityText.ts';
import { howKnownWords } from './howKnownWords.ts';

const NBSP = '\u00A0';
const WORK = 'One piece of work, once it is reached.';

/** What each figure is called, and what it does. */
const SAID: Readonly<Record<string, readonly [name: string, meaning: string]>> = {
  oversizeStepMm: ['Oversize pins go up by', 'The hole is bored to the next step that cleans up.'],
  oversizesAtMost: ['Oversizes before a bush', 'Opened so many times, a hole is bushed back.'],
  bushStepMm: ['Outsides of bushes go up by', 'The hole is bored to the next step that cleans up and leaves the wall.'],
  bushWallShareOfBore: ['Bush wall, share of its bore', 'Not under this share, nor under the least wall.'],
  bushWallLeastMm: ['Bush wall, least', 'Not under this, nor under the share of the bore.'],
  bossWallShareOfBore: ['Boss wall, share of the bore', 'What is left about a bored hole; not under this share.'],
  bossWallLeastMm: ['Boss wall, least', 'What is left about a bored hole; not under this.'],
  endLigamentShareOfBore: ['Hole to end, share of the bore', 'From the edge of the hole to the end it pulls against.'],
  cleanUpASideMm: ['Clean up, each side', 'Taken off beyond the worn outline, so that the cutter never runs in air.'],
  roomC: ['Room temperature', 'Heating and freezing start from here.'],
  turnedOffMm: ['Turned off, on the diameter', 'A part comes from the next bar that leaves this to turn.'],
  facedEachEndMm: ['Faced, each end', 'A piece is cut longer by this at both ends.'],
  sawKerfMm: ['Saw cut', 'Lost at each cut.'],
  sawTrimMm: ['First end squared off', 'Lost once a bar.'],
  barLengthMm: ['Bars are bought at', 'Length of a bought bar.'],
  keepFromMm: ['Ends kept from', 'A shorter end is waste.'],
  slidePlayMm: ['Play of a slide set on assembly', 'Top and bottom together.'],
  stripEvenWithinMm: ['Strip even within', 'More difference along a strip is a wedge: a shim under it rocks.'],
  overScrewHeadsMm: ['Plastic over screw heads', 'Less, and the strip is not shimmed.'],
  'hours:renew-strip': ['Renew a strip', WORK],
  'hours:shim-strip': ['Shim a strip', WORK],
  'hours:turn-strip': ['Turn a strip', WORK],
  'hours:set-up-line-bore': ['Set up to line-bore', 'Once for all holes on one line.'],
  'hours:bore-boss': ['Bore a boss', WORK],
  'hours:make-bush': ['Make a bush', WORK],
  'hours:press-bush': ['Press a bush in', WORK],
  'hours:weld-and-re-bore': ['Weld up and bore again', WORK],
  'hours:make-boss': ['Make a boss', WORK],
  'hours:fit-boss': ['Cut off, line up and weld a boss', WORK],
  'hours:make-pin': ['Make a pin', WORK],
  'hours:seized-pin-out': ['Get a seized pin out', WORK],
  'hours:straighten': ['Press a part straight', WORK],
  'hours:crack-check': ['Look for cracks', WORK],
  'hours:measure': ['Measure', 'Once a visit.'],
  'hours:paint-and-papers': ['Paint and papers', 'Once a visit.'],
};

export const shopFigureName = (name: string): string => SAID[name]?.[0] ?? name;
export const shopFigureMeaning = (name: string): string => SAID[name]?.[1] ?? '';

/** "common practice, no source", once; a source that says itself how it is known is not told twice. */
export const knownText = ({ howKnown, source }: Pick<ShopFigure, 'howKnown' | 'source'>): string =>
  source.includes('from memory') || source.includes('common practice')
    ? source
    : `${source}; ${howKnownWords[howKnown]}`;

const figureText = ({ value, unit }: ShopFigure, writing: Writing): string =>
  `${decimalFigure(value, Number.isInteger(value) ? 0 : 2, writing)}${NBSP}${unit}`;

/** Words of the sheet on which a shop sets what it goes by in its repairs. */
export const shopFigureWords = {
  title: 'Figures of repair',
  sub: 'What the repair sheet, the slide and the cut list go by. The program’s own stand beside, with how each is known.',
  key: 'Figures of repair',
  keyWhat: 'Oversizes, walls, saw and bars, rack, hours of work.',
  loading: 'Fetching the figures',
  groups: {
    bores: 'Oversizes and bushes',
    standing: 'What is left standing',
    bars: 'Saw and bars',
    slides: 'Slides',
    hours: 'Hours of work',
  },
  roundBars: 'Round bars to be had',
  roundBarsHint: 'Diameters in mm, parted by spaces.',
  roundBarsFault: 'Diameters over 0 up to 1000 mm, parted by spaces; at least one.',
  roundBarsUsual: 'Put back the usual ones',
  rack: 'On the rack',
  rackHint: 'Ends and whole bars; the cut list uses them before it buys.',
  rackNone: 'Nothing is noted as lying on the rack: every bar is bought whole.',
  bar: 'Sort',
  barHint: 'as the cut list names it: steel round 60',
  length: 'Length',
  count: 'How many',
  addBars: 'Add bars',
  takeOut: 'Take out',
  takeOutOf: (bar: string) => `Take out ${bar || 'this row'}`,
  rackFault: 'Each row needs a sort, a length over 0 and a whole count.',
  by: 'Who enters this',
  save: 'Save',
  saveKeys: 'Ctrl Enter',
  block: {
    changed: 'Set otherwise',
    rack: 'On the rack',
    state: 'This sheet',
    unsaved: 'Not saved yet',
    asSaved: 'As saved',
  },
  changedIs: (n: number) => (n === 0 ? 'nothing' : `${n} ${n === 1 ? 'figure' : 'figures'}`),
  rackIs: (n: number) => (n === 0 ? 'nothing noted' : `${n} ${n === 1 ? 'bar' : 'bars'}`),
  goesByHead: 'Gone by here',
  own: 'the shop’s own',
  /** "Oversize pins go up by 0.5 mm; ... (common practice, no source)". */
  goesBy: (figures: readonly ShopFigure[], writing: Writing): string => {
    const groups = Map.groupBy(figures, (one) => (one.value === one.usual ? knownText(one) : shopFigureWords.own));
    return [...groups]
      .map(
        ([known, ones]) =>
          `${ones.map((one) => `${lower(shopFigureName(one.name))} ${figureText(one, writing)}`).join(', ')} (${known})`,
      )
      .join('; ');
  },
} as const;

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
