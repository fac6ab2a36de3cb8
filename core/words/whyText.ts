import { day, isDay } from '../units/day.ts';
import { counted } from './english.ts';
import {
  chanceText,
  countWord,
  dayText,
  decimalFigure,
  gaugeErrorText,
  hoursFigure,
  hoursLeftSentence,
  lengthFigure,
  lengthText,
  limitText,
  monthYearText,
  rateUnit,
  type Writing,
  wholeFigure,
} from './quantityText.ts';
import { settingName } from './settingText.ts';

/**
 * Words of "why this number": each step from readings to date as a sentence a fitter follows. Steps come as codes with
 * facts; figures get their units here.
 */
type Facts = Record<string, string | number | boolean | null>;
export type WhyStep = { code: string; facts: Facts };
type Sentence = (facts: Facts, writing: Writing) => string;

const NBSP = '\u00A0';

const NOT_KNOWN = 'not known';

/** What each step is about. */
const stepHeads: Record<string, string> = {
  readings: 'Its own sizes',
  'change-seen': 'Last change',
  'change-too-small-to-see': 'Last change',
  'part-hours': 'Its hours',
  'class-before': 'The trade',
  'class-after': 'Like parts here',
  'class-coverage': 'How it did so far',
  'class-looks': 'When they were measured',
  'class-shape': 'As hours go on',
  machine: 'This machine',
  part: 'This part',
  joint: 'Pin and bore',
  limit: 'To its limit',
  'no-limit': 'To its limit',
  date: 'By when',
  settings: 'Shop’s own',
};

/** Fewer scored sizes tell nothing of a share. */
const LEAST_TO_JUDGE = 20;

/** Where the machine's hours come from, where no meter of its own tells them. */
function withoutMeter(f: Facts): string {
  const doubt = number(f.machineSdHours);
  const within = doubt !== null && doubt >= 1 ? `, give or take ${hours(2 * doubt)}` : '';
  const aYear = number(f.reckonedAYear);
  if (aYear !== null) return ` No meter tells those: they are reckoned at ${hours(aYear)} a year${within}.`;
  const share = number(f.pullerShare);
  if (share === null || f.puller === null) return '';
  return ` No meter of its own tells those: they are ${percent(share)} of the hours of ${text(f.puller)}, which pulls it${within}.`;
}

const number = (fact: Facts[string] | undefined): number | null => (typeof fact === 'number' ? fact : null);
const text = (fact: Facts[string] | undefined): string => (typeof fact === 'string' ? fact : '');

const mm = (fact: Facts[string] | undefined, writing: Writing, places = 2): string =>
  typeof fact === 'number' ? lengthText(fact, places, writing) : NOT_KNOWN;
const rate = (fact: Facts[string] | undefined, writing: Writing): string =>
  typeof fact === 'number' ? `${lengthFigure(fact, 2, writing)}${NBSP}${rateUnit(writing)}` : NOT_KNOWN;
const hours = (fact: Facts[string] | undefined): string =>
  typeof fact === 'number' ? `${hoursFigure(fact)}${NBSP}h` : NOT_KNOWN;
/** "1.30 ±0.06 mm": U, as the shop writes a gauge's error, is twice the standard deviation. */
const sizeGiveOrTake = (size: Facts[string] | undefined, sd: Facts[string] | undefined, writing: Writing): string =>
  typeof size === 'number' && typeof sd === 'number' && sd > 0
    ? `${lengthFigure(size, 2, writing)} ${gaugeErrorText(sd, writing)}`
    : mm(size, writing);

/** "0.11 to 0.17 mm in 1 000 h, likely 0.14"; nothing where the rate is not known. */
function rates(facts: Facts, writing: Writing): string {
  const [low, middle, high] = [facts.lowPer1000hMm, facts.middlePer1000hMm, facts.highPer1000hMm].map(number);
  if (low == null || middle == null || high == null) return NOT_KNOWN;
  const places = Math.max(low, middle, high) < 0.1 ? 3 : 2;
  const figure = (value: number) => lengthFigure(value, places, writing);
  return `${figure(low)} to ${figure(high)}${NBSP}${rateUnit(writing)}, likely ${figure(middle)}`;
}

