import { day, isDay } from '#core/units/day.ts';
import {
  chanceText,
  type DecimalMark,
  dayText,
  decimalFigure,
  hoursFigure,
  hoursLeftSentence,
  limitFigure,
  monthYearText,
  wholeFigure,
} from '#core/words/quantityText.ts';
import { counted, shared } from './english.ts';
import { countWord } from './machineWords.ts';

/**
 * Words of "why this number": each step from readings to date as a sentence a fitter follows. Steps come as codes with
 * facts; figures get their units here.
 */
type Facts = Record<string, string | number | boolean | null>;
export type WhyStep = { code: string; facts: Facts };
type Sentence = (facts: Facts, mark: DecimalMark) => string;

const NBSP = '\u00A0';

export const whyWords = {
  head: (name: string): string => `Why this number: ${name}`,
  working: 'Looking up what it rests on',
  width: 'What makes the range this wide',
  widthNote: 'Each is the share that would go if it were known exactly; a guide, not a sum.',
  noWidth: 'No range to take apart: there is no limit, or it has been passed.',
  doubts: 'What to doubt',
} as const;

/** What each step is about. */
const stepHeads: Record<string, string> = {
  readings: 'Its own sizes',
  'change-seen': 'Last change',
  'change-too-small-to-see': 'Last change',
  'part-hours': 'Its hours',
  'class-before': 'The trade',
  'class-after': 'Like parts here',
  part: 'This part',
  limit: 'To its limit',
  'no-limit': 'To its limit',
  date: 'By when',
};

const number = (fact: Facts[string] | undefined): number | null => (typeof fact === 'number' ? fact : null);
const text = (fact: Facts[string] | undefined): string => (typeof fact === 'string' ? fact : '');

const mm = (fact: Facts[string] | undefined, mark: DecimalMark, places = 2): string =>
  typeof fact === 'number' ? `${decimalFigure(fact, places, mark)}${NBSP}mm` : shared.notKnown;
const hours = (fact: Facts[string] | undefined): string =>
  typeof fact === 'number' ? `${hoursFigure(fact)}${NBSP}h` : shared.notKnown;
/** U, as the shop writes a gauge's error: twice the standard deviation. */
const error = (fact: Facts[string] | undefined, mark: DecimalMark): string =>
  typeof fact === 'number' && fact > 0 ? ` ±${decimalFigure(2 * fact, 2 * fact < 0.01 ? 3 : 2, mark)}` : '';

/** "0.11 to 0.17 mm in 1 000 h, likely 0.14"; nothing where the rate is not known. */
function rates(facts: Facts, mark: DecimalMark): string {
  const [low, middle, high] = [facts.lowPer1000hMm, facts.middlePer1000hMm, facts.highPer1000hMm].map(number);
  if (low == null || middle == null || high == null) return shared.notKnown;
  const places = Math.max(low, middle, high) < 0.1 ? 3 : 2;
  const figure = (value: number) => decimalFigure(value, places, mark);
  return `${figure(low)} to ${figure(high)}${NBSP}mm in 1\u2009000${NBSP}h, likely ${figure(middle)}`;
}

const percent = (share: number): string => {
  const whole = Math.round(100 * share);
  return whole === 0 && share > 0 ? `less than 1${NBSP}%` : `${whole}${NBSP}%`;
};

