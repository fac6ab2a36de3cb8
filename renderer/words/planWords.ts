import type { PlanAccount, PlanChange, PlanSum, VisitLine } from '#core/contract/plan.ts';
import { type Day, day } from '#core/units/day.ts';
import {
  chanceText,
  dayOfYearText,
  dayText,
  decimalFigure,
  hoursText,
  MINUS,
  type Writing,
} from '#core/words/quantityText.ts';

const h = (hours: number, writing: Writing): string => `${decimalFigure(hours, 1, writing)}\u00A0h`;
const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** A difference with its sign. */
export const differenceText = (hours: number, writing: Writing): string =>
  `${hours < 0 ? MINUS : '+'}${h(Math.abs(hours), writing)}`;

/** Words of the Winter screen. */
export const planWords = {
  tab: 'Winter',
  title: (winter: string): string => `Winter ${winter}`,
  loading: 'Fetching the plan',
  sub: (visits: number, hours: number, ofHours: number, writing: Writing): string =>
    `${count(visits, 'visit', 'visits')}, ${decimalFigure(hours, 0, writing)} h of ${decimalFigure(ofHours, 0, writing)} h`,
  proposedOn: (on: Day, byHand: number): string =>
    `Proposed from the forecasts of ${dayText(on)}${byHand > 0 ? `, ${byHand} settled by hand` : ''}`,
  none: 'No winter planned yet',
  noneNext:
    'The program weighs strip-down, parts, life thrown away and the risk of a breakdown for every machine, and puts the visits into the weeks of the winter. Nobody is told anything by it.',
  noMachines: 'No machine on record yet',
  noMachinesNext: 'Take machines in and strip them down: the plan goes by what was measured.',
  takeIn: 'Take in a machine',
  nothingDue: 'No machine needs to come in this winter.',
  propose: 'Propose the winter',
  proposeAfresh: 'Propose afresh',
  planning: (step: string): string =>
    step === 'weeks'
      ? 'Looking for weeks'
      : step === 'writing'
        ? 'Keeping the plan'
        : 'Weighing each machine’s winters',
  breakOff: 'Stop',
  keys: {
    move: 'Move',
    agree: 'Agreed',
    pin: 'Hold',
    letGo: 'Let go',
    postpone: 'Leave out',
    split: 'Split',
    atFarm: 'At the farm',
    inShop: 'In the shop',
    done: 'Done',
    whatIf: 'What if',
    goesBy: 'What it goes by',
    leave: 'Leave it',
    close: 'Close',
    takeBack: 'Take it back',
    allTheSame: 'All the same',
    save: 'Save',
    try: 'Try it',
    add: 'Put a machine on',
  },
  weekFrom: 'Week from',
  benchHours: 'bench hours',
  shopHours: (hours: number, writing: Writing): string => `${decimalFigure(hours, 1, writing)} h, the shop`,
  over: (hours: number, writing: Writing): string => `${h(hours, writing)} over: move one`,
  shut: (note: string): string => (note ? `shut, ${note}` : 'shut'),
  continued: 'continued',
  weekLabel: (weekFrom: Day): string => `, hours of the week of ${dayText(weekFrom)}`,
  legend: {
    agreed: 'agreed with the customer',
    pinned: 'held by hand',
    proposed: 'proposed',
    waits: 'waits for parts',
    farm: 'way to farms, setting up there',
    stop: 'do not use: comes first',
    done: 'done',
    scale: 'width is hours; a row is a week',
  },
  /** said after the machine, its farm and its hours */
  visitLabel: (visit: VisitLine): string =>
    ` h, ${[
      visit.weeks[0] ? `week of ${dayText(day(visit.weeks[0].weekFrom))}` : 'no week',
      standsText(visit),
      visit.farm ? 'at the farm' : '',
      visit.doNotUse ? 'do not use' : '',
    ]
      .filter(Boolean)
      .join(', ')}`,
  detailWhen: (visit: VisitLine, writing: Writing): string =>
    `${visit.weeks[0] ? `Week of ${dayText(day(visit.weeks[0].weekFrom))}` : 'No week yet'}, ${h(visit.hours, writing)}, ${standsText(visit)}`,
  toMachine: 'To the machine',
  toJob: 'To its job',
  together: 'Together',
  apart: 'the same as separate visits',
  parts: 'Parts, in bench hours',
  risk: 'Left for the winter after it costs',
  visitItself: 'Papers, moving it about',
  opening: 'Opening and closing',
  bracket: 'Bracket: shared strip-down, counted once. Double ring: opened anyway, ends soon after.',
  promised: (on: Day): string => `promised for ${dayText(on)}`,
  atFarm: 'at the farm',
  farmCall: (hours: number, writing: Writing): string =>
    `At the farm: ${h(hours, writing)} for the way and setting up, once for all that is done there in its week.`,
  wayUnknown: 'Nobody has said how long the way takes: How to reach them, on Recall or the telephone screen.',
  farmHours: (hours: number, writing: Writing): string => `way ${decimalFigure(hours, 1, writing)}`,
  waits: 'Parts ordered today are not there by its week.',
  away: 'The customer is away that week.',
  notPlaced: 'Not placed',
  notPlacedSub: (n: number, hours: number, writing: Writing): string =>
    `${count(n, 'machine', 'machines')}, ${h(hours, writing)}`,
  riskOf: (hours: number, writing: Writing): string => `risks ${h(hours, writing)}`,
  postponed: 'Left out of this winter',
  outside: 'Held outside the weeks of this winter',
  outsideIn: (weekFrom: Day): string => `week of ${dayText(weekFrom)}`,
  later: 'Later winters',
  winters: {
    head: 'Winters planned',
    hours: 'h',
    thrown: 'life thrown away',
    breakdowns: 'breakdowns in season',
    of: (hours: number, ofHours: number, writing: Writing): string =>
      `${decimalFigure(hours, 0, writing)} of ${decimalFigure(ofHours, 0, writing)}`,
    expected: (n: number, writing: Writing): string => decimalFigure(n, 1, writing),
    note: 'Breakdowns are parts expected past their limit by the end of the season. All costs are bench hours.',
  },
  block: {
    asOf: 'As of',
    restsOn: 'Rests on',
    restsOnIs: (machines: number, readings: number): string =>
      `forecasts of ${count(machines, 'machine', 'machines')}, ${count(readings, 'own reading', 'own readings')}`,
    hours: 'Shop hours',
    hoursAre: (hours: number, from: Day, to: Day, writing: Writing): string =>
      `${decimalFigure(hours, Number.isInteger(hours) ? 0 : 1, writing)}\u00A0h a week; ${dayOfYearText(from)} to ${dayOfYearText(to)}`,
    search: 'Search',
    searched: (gap: number, writing: Writing): string =>
      gap <= 0
        ? 'no plan of weeks does less harm'
        : `within ${decimalFigure(100 * gap, 1, writing)} % of the least harm`,
    stopped: (gap: number, writing: Writing): string =>
      `stopped early, within ${decimalFigure(100 * gap, 1, writing)} % of the least harm`,
    without: (n: number): string =>
      n === 0 ? '' : `; ${count(n, 'machine', 'machines')} without hours or limits left out`,
  },
  moveTo: (machine: string): string => `${machine} moves to another week.`,
  moveHow: 'Up and down choose the week, Enter puts it there; or press on a week.',
  put: 'Put it there',
  noWeek: 'To no week',
  pieces: 'Over how many weeks',
  agree: {
    head: (machine: string): string => `${machine}: agreed with the customer.`,
    saidBy: 'Agreed with',
    promised: 'Promised ready by',
    promisedHint: 'empty: nothing promised',
    note: 'Note',
    write: 'Write it down',
  },
  postponeWhy: 'Why',
  splitHead: (machine: string): string => `${machine}: what goes into a visit of its own?`,
  splitDo: 'Split it',
  addHead: 'Put a machine on this winter’s plan by hand.',
  addMachine: 'Machine',
  weekForm: {
    head: (weekFrom: Day): string => `Week of ${dayText(weekFrom)}`,
    hours: 'Bench hours of this week',
    note: 'Why',
    usual: 'Usual hours again',
  },
  goesBy: {
    head: 'What the plan goes by',
    hoursElsewhere:
      'Hours a week and the days of the winter are set on the Shop sheet; a press on a week gives it other hours.',
    parts: 'Work and parts',
    partClass: 'Part class',
    own: 'Own work, h',
    partsHours: 'Parts, bench h',
    money: (currency: string): string => `Parts, ${currency}`,
    source: 'Source',
    ofShop: 'the shop’s own',
    noRate:
      'Parts are told in bench hours: what the hourly rate would buy. Enter the shop’s rates on a job to see them in money.',
    away: 'Customers away or too busy',
    noneAway: 'Nobody is.',
    customer: 'Customer',
    from: 'First day',
    to: 'Last day',
    why: 'Why',
    strike: 'Strike out',
    addAway: 'Write it down',
    settings: 'Costs and times',
  },
  whatIf: {
    head: 'What if',
    note: 'Tried on the record as it stands; nothing is saved.',
    hours: 'Bench hours a week',
    off: 'A fitter off: hours less a week',
    offFrom: 'from the week of',
    offWeeks: 'for how many weeks',
    times: 'Parts at so many times their price',
    ofClass: 'of the class',
    everyClass: 'every class',
    use: 'One machine’s use, times',
    ofMachine: 'which',
    nothing: 'Change one figure first.',
    as: 'as it is',
    tried: 'as tried',
    difference: 'difference',
    same: 'No visit changes its week.',
    rows: {
      visits: 'Visits this winter',
      hours: 'Bench hours, h',
      unplaced: 'Find no room',
      unplacedRisk: 'what those risk, h',
      overHours: 'Over the weeks’ hours, h',
      weeksLate: 'Weeks late',
      breakdowns: 'Breakdowns expected next season',
      breakdownCost: 'what those cost, h',
      partsHours: 'Parts, bench h',
      total: 'All costs of the winters planned, h',
    } satisfies Partial<Record<keyof PlanSum, string>>,
  },
} as const;