const percent = (share: number): string => {
  const whole = Math.round(100 * share);
  return whole === 0 && share > 0 ? `less than 1${NBSP}%` : `${whole}${NBSP}%`;
};

const stepSentences: Record<string, Sentence> = {
  readings: (f, writing) => {
    const fitted = `It went in at ${sizeGiveOrTake(f.newSizeMm, f.newSizeSdMm, writing)}`;
    const own = number(f.ownReadings) ?? 0;
    if (own === 0) return `${fitted} and has not been measured since.`;
    const on = typeof f.lastOn === 'string' && isDay(f.lastOn) ? ` on ${dayText(f.lastOn)}` : '';
    const count = own === 1 ? 'once' : own === 2 ? 'twice' : `${countWord(own)} times`;
    return `${fitted} and was measured ${count} since; last${on} it read ${sizeGiveOrTake(f.lastSizeMm, f.lastErrorSdMm, writing)}.`;
  },
  'change-seen': (f, writing) =>
    `${changed(f, writing)}, more than the gauges’ error of ${mm(f.errorMm, writing)}: a rate can be read from it.`,
  'change-too-small-to-see': (f, writing) =>
    `${changed(f, writing)}, within the gauges’ error of ${mm(f.errorMm, writing)}: too small to see yet, so it says little.`,
  'part-hours': (f) => {
    const part = number(f.partHours);
    if (part === null) return 'Its hours are not known: no meter reading on record, or none since it was fitted.';
    const doubt = number(f.startSdHours);
    const start =
      doubt !== null && doubt >= 1 ? `, give or take ${hours(2 * doubt)}, since nobody noted when it was fitted` : '';
    const share = number(f.workShare);
    const worked =
      share !== null && share < 0.995 ? ` The assembly works ${percent(share)} of those: ${hours(f.workedHours)}.` : '';
    return `It has been in for ${hours(part)} of the machine’s ${hours(f.machineHours)}${start}.${withoutMeter(f)}${worked}`;
  },
  'class-before': (f, writing) =>
    f.from === 'trade'
      ? `Before anything was measured here, the trade says of such parts (${text(f.partClass)}): ${rates(f, writing)}.`
      : `The trade has no figure for such parts (${text(f.partClass)}), so nearly anything is possible: ${rates(f, writing)}.`,
  'class-after': (f, writing) => {
    const parts = number(f.parts) ?? 0;
    const machines = number(f.machines) ?? 0;
    return parts === 0
      ? 'None has been measured in this shop yet, so that stands.'
      : `${wholeFigure(parts)} ${counted(parts, 'part', 'parts')} on ${wholeFigure(machines)} ${counted(machines, 'machine', 'machines')} measured in this shop make it ${rates(f, writing)}.`;
  },
  'class-coverage': (f, writing) => {
    const [sizes, inside] = [number(f.sizes) ?? 0, number(f.inside) ?? 0];
    const told = `Of ${wholeFigure(sizes)} earlier ${counted(sizes, 'size', 'sizes')} of such parts, each forecast from what was known before it, ${wholeFigure(inside)} came out within the range that should hold 8 in 10`;
    const by = number(f.widenedBy) ?? 1;
    const widened =
      by > 1 ? ` Too few: the law of this part is made ${decimalFigure(by, 2, writing)} times as wide.` : '';
    return sizes < LEAST_TO_JUDGE ? `${told}: too few to judge by.` : `${told} (${percent(inside / sizes)}).${widened}`;
  },
  'class-looks': (f) =>
    `Of ${wholeFigure(number(f.parts) ?? 0)} such parts with sizes that could show how wear goes on, ${wholeFigure(number(f.whenWorn) ?? 0)} were measured once only: past ${percent(number(f.wornShare) ?? 0)} of the way to their limit, and renewed then. Those that wear fast are met young, those that wear slowly old, which looks as if wear slowed down: hours of a part half worn then come out late.`,
  'class-shape': (f, writing) => {
    const [low, middle, high] = [f.lowPower, f.middlePower, f.highPower].map(number);
    if (low == null || middle == null || high == null) return NOT_KNOWN;
    const figure = (power: number) => decimalFigure(power, 2, writing);
    const range = `(power of hours ${figure(low)} to ${figure(high)})`;
    if (high - low < 0.02 && Math.abs(middle - 1) < 0.02) return `Such parts wear evenly with hours ${range}.`;
    if (high < 1) return `Wear of such parts runs in: it slows as hours go on ${range}.`;
    if (low > 1) return `Wear of such parts quickens as hours go on ${range}.`;
    return `Taken as about even with hours; whether it runs in or quickens is not settled ${range}.`;
  },
  machine: (f, writing) => {
    const [low, middle, high] = [f.lowTimes, f.middleTimes, f.highTimes].map(number);
    if (low == null || middle == null || high == null) return NOT_KNOWN;
    const figure = (times: number) => decimalFigure(times, 2, writing);
    const heard = number(f.classesHeard) ?? 0;
    const from =
      heard === 0
        ? 'Nothing has been measured on it that would tell how hard it is on its parts'
        : `By what was measured on it (${countWord(heard)} part ${counted(heard, 'class', 'classes')})`;
    const word = text(f.workType)
      ? `The shop says it does ${text(f.workType)} work, from which ${figure(number(f.expectedTimes) ?? 1)} times the usual wear is expected. `
      : '';
    return `${word}${from}: parts here wear ${figure(low)} to ${figure(high)} times as fast as on the usual machine, likely ${figure(middle)}.`;
  },
  joint: (f, writing) => {
    const bore = typeof f.bores === 'number' && f.bores > 1 ? 'the bore that wears fastest' : 'the bore';
    const both = [f.pinRatePer1000hMm, f.boreRatePer1000hMm].every((rate) => typeof rate === 'number');
    const rates = both
      ? `: the pin loses ${rate(f.pinRatePer1000hMm, writing)}, ${bore} ${mm(f.boreRatePer1000hMm, writing)}`
      : '';
    return `Slack is worked out from the forecasts of pin and bore together${rates}. New, they leave ${mm(f.newSlackMm, writing)}. A slack measured by itself counts only where the two were not measured, so that nothing is heard twice.`;
  },
  part: (f, writing) => {
    const own = number(f.ownShare) ?? 0;
    const worn = typeof f.wearNowMm === 'number' ? ` By now it has worn about ${mm(f.wearNowMm, writing)}.` : '';
    const whose =
      own < 0.005
        ? 'wholly borrowed from like parts and its machine'
        : `${percent(own)} of that from its own readings, the rest from like parts and its machine`;
    return `Taken together: ${rates(f, writing)}; ${whose}.${worn}`;
  },
  limit: (f, writing) => {
    const source = text(f.source) ? ` (${text(f.source)})` : '';
    const renewAt = typeof f.renewAtMm === 'number' ? limitText(f.renewAtMm, writing) : '';
    const limit = `Renew at ${renewAt}${source} allows ${mm(f.limitWearMm, writing)} of wear`;
    if (typeof f.pastLimitMm === 'number')
      return `${limit}; at its last size it was ${mm(f.pastLimitMm, writing)} past.`;
    const left = {
      low: number(f.lowHoursLeft),
      middle: number(f.middleHoursLeft),
      high: number(f.highHoursLeft),
    };
    if (left.low === null && left.middle === null) return `${limit}. No hours are given while a finding forbids use.`;
    const chance =
      typeof f.chancePastLimit === 'number' && f.chancePastLimit >= 0.05
        ? ` The chance that it has been passed already: ${chanceText(f.chancePastLimit)}.`
        : '';
    const decides =
      f.decides === 'low' ? 'The low figure decides, since it tows or lifts.' : 'The middle figure decides.';
    return `${limit}: ${hoursLeftSentence(left, 'hours left')}. ${decides}${chance}`;
  },
  settings: (f) =>
    `The shop has set ${countWord(Object.keys(f).length)} of the forecast’s settings otherwise (the program’s own in brackets): ${Object.entries(
      f,
    )
      .map(([name, value]) => `${settingName(name).toLowerCase()} ${value}`)
      .join(', ')}.`,
  'no-limit': () => 'No renew-at size is set, so there is nothing to count hours to.',
  date: (f) => {
    const use = number(f.hoursPerYear);
    if (use === null) return 'How much the machine works in a year is not known, so no month is given.';
    const range =
      typeof f.lowHoursPerYear === 'number' && typeof f.highHoursPerYear === 'number'
        ? ` (${hoursFigure(f.lowHoursPerYear)} to ${hoursFigure(f.highHoursPerYear)})`
        : '';
    const own = number(f.ownUseShare);
    const whose =
      own === null
        ? ''
        : own >= 0.5
          ? ', mostly from its own meter readings'
          : ', mostly from the shop’s other machines';
    const [low, middle, high] = [f.lowDate, f.middleDate, f.highDate].map((fact) =>
      typeof fact === 'string' && isDay(fact) ? monthYearText(day(fact)) : null,
    );
    if (typeof f.lowDate === 'string' && f.lowDate === f.highDate && isDay(f.lowDate)) {
      return `It was past already when last looked at, ${dayText(f.lowDate)}.`;
    }
    const when = low
      ? `: ${low}${high ? ` to ${high}` : ' or later'}${middle ? `, likely ${middle}` : ''}.`
      : ': no month is given.';
    return `At ${hoursFigure(use)}${range} hours a year${whose}${when}`;
  },
};

