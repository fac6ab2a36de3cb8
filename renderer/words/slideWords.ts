import type { StripChoiceName, StripPlaceName } from '#core/contract/slide.ts';
import { lengthText, type Writing } from '#core/words/quantityText.ts';

const mm = (value: number, writing: Writing): string => lengthText(value, 1, writing);

const CHOICES: Readonly<Record<StripChoiceName, string>> = {
  leave: 'leave',
  shim: 'shim',
  turn: 'turn end for end',
  renew: 'renew',
};
const DONE: Readonly<Record<StripChoiceName, string>> = {
  leave: 'left',
  shim: 'shimmed',
  turn: 'turned',
  renew: 'renewed',
};
const PLACES: Readonly<Record<StripPlaceName, string>> = {
  'top-front': 'top front',
  'top-rear': 'top rear',
  'bottom-front': 'bottom front',
  'bottom-rear': 'bottom rear',
};

type Play = { frontMm: number; rearMm: number; hookMm: number };

export const slideWords = {
  loading: 'Working out the play ...',
  tab: 'Slide',
  block: { lengths: 'Lengths of this slide', kept: 'kept in the record', notKept: 'none kept yet' },
  title: (assembly: string) => `${assembly}: slide`,
  sub: (machine: string, customer: string) => [machine, customer].filter(Boolean).join(', '),
  toMachine: 'Machine',
  onJob: (number: string) => `Put on job ${number}`,
  takeJobIn: 'Take in a job',
  choice: (choice: StripChoiceName) => CHOICES[choice],
  strips: 'Strips',
  place: (place: StripPlaceName) => PLACES[place],
  columns: {
    strip: 'Strip',
    front: 'Front',
    middle: 'Middle',
    rear: 'Rear',
    newSize: 'New',
    done: 'What is done',
    closed: 'Closed',
  },
  unit: 'mm',
  notMeasured: '-',
  closed: (choice: StripChoiceName, why: string) => `${CHOICES[choice]}: ${why}`,
  shim: (shimMm: number, writing: Writing) => `packing ${mm(shimMm, writing)}`,
  lengthsHead: 'What the readings do not say',
  spanMm: 'Front and rear strips, over all',
  overhangMm: 'From the rear strips to the hook',
  newPlayMm: 'Play set on assembly',
  channelFrontMm: 'Channel worn, front',
  channelRearMm: 'Channel worn, rear',
  headsBareAtMm: 'Screw heads bare at',
  endsAlike: 'Holes fit when turned',
  yes: 'yes',
  no: 'no',
  notSaid: 'not said',
  needLengths:
    'Enter the two lengths, in the position the hitch works in: the carrier is a lever, and play at its ends shows at the hook.',
  play: 'Play, up and down',
  rows: { frontMm: 'front of the carrier', rearMm: 'rear of the carrier', hookMm: 'at the hook' } satisfies Record<
    keyof Play,
    string
  >,
  before: 'Now',
  after: 'Then',
  gives: 'Gives back',
  mm,
  sentence: (
    done: readonly { place: StripPlaceName; choice: StripChoiceName }[],
    hookMm: number,
    writing: Writing,
  ): string => {
    const said = (['renew', 'turn', 'shim'] as const)
      .map((choice) => ({
        choice,
        places: done.filter((one) => one.choice === choice).map(({ place }) => PLACES[place]),
      }))
      .filter(({ places }) => places.length > 0)
      .map(({ choice, places }) => `${places.join(', ')} ${DONE[choice]}`);
    if (said.length === 0) return 'Nothing is done: the play stays.';
    const all = said.join('; ');
    return `${all.charAt(0).toUpperCase()}${all.slice(1)}: gives back ${mm(hookMm, writing)} at the hook.`;
  },
  endsWear: 'A tilted carrier bears on the outer ends; those wear more than the middle.',
  counted: (places: readonly StripPlaceName[]) =>
    `Not measured, counted as not worn: ${places.map((place) => PLACES[place]).join(', ')}.`,
  drawing: (play: { before: Play; after: Play } | null, writing: Writing): string =>
    play
      ? `Carrier as a lever, play enlarged: ${mm(play.before.hookMm, writing)} at the hook now, ${mm(play.after.hookMm, writing)} then.`
      : 'Carrier between its strips.',
  by: 'Who measured',
  keep: 'Keep these lengths',
  notKept: 'Nothing is kept of this slide yet.',
  kept: 'Kept in the record.',
  changed: 'Looked at with other figures than the record keeps.',
  front: 'FRONT',
  hook: 'hook',
} as const;