const STANDS: Readonly<Record<VisitLine['stands'], string>> = {
  proposed: 'proposed',
  pinned: 'held by hand',
  agreed: 'agreed',
  postponed: 'left out of this winter',
  done: 'done',
};

export const standsText = ({ stands, saidBy }: Pick<VisitLine, 'stands' | 'saidBy'>): string =>
  stands === 'agreed' && saidBy ? `agreed with ${saidBy}` : STANDS[stands];

/** What a change has cost, in one sentence. */
export function changeText(change: PlanChange, writing: Writing): string {
  const { benchHours, overHours, weeksLate, breakdownCost, total } = change;
  const told = [
    Math.abs(benchHours) >= 0.05 && `${differenceText(benchHours, writing)} of the weeks’ hours`,
    Math.abs(overHours) >= 0.05 && `${differenceText(overHours, writing)} over the weeks’ hours`,
    weeksLate !== 0 && `${weeksLate > 0 ? '' : MINUS}${count(Math.abs(weeksLate), 'week', 'weeks')} late`,
    Math.abs(breakdownCost) >= 0.05 && `${differenceText(breakdownCost, writing)} in risk of breakdowns`,
    Math.abs(total) >= 0.05 && `${differenceText(total, writing)} in all over the winters planned`,
  ].filter((one) => one !== false);
  return told.length === 0 ? 'That costs nothing more.' : `That changes the plan by ${told.join(', ')}.`;
}

