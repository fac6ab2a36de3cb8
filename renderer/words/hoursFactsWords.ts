import type { HoursSourceRow, MachineSheet, WorkShareRow } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { dayText, decimalFigure, hoursFigure, hoursText, type Writing } from '#core/words/quantityText.ts';

/** Words of what a machine's hours rest on: its meter, its share of work, the machine that pulls it. */
export const hoursFactsWords = {
  meter: 'Meter',
  digits: 'Digits on the dial',
  digitsHint: 'for when it rolls over',
  hoursBefore: 'Hours before its first reading’s dial',
  hoursBeforeHint: 'empty: the dial is the machine’s hours',
  clock: 'One hour on the dial is',
  clockHint: 'below 1: a clock that runs with the ignition',
  clockUnit: 'machine h',
  clockOf: (figure: string): string => `${figure} machine h`,
  notKnown: 'not known',
  dialIs: 'none: the dial is the machine’s hours',
  changeMeter: 'Change what is known of the meter',
  meterNote: 'Every figure this meter showed counts anew by it. What stood before stays in sight among the readings.',
  clockWhy: 'How that is known',
  clockWhyHint: 'kept with the figure',

  shares: 'What it does, and how much of its hours is work',
  sharesNote: 'Parts wear in worked hours; a forecast speaks machine hours at the present share.',
  noShares: 'Nobody has said: its assemblies are taken to work in all its hours.',
  addShare: 'From a day on, another share',
  workType: 'Work',
  workTypeHint: 'hard, light, or a kind of the shop’s own',
  share: 'Assemblies work in',
  shareHint: 'of its hours',
  shareOf: (share: number, writing: Writing): string => `${percentFigure(share, writing)} % of its hours`,

  sources: 'Where its hours come from',
  noSources: 'From its own meter and estimates.',
  addSource: 'From a day on, otherwise',
  sourceKind: 'Its hours come from',
  sourceKinds: { pulled: 'the machine that pulls it', yearly: 'hours a year', own: 'its own meter' },
  puller: 'Pulled by',
  pullerHint: 'a machine whose meter is read',
  pulledShare: 'Pulls it in',
  pulledShareHint: 'of its own hours',
  hoursPerYear: 'About',
  hoursPerYearUnit: 'h a year',
  errorShare: 'A year may be out by',
  errorHint: 'may stay empty: half of it',
  sourcesNote: 'A year’s hours may be out by as much as said in 19 years of 20.',
  pulls: (names: readonly string[]): string => `It pulls ${names.join(', ')}: their hours go by its meter.`,

  from: 'From',
  holds: 'Holds',
  holdsFrom: { day: 'from a day on', beginning: 'from the beginning' },
  beginning: 'the beginning',
  what: 'What',
  entered: 'Entered',
  by: 'By',
  why: 'Why',
  whyHint: 'a word for whoever looks later',
  notSaid: 'not said',
  putRightLabel: (from: string): string => `Put right what holds from ${from}`,
  putRight: 'Put right',
  add: 'Save',
  strike: 'It never held: strike it',
  percent: '%',
  struck: 'put right later',
  struckOut: 'struck: that never held',

  remarks: {
    share: 'a share from 1 to 100 % was expected',
    hoursPerYear: 'from 1 to 8 760 hours were expected',
    errorShare: 'from 0 to 400 % was expected',
    clock: 'from 0.1 to 10 was expected',
    digits: 'a whole number from 3 to 8 was expected',
    hours: 'hours, nought or more, were expected',
    puller: 'Which machine pulls it?',
    from: 'From which day?',
    why: 'How is that known?',
  },
} as const;

/** "80", "12.5". */
export const percentFigure = (share: number, writing: Writing): string => {
  const percent = 100 * share;
  return decimalFigure(percent, Math.abs(percent - Math.round(percent)) < 0.05 ? 0 : 1, writing);
};

export const fromText = (from: string | null): string =>
  from === null ? hoursFactsWords.beginning : dayText(day(from));

/** "silage, 80 % of its hours". */
export const shareText = ({ workType, share }: Pick<WorkShareRow, 'workType' | 'share'>, writing: Writing): string =>
  [workType, hoursFactsWords.shareOf(share, writing)].filter(Boolean).join(', ');

/** "Tarrow 90 pulls it, 30 % of its hours, ±50 % a year". */
export function sourceText(
  { kind, puller, share, hoursPerYear, errorShare }: HoursSourceRow,
  writing: Writing,
): string {
  // 2 sd, as errors are shown everywhere
  const within = `±${percentFigure(2 * errorShare, writing)} % a year`;
  if (kind === 'pulled')
    return `${puller?.name ?? ''} pulls it, ${percentFigure(share ?? 0, writing)} % of that one’s hours, ${within}`;
  if (kind === 'yearly') return `about ${hoursText(hoursPerYear ?? 0)} a year, ${within}`;
  return 'its own meter and estimates';
}

/** What is known of the meter, as facts. */
export function meterFacts({ meter }: Pick<MachineSheet, 'meter'>, writing: Writing): [string, string][] {
  const { digits, hoursBefore, hoursPerDialHour, clockReason } = meter;
  const places = Number.isInteger(hoursPerDialHour) ? 0 : 2;
  const clock = hoursFactsWords.clockOf(decimalFigure(hoursPerDialHour, places, writing));
  return [
    [hoursFactsWords.digits, digits === null ? hoursFactsWords.notKnown : String(digits)],
    [hoursFactsWords.hoursBefore, hoursBefore === null ? hoursFactsWords.dialIs : `${hoursFigure(hoursBefore)} h`],
    [hoursFactsWords.clock, clockReason === '' ? clock : `${clock}: ${clockReason}`],
  ];
}