const stepSentences: Record<string, Sentence> = {
  readings: (f, mark) => {
    const fitted = `It went in at ${mm(f.newSizeMm, mark)}${error(f.newSizeSdMm, mark)}`;
    const own = number(f.ownReadings) ?? 0;
    if (own === 0) return `${fitted} and has not been measured since.`;
    const on = typeof f.lastOn === 'string' && isDay(f.lastOn) ? ` on ${dayText(f.lastOn)}` : '';
    const count = own === 1 ? 'once' : own === 2 ? 'twice' : `${countWord(own)} times`;
    return `${fitted} and was measured ${count} since; last${on} it read ${mm(f.lastSizeMm, mark)}${error(f.lastErrorSdMm, mark)}.`;
  },
  'change-seen': (f, mark) =>
    `${changed(f, mark)}, more than the gauges’ error of ${mm(f.errorMm, mark)}: a rate can be read from it.`,
  'change-too-small-to-see': (f, mark) =>
    `${changed(f, mark)}, within the gauges’ error of ${mm(f.errorMm, mark)}: too small to see yet, so it says little.`,
  'part-hours': (f) => {
    const part = number(f.partHours);
    if (part === null) return 'Its hours are not known: no meter reading on record, or none since it was fitted.';
    const doubt = number(f.startSdHours);
    const start =
      doubt !== null && doubt >= 1 ? `, give or take ${hours(2 * doubt)}, since nobody noted when it was fitted` : '';
    const share = number(f.workShare);
    const worked =
      share !== null && share < 0.995 ? ` The assembly works ${percent(share)} of those: ${hours(f.workedHours)}.` : '';
    return `It has been in for ${hours(part)} of the machine’s ${hours(f.machineHours)}${start}.${worked}`;
  },
  'class-before': (f, mark) =>
    f.from === 'trade'
      ? `Before anything was measured here, the trade says of such parts (${text(f.partClass)}): ${rates(f, mark)}.`
      : `The trade has no figure for such parts (${text(f.partClass)}), so nearly anything is possible: ${rates(f, mark)}.`,
  'class-after': (f, mark) => {
    const parts = number(f.parts) ?? 0;
    const machines = number(f.machines) ?? 0;
    return parts === 0
      ? 'None has been measured in this shop yet, so that stands.'
      : `${wholeFigure(parts)} ${counted(parts, 'part', 'parts')} on ${wholeFigure(machines)} ${counted(machines, 'machine', 'machines')} measured in this shop make it ${rates(f, mark)}.`;
  },
  part: (f, mark) => {
    const own = number(f.ownShare) ?? 0;
    const worn = typeof f.wearNowMm === 'number' ? ` By now it has worn about ${mm(f.wearNowMm, mark)}.` : '';
    const whose =
      own < 0.005
        ? 'wholly borrowed from like parts and its machine'
        : `${percent(own)} of that from its own readings, the rest from like parts and its machine`;
    return `Taken together: ${rates(f, mark)}; ${whose}.${worn}`;
  },
  limit: (f, mark) => {
    const source = text(f.source) ? ` (${text(f.source)})` : '';
    const renewAt = typeof f.renewAtMm === 'number' ? limitFigure(f.renewAtMm, mark) : '';
    const limit = `Renew at ${renewAt}${NBSP}mm${source} allows ${mm(f.limitWearMm, mark)} of wear`;
    if (typeof f.pastLimitMm === 'number') return `${limit}; at its last size it was ${mm(f.pastLimitMm, mark)} past.`;
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

function changed(f: Facts, mark: DecimalMark): string {
  const change = number(f.changeMm) ?? 0;
  const way = change < 0 ? 'better' : 'more worn';
  return `The last two looks, ${hours(f.workedHours)} apart, differ by ${mm(Math.abs(change), mark)} (${way})`;
}

/** Head and sentence of a step; a code nobody has words for is still said, with what is known. */
export function whyStep({ code, facts }: WhyStep, mark: DecimalMark): { head: string; sentence: string } {
  const plain = code.replaceAll('-', ' ');
  const head = stepHeads[code] ?? plain.charAt(0).toUpperCase() + plain.slice(1);
  const sentence =
    stepSentences[code]?.(facts, mark) ??
    Object.values(facts)
      .filter((fact) => fact !== null)
      .join(', ');
  return { head, sentence };
}

const widthSources: Record<string, string> = {
  class: 'how such parts wear in general',
  'own-rate': 'how fast this one wears',
  path: 'ups and downs in its work ahead',
  gauge: 'gauge error of its sizes',
  visit: 'errors all sizes of a visit share',
  start: 'when it was fitted',
  drift: 'wear not going on as evenly',
  use: 'how much the machine works',
};

export const widthSource = (source: string): string => widthSources[source] ?? source.replaceAll('-', ' ');
export const shareText = percent;
