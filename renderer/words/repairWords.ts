import type { RepairChoiceName, RepairFacts, RepairOptionShown, RepairSheet } from '#core/contract/repair.ts';
import type { Day } from '#core/units/day.ts';
import {
  basisText,
  type DecimalMark,
  dayText,
  decimalFigure,
  hoursText,
  lengthFigure,
  lengthText,
  lengthUnit,
} from '#core/words/quantityText.ts';

const NBSP = '\u00A0';
type Span = { low: number; high: number };

export const mmText = (mm: number, mark: DecimalMark, places = 2): string => lengthText(mm, places, mark);
const size = (mm: number, mark: DecimalMark, places = 2): string => lengthFigure(mm, places, mark);
const span = ({ low, high }: Span, mark: DecimalMark, places = 2): string =>
  low.toFixed(places) === high.toFixed(places)
    ? size(low, mark, places)
    : `${size(low, mark, places)} to ${size(high, mark, places)}`;
const tenths = (hours: number, mark: DecimalMark): string => `${decimalFigure(hours, 1, mark)}${NBSP}h`;

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
const toward = (ways: Toward, mark: DecimalMark): string =>
  ways.map(({ way, mm }) => `${size(mm, mark)} to ${WAYS[way]}`).join(', ');

export const repairWords = {
  loading: 'Working out what can be done ...',
  tab: 'Repair',
  toMachine: 'Machine',
  toFits: 'Fits and press with these figures',
  choice: (choice: RepairChoiceName) => CHOICES[choice],
  way: (way: keyof typeof WAYS) => WAYS[way],
  title: ({ item, position }: RepairSheet) => `${item} ${position}`,
  sub: (sheet: RepairSheet, mark: DecimalMark): string => {
    const { machine, customer, assembly, facts, slackNowMm, limits } = sheet;
    const slacks = [
      slackNowMm === null ? '' : `slack ${size(slackNowMm, mark)}`,
      limits.renewSlackMm === null ? '' : `renew at ${size(limits.renewSlackMm, mark)}`,
      limits.rejectSlackMm === null ? '' : `reject at ${size(limits.rejectSlackMm, mark)}`,
    ].filter(Boolean);
    const said = [
      [machine, customer, assembly].filter(Boolean).join(', '),
      facts.pinMm === null ? 'pin not measured' : `pin Ø${NBSP}${mmText(facts.pinMm, mark)}`,
      slacks.length === 0 ? '' : `${slacks.join(', ')}${NBSP}${lengthUnit(mark)}`,
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
    boreTo: (mark: DecimalMark): string => `Bore to, ${lengthUnit(mark)}`,
    fit: (mark: DecimalMark): string => `Fit, ${lengthUnit(mark)}`,
    slack: (mark: DecimalMark): string => `Slack then, ${lengthUnit(mark)}`,
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
  bore: ({ bore }: RepairOptionShown, mark: DecimalMark): string => {
    if (!bore) return '';
    const centre = bore.centre === 'old' ? 'old centre' : toward(bore.toward, mark);
    return `${size(bore.nominalMm, mark)} ${bore.toleranceClass}, ${centre}`;
  },
  boreLimits: ({ bore }: RepairOptionShown, mark: DecimalMark): string =>
    bore ? `${size(bore.smallestMm, mark, 3)} to ${size(bore.largestMm, mark, 3)}` : '',
  fit: ({ bush, pin, fitOnPin }: RepairOptionShown, mark: DecimalMark): string => {
    const pinSaid = pin ? `pin ${size(pin.nominalMm, mark)} ${pin.toleranceClass}` : 'pin as found';
    if (bush)
      return `${size(bush.outsideMm.nominalMm, mark)} ${bush.outsideMm.toleranceClass} bush, ${size(bush.insideAfterMm.nominalMm, mark)} ${bush.insideAfterMm.toleranceClass} once in; ${pinSaid}`;
    return fitOnPin ? `${pinSaid}, ${fitOnPin.feel}` : pinSaid;
  },
  slack: (slackMm: Span | null, mark: DecimalMark): string => (slackMm ? span(slackMm, mark) : 'not known'),
  wall: ({ wall }: RepairOptionShown, mark: DecimalMark): string => (wall ? lengthText(wall.leftMm, 1, mark) : 'new'),
  wallWanted: ({ wall }: RepairOptionShown, mark: DecimalMark): string =>
    wall ? `${lengthFigure(wall.wantedMm, 1, mark)} wanted` : '',
  drawn: ({ comparison }: RepairOptionShown): string => {
    if (!comparison) return 'not compared';
    const worst = Math.max(...comparison.figures.map(({ ratio }) => ratio));
    return comparison.notWorse ? 'not worse' : `${Math.round((worst - 1) * 100)}${NBSP}% worse`;
  },
  hours: (hours: number, mark: DecimalMark): string => tenths(hours, mark),
  make: ({ toMake, choice }: RepairOptionShown): string => {
    if (toMake.length === 0) return choice === 'reject' ? 'bought' : 'nothing';
    return toMake.map(({ kind, count }) => `${count} ${count === 1 ? kind : PLURALS[kind]}`).join(', ');
  },
  press: ({ bush }: RepairOptionShown, mark: DecimalMark): string => {
    if (!bush) return '';
    const { pressForceN, boreAfter, shrink } = bush.pressed;
    const kn = (newton: number) => Math.round(newton / 1000);
    const sized = bush.sizedAfter ? 'bore to size once in' : 'comes out to size';
    const closes = boreAfter
      ? `closes in ${span(boreAfter.closesInMm, mark, 3)}${NBSP}${lengthUnit(mark)}; ${sized}`
      : sized;
    return `Press ${kn(pressForceN.low)} to ${kn(pressForceN.high)}${NBSP}kN, or heat the boss to ${Math.round(shrink.heatToC)}${NBSP}°C; ${closes}. Wall of the bush ${mmText(bush.wallMm, mark, 1)}.`;
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
  drawing: (sheet: RepairSheet, mark: DecimalMark): string => {
    const clean = sheet.cleanUp;
    if (!clean) return '';
    const best = clean.withinLimit ?? clean.onBestCentre;
    return [
      `Worn hole to scale: new ${mmText(sheet.facts.newBoreMm ?? 0, mark)}, ${mmText(clean.wearMm, mark)} gone at worst.`,
      `Cleans up at ${mmText(clean.onOldCentre.boreMm, mark)} on the old centre`,
      best ? `, at ${mmText(best.boreMm, mark)} moved ${toward(best.toward, mark) || 'nowhere'}.` : '.',
    ].join('');
  },
  cleansUp: (boreMm: number, mark: DecimalMark) => `Ø${NBSP}${size(boreMm, mark)}`,
  cleansUpWord: 'cleans up',
  moved: (ways: Toward, mark: DecimalMark): string => toward(ways, mark) || 'on the old centre',
  boss: (mm: number, mark: DecimalMark) => `boss Ø${NBSP}${size(mm, mark, 1)}`,
  axis: (name: string, mm: number, mark: DecimalMark) => `${name} ${size(mm, mark)}`,
  gone: (mm: number, mark: DecimalMark) => size(mm, mark),
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
    newSize: (mm: number, mark: DecimalMark) => `new size Ø${NBSP}${size(mm, mark)}`,
    worn: 'worn, as found',
    cleanUp: (aSideMm: number, mark: DecimalMark) => `clean-up, ${mmText(aSideMm, mark)} a side`,
    gone: (mm: number, mark: DecimalMark) => `metal gone, ${mmText(mm, mark)} at worst`,
  },
  centre: {
    yes: (against: string) => `The centre may move, by the ${against}.`,
    'no-shift-needed': () => 'Cleans up about the old centre.',
    'too-far': () => 'The best centre lies further than it may move; it is moved as far as it may.',
    'limit-not-said': () => 'How far the joint’s centre may move is not said: the old centre is kept.',
    'datum-not-named': () => 'What the direction was found from is not said: the old centre is kept.',
  } satisfies Record<NonNullable<NonNullable<RepairSheet['cleanUp']>['allowed']>, (against: string) => string>,
  bothCentres: (oldMm: number, bestMm: number, ways: Toward, mark: DecimalMark): string =>
    `Old centre Ø${NBSP}${size(oldMm, mark)}; best centre Ø${NBSP}${size(bestMm, mark)}, ${toward(ways, mark) || 'not moved'}.`,
  oldOnly: (oldMm: number, mark: DecimalMark) => `Old centre Ø${NBSP}${size(oldMm, mark)}.`,
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
    part: ({ kind, name, count, sizes }: RepairOptionShown['toMake'][number], mark: DecimalMark): string =>
      `${count} ${count === 1 ? kind : PLURALS[kind]}, ${name}: ${sizes
        .map(({ of, smallestMm, largestMm, finished }) =>
          [
            SIZES[of],
            span({ low: smallestMm, high: largestMm }, mark, of === 'length' ? 1 : 3),
            finished === 'before' ? '' : '(once in)',
          ]
            .filter(Boolean)
            .join(' '),
        )
        .join('; ')}`,
    cut: (
      bar: { barMm: number; piecesMm: readonly number[]; leftMm: number; keep: boolean },
      mark: DecimalMark,
    ): string => {
      const left = `${decimalFigure(bar.leftMm, 0, mark)} left${bar.keep ? ', back on the rack' : ''}`;
      return `${decimalFigure(bar.barMm, 0, mark)}: ${bar.piecesMm.map((mm) => decimalFigure(mm, 0, mark)).join(' + ')}; ${left}`;
    },
    wasteSaid: (mm: number, proven: boolean, mark: DecimalMark): string =>
      `${decimalFigure(mm, 0, mark)}${NBSP}mm${proven ? '' : ', may not be the least'}`,
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
  boredAlone: 'no other',
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
