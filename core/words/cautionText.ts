import { isDay } from '../units/day.ts';
import { counted } from './english.ts';
import { dayText, decimalFigure, hoursText, lengthText, limitText, type Writing } from './quantityText.ts';

type Facts = Record<string, string | number | boolean | null>;
type Sentence = (facts: Facts, writing: Writing) => string;

const hours = (fact: Facts[string] | undefined): string => (typeof fact === 'number' ? hoursText(fact) : '');
const mm = (fact: Facts[string] | undefined, writing: Writing): string =>
  typeof fact === 'number' ? lengthText(fact, 2, writing) : '';
const size = (fact: Facts[string] | undefined, writing: Writing): string =>
  typeof fact === 'number' ? limitText(fact, writing) : '';
const on = (fact: Facts[string] | undefined): string =>
  typeof fact === 'string' && isDay(fact) ? ` on ${dayText(fact)}` : '';

/** Every caution that can travel with a forecast, and what is said of it. The key is the code. */
export const cautionSentences: Record<string, Sentence> = {
  'no-limit': () => 'No renew-at size is set, so there is nothing to count hours to.',
  'no-hours': () => 'No machine hours on record yet.',
  'hours-beyond': () => 'Its far end lies further off than can be reckoned.',
  'date-beyond': () => 'Its far end lies too many years off for a date.',
  'do-not-use': () => 'Do not use: no forecast while this finding is open.',
  'machine-has-do-not-use': () => 'Another part of this machine must not be used.',
  'on-the-shelf': () => 'Sits on the shelf, on no machine: its hours stand still.',
  'past-reject': (f, writing) => `Past reject at ${size(f.rejectAtMm, writing)} when last measured.`,
  'from-trade-prior': (f) => {
    const parts = typeof f.partsRead === 'number' ? f.partsRead : 0;
    const base = f.from === 'wide' ? 'a wide guess, for the trade has no figure' : 'what the trade says';
    return parts === 0
      ? `Rests on ${base}: no like part has been measured here.`
      : `Rests mostly on ${base}: only ${parts} like ${counted(parts, 'part', 'parts')} measured here.`;
  },
  'class-off-coverage': (f, writing) =>
    `Forecasts of such parts have been ${f.tooNarrow ? 'too sure of themselves' : 'wider than they need be'}: ${typeof f.share === 'number' ? Math.round(100 * f.share) : ''}\u00A0% of ${f.count ?? ''} earlier sizes came out within the range that should hold 80\u00A0%.${typeof f.widenedBy === 'number' && f.widenedBy > 1 ? ` Ranges here are therefore made ${decimalFigure(f.widenedBy, 2, writing)} times as wide.` : ''}`,
  'measured-when-worn': (f) =>
    `Its hours are likely late: of ${f.parts ?? ''} such parts that could show how wear goes on, ${f.whenWorn === f.parts ? 'all' : (f.whenWorn ?? '')} were measured once only, already worn, when they were renewed. Go by the low figure, and measure some on the way.`,
  'long-extrapolation': (f) =>
    `Reaches far beyond what was measured${typeof f.lastWorkedHours === 'number' ? `, ${hours(f.lastWorkedHours)}` : ''}: most of the doubt is how wear goes on from there. Look at it again before then.`,
  'too-small-to-see': (f, writing) =>
    `Its wear so far, ${mm(f.wearMm, writing)}, is within the error of gauge and new size, ${mm(f.errorMm, writing)}: too small to see yet.`,
  'reading-unlikely': (f) =>
    `The last size is ${f.moreWorn ? 'more' : 'less'} worn than nearly all such parts would be: measure it again.`,
  'renewal-suspected': (f, writing) =>
    `The last size is ${mm(f.fallMm, writing)} better than the one before: it may have been renewed and not noted.`,
  'visit-one-sided': (f) =>
    `All ${f.parts ?? ''} sizes of the last visit came out ${f.moreWorn ? 'more' : 'less'} worn than expected: check the gauge’s zero.`,
  'dates-not-reliable': (f) =>
    `Months are a guess: too few meter readings${on(f.lastReadOn) ? `, the last${on(f.lastReadOn)}` : ''}.`,
  'odd-new-size': (f, writing) =>
    `The part went in at ${size(f.sizeMm, writing)}, not at its new size of ${size(f.newSizeMm, writing)}.`,
  'turned-over': (f, writing) =>
    `A strip turned over: its other face wears from the ${size(f.sizeMm, writing)} that were left, to the same limit.`,
  'slack-carries-on': (f, writing) =>
    `One end of the joint was renewed: its slack goes on from ${size(f.sizeMm, writing)}.`,
  'size-station-renewed': (f) =>
    `The size taken${on(f.takenOn)} is of pieces renewed since: it says nothing of the present ones.`,
  'size-worked-out': (f) =>
    `The slack measured${on(f.takenOn)} is left out: pin and bore were measured that day, and say it already.`,
  'slack-from-sizes': (f) =>
    `Slack is worked out from pin and bore together${typeof f.bores === 'number' && f.bores > 1 ? '; the widest bore counts' : ''}.`,
  'put-in-size-not-used': (f, writing) =>
    `The size noted at its renewal${on(f.takenOn)} cannot be right and is left out: its wear is counted from ${size(f.newSizeMm, writing)}.`,
  'size-parked': (f) => `The size taken${on(f.takenOn)} is questioned and left out until it is answered.`,
  'size-no-hours': (f) =>
    `The size taken${on(f.takenOn)} is left out: the machine has no hours on record for that day.`,
  'size-before-fitted': (f) => `The size taken${on(f.takenOn)} is left out: it is from before the part was fitted.`,
  'new-size-tolerance-not-known': (f, writing) =>
    `How true new parts are is not on record; taken as ${mm(f.takenAsMm, writing)} in all.`,
  'limit-better-than-new': (f, writing) =>
    `${f.limit === 'reject-at' ? 'Reject' : 'Renew'} at ${size(f.limitMm, writing)} is better than new, ${size(f.newSizeMm, writing)}: put the limits right.`,
  'no-common-station': () => 'No station was read every time, so its sizes cannot be compared.',
  'stations-missing': (f, writing) =>
    `Not every station was read every time; ${f.stations ?? ''} count.${
      f.worstLeftOut === null || f.worstLeftOut === undefined
        ? ''
        : ` ${f.worstLeftOut}, left out, was ${mm(f.worseByMm, writing)} worse at the last visit.`
    }`,
  'hours-before-not-known': () => 'Hours before the first meter reading are not known; the dial is taken as it stands.',
  'hours-bridged': (f) =>
    `Hours up to a new meter${on(f.takenOn)} were bridged: about ${hours(f.hours)}, give or take ${hours(typeof f.sdHours === 'number' ? 2 * f.sdHours : null)}.`,
  'meter-stood-still': (f) => `The meter showed the same twice${on(f.takenOn)}: it may have stood still.`,
  'meter-digits-not-known': (f) => `Where the meter turns over is not known; taken as ${hours(f.fullScaleHours)}.`,
  'rollover-without-fall': (f) => `Noted as rolled over${on(f.takenOn)}, yet the dial had not fallen.`,
  'dial-went-back': (f) =>
    `The dial went back${on(f.takenOn)}, from ${hours(f.lastDialHours)} to ${hours(f.dialHours)}; that reading is left out.`,
  'estimate-above-reading': (f) => `An estimate${on(f.takenOn)} was ${hours(f.overHours)} above a later reading.`,
  'dial-off-line': (f) =>
    `A dial noted with a size${on(f.takenOn)}, ${hours(f.dialHours)}, does not fit the meter’s own readings.`,
  'fitted-at-unknown-hours': () => 'When it was fitted is not known: somewhere from new to its first size.',
  'renewed-at-unknown-hours': () => 'When it was renewed is not known: some time since the size before.',
  'hours-estimated': (f) =>
    typeof f.sdHours === 'number'
      ? `Hours are estimated, give or take ${hoursText(2 * f.sdHours)}.`
      : 'Hours are estimated.',
};

/** What to say of a caution; a code nobody has words for is still said. */
export const cautionText = (code: string, facts: Facts = {}, writing: Writing = '.'): string =>
  cautionSentences[code]?.(facts, writing) ?? `${sentenceCase(code.replaceAll('-', ' '))}.`;

const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