type Place = VisitLine['positions'][number];

const aNamed = (names: readonly string[]): string =>
  names.length <= 2 ? names.join(' and ') : `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;

const placeName = (name: string): string =>
  /^[A-Z]{2}/.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1);

/**
 * Why a position is done in this visit: "good until 12 900 h, but opened anyway for the ram pin; doing it later costs 6.5 h more".
 */
export function becauseText(place: Place, writing: Writing): string {
  const { reason, goodUntilHours, openedWithItems, leavingItCosts, moreStripDownHours, chancePast } = place;
  const until = goodUntilHours === null ? null : `good until ${hoursText(goodUntilHours)}`;
  const later =
    leavingItCosts !== null && leavingItCosts >= 0.05
      ? `doing it later costs ${h(leavingItCosts, writing)} more`
      : null;
  const strip =
    moreStripDownHours !== null && moreStripDownHours >= 0.05
      ? `${h(moreStripDownHours, writing)} of it strip-down again`
      : null;
  const cost = later && strip ? `${later}, ${strip}` : later;
  const said = {
    'with-it': [
      [until, openedWithItems.length > 0 && `opened anyway for ${aNamed(openedWithItems.map(placeName))}`]
        .filter(Boolean)
        .join(', but '),
      cost,
    ],
    limit: [
      [until, chancePast !== null && `${chanceText(chancePast)} past its limit before the winter after`]
        .filter(Boolean)
        .join('; '),
      cost,
    ],
    finding: ['must not be used: an open finding'],
    job: ['on its job'],
    'by-hand': ['put in by hand'],
  }[reason];
  return said.filter(Boolean).join('; ');
}

export const changedText = ({ machine, from, to, what }: PlanAccount['changed'][number]): string => {
  const week = (on: string | null) => (on === null ? 'no week' : `the week of ${dayOfYearText(day(on))}`);
  switch (what) {
    case 'moved':
      return `${machine}: from ${week(from)} to ${week(to)}`;
    case 'added':
      return `${machine}: comes in, ${week(to)}`;
    case 'gone':
      return `${machine}: need not come in`;
    case 'no-room':
      return `${machine}: finds no room, was in ${week(from)}`;
  }
};

const SETTING_NAMES: Readonly<Record<string, string>> = {
  winters: 'Winters weighed together',
  breakdownHours: 'A breakdown in season',
  busyMonths: 'Busy months',
  visitHours: 'A visit itself',
  openHours: 'Opening, where nothing is said',
  leastGain: 'A visit worth ringing for',
  leadDays: 'Notice to the customer',
  partsLeadDays: 'Parts to come',
  overHours: 'Overtime the plan may use',
  farmSetUpHours: 'Setting up at a farm',
};
export const planSettingName = (name: string): string => SETTING_NAMES[name] ?? name;
