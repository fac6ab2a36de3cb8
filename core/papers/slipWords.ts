import type { Slip } from '../contract/slip.ts';
import { day, yearOf } from '../units/day.ts';
import { shared } from '../words/english.ts';
import { hoursLeftFigure } from '../words/quantityText.ts';
import {
  forecastFigure,
  hoursPerYearFigure,
  hoursPhrase,
  longDay,
  meterOf,
  monthName,
  presentFigure,
} from './slipFigures.ts';
import { findingText, itemsText, midSentence, thingOf } from './slipNames.ts';

/** The sentences of the farmer's page. Facts come in as a {@link Slip}. */

/** The one sentence that matters. */
export function headlineText(slip: Slip): string {
  const { headline } = slip;
  switch (headline.kind) {
    case 'do-not-use':
      return `${shared.doNotUse} the ${thingOf(slip)}`;
    case 'passed':
      return `Bring the ${thingOf(slip)} in now: it ${likelyPassed(slip) ? 'has probably' : 'may have'} worn past a limit.`;
    case 'not-measured':
      return headline.winter === null
        ? `Have the ${thingOf(slip)} measured at its next visit: nobody has measured yet how worn it is.`
        : `Have the ${thingOf(slip)} measured in winter ${headline.winter} at the latest: nobody has measured yet how worn it is.`;
    case 'no-forecast':
      return `Nothing can be said yet of when the ${thingOf(slip)} should next come in.`;
    case 'come-in': {
      const hours = hoursPhrase(slip, headline.dialHours);
      if (headline.about === null) return `Check the ${thingOf(slip)} next winter, and bring it in by ${hours}.`;
      if (headline.winter === null) return `Bring the ${thingOf(slip)} in by ${hours}.`;
      return `Bring the ${thingOf(slip)} in during winter ${headline.winter}, or at ${hours}, whichever comes first.`;
    }
  }
}

/** More likely than not: the middle figure has gone by too, or it was measured past. */
const likelyPassed = ({ headline, dialHours }: Slip): boolean =>
  headline.kind === 'passed' &&
  headline.range.middle !== null &&
  (dialHours === null || headline.range.middle <= dialHours);

/** Which machine, whose, at how many hours. */
export function machineLine(slip: Slip): string {
  const { machine, customer } = slip;
  const farm = [customer.name, customer.place].filter((part) => part !== '').join(', ');
  const name = [machine.name, midSentence(machine.assembly)].filter((part) => part !== '').join(', ');
  return `${farm === '' ? '' : `${farm}. `}${name}${hoursNow(slip)}.`;
}

/** The machine with the number on its plate: for the title block. */
export const machineOnPlate = ({ machine }: Slip): string =>
  [machine.name, machine.serial].filter((part) => part !== '').join(', ');

function hoursNow(slip: Slip): string {
  if (slip.dialHours === null) return '';
  const aYear = slip.hoursPerYear === null ? '' : `, about ${hoursPerYearFigure(slip.hoursPerYear)} a year`;
  const on = slip.dialMachine === null ? '' : ` on ${meterOf(slip)}`;
  return `, at ${presentFigure(slip, slip.dialHours)} hours${on}${aYear}`;
}

/** What the headline rests on, in plain words: whose limit, between which hours, about when. */
export function decidingText(slip: Slip): string {
  const { headline } = slip;
  switch (headline.kind) {
    case 'come-in':
      return [firstText(slip, headline), goByText(headline), aboutText(slip)]
        .filter((sentence) => sentence !== '')
        .join(' ');
    case 'passed':
      return `${itemsText(headline.items)} ${headline.label}: ${passedText(slip, headline.range)}. Ring us before the next long day's work.`;
    case 'not-measured':
      return [
        `Measure ${itemsText(headline.items)}, ${midSentence(headline.label)}, first.`,
        `From like parts alone its limit lies ${rangeText(slip, headline.range)}: too wide to call it in now.`,
        headline.decides === 'low' ? 'It tows or lifts: look for cracks and play before the next long day’s work.' : '',
      ]
        .filter(Boolean)
        .join(' ');
    case 'do-not-use':
      return `${headline.label}: ${findingText(headline)}. Found ${longDay(day(headline.foundOn))}. ${declinedText(headline.declined)}Ring us before it works again.`;
    case 'no-forecast':
      return 'No limit is set for its parts, or its hours are not known. Read your meter and let us know.';
  }
}

