import type { RepairChoiceName, RepairFacts, RepairOptionShown, RepairSheet } from '#core/contract/repair.ts';
import type { Day } from '#core/units/day.ts';
import {
  basisText,
  dayText,
  decimalFigure,
  hoursText,
  lengthFigure,
  lengthText,
  lengthUnit,
  type Writing,
} from '#core/words/quantityText.ts';

const NBSP = '\u00A0';
type Span = { low: number; high: number };

export const mmText = (mm: number, writing: Writing, places = 2): string => lengthText(mm, places, writing);
const size = (mm: number, writing: Writing, places = 2): string => lengthFigure(mm, places, writing);
const span = ({ low, high }: Span, writing: Writing, places = 2): string =>
  low.toFixed(places) === high.toFixed(places)
    ? size(low, writing, places)
    : `${size(low, writing, places)} to ${size(high, writing, places)}`;
const tenths = (hours: number, writing: Writing): string => `${decimalFigure(hours, 1, writing)}${NBSP}h`;

const CHOICES: Readonly<Record<RepairChoiceName, string>> = {
  leave: 'Leave',
  'oversize-pin': 'Bore, oversize pin',
  bush: 'Bore and bush to standard',
  weld: 'Weld up, re-bore',
  'new-boss': 'Cut off, new boss',
  reject: 'Reject, new part',
};

const WAYS: Readonly<Record<NonNullable<RepairFacts['wornTowards']>, string>> = {
  front: 'FRONT',
  rear: 'REAR',
  left: 'left',
  right: 'right',
  up: 'up',
  down: 'down',
};

type Toward = readonly { way: keyof typeof WAYS; mm: number }[];
const toward = (ways: Toward, writing: Writing): string =>
  ways.map(({ way, mm }) => `${size(mm, writing)} to ${WAYS[way]}`).join(', ');