function changed(f: Facts, writing: Writing): string {
  const change = number(f.changeMm) ?? 0;
  const way = change < 0 ? 'better' : 'more worn';
  return `The last two looks, ${hours(f.workedHours)} apart, differ by ${mm(Math.abs(change), writing)} (${way})`;
}

/** Head and sentence of a step; a code nobody has words for is still said, with what is known. */
export function whyStep({ code, facts }: WhyStep, writing: Writing): { head: string; sentence: string } {
  const plain = code.replaceAll('-', ' ');
  const head = stepHeads[code] ?? plain.charAt(0).toUpperCase() + plain.slice(1);
  const sentence =
    stepSentences[code]?.(facts, writing) ??
    Object.values(facts)
      .filter((fact) => fact !== null)
      .join(', ');
  return { head, sentence };
}

const widthSources: Record<string, string> = {
  gauge: 'gauge error of its own sizes',
  visit: 'errors all sizes of a visit share',
  start: 'when it was fitted',
  'own-rate': 'how far it departs from like parts',
  'pin-rate': 'how fast the pin wears',
  'bore-rate': 'how fast the bore wears',
  machine: 'how hard its machine is on parts',
  class: 'how fast such parts wear',
  curvature: 'whether such wear runs in or quickens',
  path: 'ups and downs in its work ahead',
  drift: 'wear going on otherwise than so far',
  use: 'how much the machine works in a year',
};