/** "Repair refused by J. Holm on 3 November 2026: “Leave it till spring.” ", with the space to what follows; nothing where nobody refused. */
export const declinedText = (declined: Slip['watch'][number]['declined']): string =>
  declined === null
    ? ''
    : `Repair refused by ${declined.saidBy} on ${longDay(day(declined.saidOn))}: “${declined.words}” `;

type Range = { low: number | null; middle: number | null; high: number | null };

const firstText = (slip: Slip, { items, label, range }: Extract<Slip['headline'], { kind: 'come-in' }>): string =>
  `First to its limit is ${itemsText(items)}, ${midSentence(label)}: ${rangeText(slip, range)}.`;

function rangeText(slip: Slip, { low, middle, high }: Range): string {
  const f = (hours: number) => forecastFigure(slip, hours);
  if (low === null) return 'further off than can be reckoned';
  const from = high === null ? `from ${f(low)} hours on` : `between ${f(low)} and ${f(high)} hours`;
  return `${from}${middle === null ? '' : `, most likely about ${f(middle)}`}`;
}

/** In hours since: the dial may have been another then. */
function passedText(slip: Slip, { low, middle, high }: Range): string {
  const { dialHours } = slip;
  if (dialHours === null || low === null || middle === null) return 'its limit has probably been passed';
  const ago = (hours: number) => hoursLeftFigure(Math.max(0, dialHours - hours));
  if (low === high) return `already past its limit when last measured, ${ago(middle)} hours ago`;
  if (middle >= dialHours) return `its limit may have been passed, up to ${ago(low)} hours ago`;
  const earliest = high !== null && high < dialHours ? `${ago(high)} to ${ago(low)}` : `up to ${ago(low)}`;
  return `its limit was most likely passed about ${ago(middle)} hours ago (${earliest})`;
}

const goByText = (headline: { decides: 'low' | 'middle' }): string =>
  headline.decides === 'low' ? 'It tows or lifts, so we go by the early figure.' : '';

function aboutText(slip: Slip): string {
  const { headline, hoursPerYear } = slip;
  if (headline.kind !== 'come-in' || hoursPerYear === null) return '';
  const use = `At about ${hoursPerYearFigure(hoursPerYear)} hours a year`;
  if (headline.about === null) return `${use} that is more than two seasons away: check next winter.`;
  const about = day(headline.about);
  return `${use} that is about ${monthName(about)} ${yearOf(about)}.`;
}

/** "3 Slide strip, bottom front. With it, since it is open then anyway: 2 Slide strip, top rear; 5 Side pad, left." */
export function thenDoText(slip: Slip): string {
  const named = (role: 'due' | 'with-it') =>
    slip.thenDo
      .filter((row) => row.role === role)
      .map((row) => `${itemsText(row.items)} ${midSentence(row.label)}`)
      .join('; ');
  const due = named('due');
  const withIt = named('with-it');
  if (due === '' && withIt === '') return '';
  const alongside = withIt === '' ? '' : ` With it, since it is open then anyway: ${withIt}.`;
  return `Renew or make good ${due}.${alongside} Measure the rest.`;
}

export const howToRead =
  'One in ten such parts is at its limit by the left end of its bar, nine in ten by the right; the long tick is as likely as not. ' +
  'Solid: measured on yours three times or more. Hatched: partly judged from like parts. Open: wholly. ' +
  'The triangle is the figure we go by; for what tows or lifts it is the early one.';