export const repairWords = {
  loading: 'Working out what can be done ...',
  tab: 'Repair',
  toMachine: 'Machine',
  toFits: 'Fits and press with these figures',
  choice: (choice: RepairChoiceName) => CHOICES[choice],
  way: (way: keyof typeof WAYS) => WAYS[way],
  title: ({ item, position }: RepairSheet) => `${item} ${position}`,
  sub: (sheet: RepairSheet, writing: Writing): string => {
    const { machine, customer, assembly, facts, slackNowMm, limits } = sheet;
    const slacks = [
      slackNowMm === null ? '' : `slack ${size(slackNowMm, writing)}`,
      limits.renewSlackMm === null ? '' : `renew at ${size(limits.renewSlackMm, writing)}`,
      limits.rejectSlackMm === null ? '' : `reject at ${size(limits.rejectSlackMm, writing)}`,
    ].filter(Boolean);
    const said = [
      [machine, customer, assembly].filter(Boolean).join(', '),
      facts.pinMm === null ? 'pin not measured' : `pin Ø${NBSP}${mmText(facts.pinMm, writing)}`,
      slacks.length === 0 ? '' : `${slacks.join(', ')}${NBSP}${lengthUnit(writing)}`,
    ];
    return said.filter(Boolean).join('; ');
  },
  missing: {
    head: 'Not measured enough to say',
    said: 'Fill in the boxes below: at least one diameter of the worn hole, the outside of the boss and its length.',
    standardMm: 'the size of pin and hole as drawn',
    newBoreMm: 'the size of the hole when new',
    axesMm: 'a diameter of the hole',
    bossOutsideMm: 'the outside of the boss',
    bossLengthMm: 'the length of the boss',
    list: (names: readonly string[]) => `Still missing: ${names.join(', ')}.`,
  },
  rows: {
    boreTo: (writing: Writing): string => `Bore to, ${lengthUnit(writing)}`,
    fit: (writing: Writing): string => `Fit, ${lengthUnit(writing)}`,
    slack: (writing: Writing): string => `Slack then, ${lengthUnit(writing)}`,
    wall: 'Wall left',
    drawn: 'Against drawing',
    hours: 'Hours here',
    added: 'Visit grows by',
    make: 'To make',
    lasts: 'Then lasts',
  },
  closed: 'Closed.',
  none: 'none',
  nothing: 'nothing',
  asFound: 'as found',
  asBought: 'as bought',
  notKnown: 'not known',
  bore: ({ bore }: RepairOptionShown, writing: Writing): string => {
    if (!bore) return '';
    const centre = bore.centre === 'old' ? 'old centre' : toward(bore.toward, writing);
    return `${size(bore.nominalMm, writing)} ${bore.toleranceClass}, ${centre}`;
  },
  boreLimits: ({ bore }: RepairOptionShown, writing: Writing): string =>
    bore ? `${size(bore.smallestMm, writing, 3)} to ${size(bore.largestMm, writing, 3)}` : '',
  fit: ({ bush, pin, fitOnPin }: RepairOptionShown, writing: Writing): string => {
    const pinSaid = pin ? `pin ${size(pin.nominalMm, writing)} ${pin.toleranceClass}` : 'pin as found';
    if (bush)
      return `${size(bush.outsideMm.nominalMm, writing)} ${bush.outsideMm.toleranceClass} bush, ${size(bush.insideAfterMm.nominalMm, writing)} ${bush.insideAfterMm.toleranceClass} once in; ${pinSaid}`;
    return fitOnPin ? `${pinSaid}, ${fitOnPin.feel}` : pinSaid;
  },
  slack: (slackMm: Span | null, writing: Writing): string => (slackMm ? span(slackMm, writing) : 'not known'),
  wall: ({ wall }: RepairOptionShown, writing: Writing): string => (wall ? lengthText(wall.leftMm, 1, writing) : 'new'),
  wallWanted: ({ wall }: RepairOptionShown, writing: Writing): string =>
    wall ? `${lengthText(wall.wantedMm, 1, writing)} wanted` : '',
  drawn: ({ comparison }: RepairOptionShown): string => {
    if (!comparison) return 'not compared';
    const worst = Math.max(...comparison.figures.map(({ ratio }) => ratio));
    return comparison.notWorse ? 'not worse' : `${Math.round((worst - 1) * 100)}${NBSP}% worse`;
  },
  hours: (hours: number, writing: Writing): string => tenths(hours, writing),
  make: ({ toMake, choice }: RepairOptionShown): string => {
    if (toMake.length === 0) return choice === 'reject' ? 'bought' : 'nothing';
    return toMake.map(({ kind, count }) => `${count} ${count === 1 ? kind : PLURALS[kind]}`).join(', ');
  },
  press: ({ bush }: RepairOptionShown, writing: Writing): string => {
    if (!bush) return '';
    const { pressForceN, boreAfter, shrink } = bush.pressed;
    const kn = (newton: number) => Math.round(newton / 1000);
    const sized = bush.sizedAfter ? 'bore to size once in' : 'comes out to size';
    const closes = boreAfter
      ? `closes in ${span(boreAfter.closesInMm, writing, 3)}${NBSP}${lengthUnit(writing)}; ${sized}`
      : sized;
    return `Press ${kn(pressForceN.low)} to ${kn(pressForceN.high)}${NBSP}kN, or heat the boss to ${Math.round(shrink.heatToC)}${NBSP}°C; ${closes}. Wall of the bush ${mmText(bush.wallMm, writing, 1)}.`;
  },
  chosenBy: ({ by, chosenOn }: { by: string; chosenOn: string }) =>
    `Chosen, ${by ? `${by}, ` : ''}${dayText(chosenOn as Day)}.`,
  choose: 'Choose',
  chooseThis: (choice: RepairChoiceName) => `Choose: ${CHOICES[choice].toLowerCase()}`,
  takeBack: 'Take the choice back',
  who: 'Who decides',
  fitterDecides: 'The fitter decides.',
  before: 'Before the work:',
  cautionsOf: (choice: RepairChoiceName) => `Before the work, ${CHOICES[choice].toLowerCase()}`,
  details: 'Details',
  lifeSaid: (choice: RepairChoiceName, sentence: string) => `${CHOICES[choice]}: ${sentence}`,
  drawing: (sheet: RepairSheet, writing: Writing): string => {
    const clean = sheet.cleanUp;
    if (!clean) return '';
    const best = clean.withinLimit ?? clean.onBestCentre;
    return [
      `Worn hole to scale: new ${mmText(sheet.facts.newBoreMm ?? 0, writing)}, ${mmText(clean.wearMm, writing)} gone at worst.`,
      `Cleans up at ${mmText(clean.onOldCentre.boreMm, writing)} on the old centre`,
      best ? `, at ${mmText(best.boreMm, writing)} moved ${toward(best.toward, writing) || 'nowhere'}.` : '.',
    ].join('');
  },
  cleansUp: (boreMm: number, writing: Writing) => `Ø${NBSP}${size(boreMm, writing)}`,
  cleansUpWord: 'cleans up',
  moved: (ways: Toward, writing: Writing): string => toward(ways, writing) || 'on the old centre',
  boss: (mm: number, writing: Writing) => `boss Ø${NBSP}${size(mm, writing, 1)}`,
  axis: (name: string, mm: number, writing: Writing) => `${name} ${size(mm, writing)}`,
  gone: (mm: number, writing: Writing) => size(mm, writing),
  sides: {
    across: ['FRONT', 'REAR'],
    upright: ['left', 'right'],
    lengthwise: ['left', 'right'],
  } satisfies Record<RepairFacts['run'], readonly [string, string]>,
  lookedAt: {
    across: 'From the left, front on the left hand.',
    upright: 'From above, front at the top.',
    lengthwise: 'From behind, looking forward.',
  } satisfies Record<RepairFacts['run'], string>,
  key: {
    newSize: (mm: number, writing: Writing) => `new size Ø${NBSP}${size(mm, writing)}`,
    worn: 'worn, as found',
    cleanUp: (aSideMm: number, writing: Writing) => `clean-up, ${mmText(aSideMm, writing)} a side`,
    gone: (mm: number, writing: Writing) => `metal gone, ${mmText(mm, writing)} at worst`,
  },
  centre: {
    yes: (against: string) => `The centre may move, by the ${against}.`,
    'no-shift-needed': () => 'Cleans up about the old centre.',
    'too-far': () => 'The best centre lies further than it may move; it is moved as far as it may.',
    'limit-not-said': () => 'How far the joint’s centre may move is not said: the old centre is kept.',
    'datum-not-named': () => 'What the direction was found from is not said: the old centre is kept.',
  } satisfies Record<NonNullable<NonNullable<RepairSheet['cleanUp']>['allowed']>, (against: string) => string>,
  bothCentres: (oldMm: number, bestMm: number, ways: Toward, writing: Writing): string =>
    `Old centre Ø${NBSP}${size(oldMm, writing)}; best centre Ø${NBSP}${size(bestMm, writing)}, ${toward(ways, writing) || 'not moved'}.`,
  oldOnly: (oldMm: number, writing: Writing) => `Old centre Ø${NBSP}${size(oldMm, writing)}.`,
  movesTiming: 'Moving the centre moves the joint: latch timing, gaps and rod lengths go with it.',
  block: {
    opened: 'Opened anyway by',
    openedBy: (count: number) => (count === 0 ? 'nothing else chosen' : `${count} chosen elsewhere, counted once`),
    fits: 'Fits',
    fitsBy: 'ISO 286, worked out',
    restsOn: 'Then-lasts rests on',
    rests: ({ ownReadings, likeParts }: RepairSheet['rests']) => basisText(ownReadings, likeParts),
  },
  cutList: {
    head: 'Cut list of the repairs chosen',
    whole: 'Of every machine',
    machine: 'Of this machine',
    none: 'No repair with a part to make is chosen yet.',
    bar: 'Bar',
    parts: 'Parts',
    cuts: 'Cuts',
    waste: 'Waste',
    onPaper: 'Cut list on paper',
    paper: 'Parts to make',
    part: ({ kind, name, count, sizes }: RepairOptionShown['toMake'][number], writing: Writing): string =>
      `${count} ${count === 1 ? kind : PLURALS[kind]}, ${name}: ${sizes
        .map(({ of, smallestMm, largestMm, finished }) =>
          [
            SIZES[of],
            span({ low: smallestMm, high: largestMm }, writing, of === 'length' ? 1 : 3),
            finished === 'before' ? '' : '(once in)',
          ]
            .filter(Boolean)
            .join(' '),
        )
        .join('; ')}`,
    cut: (
      bar: { barMm: number; piecesMm: readonly number[]; leftMm: number; keep: boolean },
      writing: Writing,
    ): string => {
      const left = `${decimalFigure(bar.leftMm, 0, writing)} left${bar.keep ? ', back on the rack' : ''}`;
      return `${decimalFigure(bar.barMm, 0, writing)}: ${bar.piecesMm.map((mm) => decimalFigure(mm, 0, writing)).join(' + ')}; ${left}`;
    },
    wasteSaid: (mm: number, proven: boolean, writing: Writing): string =>
      `${decimalFigure(mm, 0, writing)}${NBSP}mm${proven ? '' : ', may not be the least'}`,
  },
  joints: 'Joints of this machine',
  beyond: 'beyond reckoning',
  noForecast: 'no forecast',
  hoursAbout: (hours: number) => hoursText(Math.round(hours)),
} as const;