export const widthSource = (source: string): string => widthSources[source] ?? source.replaceAll('-', ' ');

/** A range that would be narrower by less than this share is as wide without the source as with it. */
const LEAST_NARROWER = 0.005;

export type WidthLine = { source: string; name: string; withoutHours: number; narrowerShare: number };

/** What each source brings to the range, the one that would narrow it most first; what changes nothing is left out. */
export const widthLines = (width: {
  hours: number;
  without: readonly { source: string; hours: number }[];
}): WidthLine[] =>
  width.without
    .map(({ source, hours: withoutHours }) => ({
      source,
      name: widthSource(source),
      withoutHours,
      narrowerShare: Math.max(0, 1 - withoutHours / width.hours),
    }))
    .filter(({ narrowerShare }) => narrowerShare >= LEAST_NARROWER)
    .sort((a, b) => b.narrowerShare - a.narrowerShare);

type Width = { hours: number; to: 'high' | 'middle'; days: number | null; daysWithoutUse: number | null };

/** "The range is 1 500 h wide, low to high." */
export const widthSentence = ({ hours: wide, to }: Width): string =>
  `The range is ${hours(wide)} wide, from low to ${to}. If one of these were known exactly, it would be:`;

/** What not knowing the machine's use adds to the months; nothing where it adds next to none. */
export function useSentence({ days, daysWithoutUse }: Width): string | null {
  if (days === null || daysWithoutUse === null || days <= 0 || daysWithoutUse > (1 - LEAST_NARROWER) * days)
    return null;
  return `The dates lie ${months(days)} apart; if it were known ${widthSource('use')}, ${months(daysWithoutUse)}.`;
}

const DAYS_A_MONTH = 365.25 / 12;

function months(days: number): string {
  const whole = Math.round(days / DAYS_A_MONTH);
  return whole < 1 ? 'less than a month' : `${wholeFigure(whole)} ${counted(whole, 'month', 'months')}`;
}