const SIZES: Readonly<Record<RepairOptionShown['toMake'][number]['sizes'][number]['of'], string>> = {
  outside: 'Ø',
  inside: 'bore',
  length: 'long',
  thickness: 'thick',
  width: 'wide',
};

const PLURALS: Readonly<Record<RepairOptionShown['toMake'][number]['kind'], string>> = {
  pin: 'pins',
  bush: 'bushes',
  boss: 'bosses',
  strip: 'strips',
};

/** The form of what the bench says. */
export const repairForm = {
  head: 'What the bench says',
  save: 'Keep and work out',
  kept: 'Kept in the record.',
  notKept: 'Taken from the readings on record; nothing is kept yet.',
  groups: { hole: 'Worn hole', boss: 'Boss', pin: 'Pin and other half', part: 'Part and shop' },
  standardMm: 'Standard size',
  newBoreMm: 'Hole when new',
  run: 'The hole runs',
  runs: { across: 'left to right', upright: 'up and down', lengthwise: 'front to rear' },
  use: 'Joint',
  uses: {
    'greased-pivot': 'greased pivot',
    'close-pivot': 'close pivot',
    'latch-pin': 'latch pin',
    'bush-in-boss': 'fixed bush',
    'fixed-pin': 'fixed pin',
  },
  gauge: 'Read with',
  gauges: { 'two-point': 'two-point', telescopic: 'telescopic', calliper: 'calliper', 'three-jaw': 'three-jaw' },
  axes: {
    across: ['Axis A, front to rear', 'Axis, rear-up', 'Axis B, up and down', 'Axis, front-up'],
    upright: ['Axis A, left to right', 'Axis, right-front', 'Axis B, front to rear', 'Axis, left-front'],
    lengthwise: ['Axis A, left to right', 'Axis, right-up', 'Axis B, up and down', 'Axis, left-up'],
  },
  wornTowards: 'Worn towards',
  notSaid: 'not said',
  datum: 'Side found by',
  datums: { 'unworn-lip': 'unworn lip', 'end-land': 'end land', 'tram-to-other-bore': 'tram to other bore' },
  mayMoveMm: 'Centre may move up to',
  aSideMm: 'Clean up, each side',
  boredWith: 'Bored on one bar with',
  boredWithHint: 'empty: not said',
  bossOutsideMm: 'Boss outside',
  bossLengthMm: 'Boss length',
  offMiddleMm: 'Hole off the middle',
  centreToEdgeMm: 'Hole to edge',
  round: 'empty: round boss',
  material: 'Steel',
  yieldMpa: 'Own yield of the steel',
  yieldHint: 'empty: the usual one, from memory',
  materials: {
    'structural-steel': 'structural',
    'quenched-steel': 'quenched',
    'cast-steel': 'cast steel',
    'cast-iron': 'cast iron',
    'tin-bronze': 'bronze',
  },
  split: 'Boss split or turned',
  weldsNear: 'Welds close by',
  plate: 'Plate it stands in',
  plates: { sound: 'thick, known', 'thin-or-unknown': 'thin or unknown', 'not-looked-at': 'not looked at' },
  pinMm: 'Pin, thinnest',
  pinLengthMm: 'Pin length',
  pinRenewed: 'New pin with it',
  otherHalf: 'Other half known',
  worn: 'What wore',
  wornHalves: { eye: 'eye in the middle', fork: 'fork outside' },
  thicknessMm: 'Other half, thickness',
  widthMm: 'Other half, width',
  endMm: 'Other half, hole to end',
  gapEachSideMm: 'Side gap, each',
  mustStayStandard: 'It interchanges: stays standard',
  oversizes: 'Opened before',
  oversizesTimes: ['never', 'once', 'twice or more'],
  partKind: 'Kind of part',
  partKinds: {
    other: 'no coupling part',
    hook: 'hook',
    ring: 'ring',
    ball: 'ball',
    piton: 'piton',
    'clevis-pin': 'clevis pin',
    chain: 'chain',
    drawbar: 'drawbar',
  },
  forged: 'Forged or heat-treated',
  nylonNear: 'Nylon near the heat',
  alignmentBar: 'Line-up bar there',
  pressKn: 'Force of the press, kN',
  procedure: 'Maker’s written procedure on file',
  procedureBy: 'Given by',
  procedureReference: 'Reference',
  yes: 'yes',
  no: 'no',
} as const;
