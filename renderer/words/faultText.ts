import type { Fault } from '#core/contract/operation.ts';
import { isDay } from '#core/units/day.ts';
import { dayText, hoursText } from '#core/words/quantityText.ts';
import { deskFaults } from './deskFaults.ts';
import { exchangeFaults } from './exchangeFaults.ts';
import { fitFaults } from './fitFaults.ts';
import { hoursFaults } from './hoursFaults.ts';
import { jobFaults } from './jobFaults.ts';
import { planFaults } from './planFaults.ts';
import { recallFaults } from './recallFaults.ts';
import { recordFaults } from './recordFaults.ts';
import { repairFaults } from './repairFaults.ts';

/** A fault in words: what is the matter, what is safe, what to do next. Empty parts are left out. */
export type FaultSaid = { what: string; safe: string; next: string };

type Facts = Fault['facts'];
type Sentence = (facts: Facts, fault: Fault) => Partial<FaultSaid> & { what: string };

const KEPT = 'Nothing was changed.';

const kilobytes = (fact: Facts[string] | undefined): string => `${Math.ceil(Number(fact) / 1000)} kB`;
const hours = (fact: Facts[string] | undefined): string =>
  typeof fact === 'number' ? hoursText(fact) : 'the last figure';
const on = (fact: Facts[string] | undefined): string =>
  typeof fact === 'string' && isDay(fact) ? ` on ${dayText(fact)}` : '';
const dialFault = (facts: Facts, is: string): Partial<FaultSaid> & { what: string } => ({
  what: `${typeof facts.dialHours === 'number' ? hoursText(facts.dialHours) : 'The dial'} ${is}.`,
  next: 'Look at figure and day once more.',
});

/**
 * Every code of a fault and what is said of it. A new refusal gets its line here; the key is the code.
 * Facts come with units in their names; they are turned into words by core/words/quantityText.
 */
export const faultSentences: Record<string, Sentence> = {
  'unknown-operation': () => ({
    what: 'This window and the program behind it are of different versions.',
    next: 'Close the window and start the program again.',
  }),
  'not-as-expected': (facts, fault) => ({
    what: fault.issues?.length
      ? fault.issues.map((issue) => `${fieldName(issue.path)}: ${issue.expected} was expected.`).join(' ')
      : `${fieldName(fault.path ?? '')}: ${facts.expected ?? 'something else'} was expected.`,
    next: 'Put it right and try again.',
  }),
  failed: () => ({
    what: 'The program could not finish this.',
    safe: 'Nothing was lost: the record is as it was before.',
    next: 'Try once more; if it happens again, make a backup and start the program again.',
  }),
  'no-connection': () => ({
    what: 'The program behind this window has ended.',
    safe: 'Everything saved is in the record. What was typed since stands only in this window: note it down.',
    next: 'Then start the program again and use the window it opens.',
  }),
  'no-token': () => ({
    what: 'This window was opened without its key to the program.',
    next: 'Start the program again and use the window it opens.',
  }),
  'no-record': () => ({ what: 'No record is open.', next: 'Open one, or start an empty one.' }),
  'unknown-machine': () => ({ what: 'That machine is not on record.', next: 'Choose one from the list.' }),
  'unknown-customer': () => ({ what: 'That customer is not on record.', next: 'Choose one from the list.' }),
  'unknown-merge': () => ({ what: 'These customers are not merged.', next: 'Open the customers afresh.' }),
  'unknown-ownership': () => ({ what: 'That owner is not on record.', next: 'Open the machine afresh.' }),
  'customer-merged': ({ into }) => ({
    what: `This customer was merged into ${into}.`,
    next: 'Go on with that one, or part them again first.',
  }),
  'customer-erased': () => ({
    what: 'This customer’s personal data were erased on request.',
    next: 'If they come again, enter them as a new customer.',
  }),
  'name-not-typed': ({ name }) => ({
    what: 'The name was not typed as it stands.',
    safe: 'Nothing was erased.',
    next: `Type ${name} to erase it for good.`,
  }),
  'unknown-assembly': () => ({ what: 'That assembly is not on record.', next: 'Open the machine afresh.' }),
  'unknown-position': () => ({ what: 'That position is not on this assembly.', next: 'Open the machine afresh.' }),
  'unknown-fitter': () => ({ what: 'That fitter is not in the shop’s list.', next: 'Open the Shop screen afresh.' }),
  'unknown-kind': () => ({ what: 'That assembly kind is not on record.', next: 'Open the Shop screen afresh.' }),
  'size-without-forecast': () => ({
    what: 'No size of that day has a forecast to be laid against.',
    next: 'It may have been put right or taken back since. Open the forecast check afresh.',
  }),
  'unknown-point': () => ({ what: 'That measuring point is not on record.', next: 'Open the machine afresh.' }),
  'unknown-gauge': () => ({ what: 'That gauge is not in the shop’s list.', next: 'Choose one from the list.' }),
  'unknown-size': () => ({ what: 'That size is not on record.', next: 'Open the machine afresh.' }),
  'unknown-finding': () => ({ what: 'That finding is not on record.', next: 'Open the machine afresh.' }),
  'unknown-photo': () => ({ what: 'That photo is not on record.', next: 'Open the machine afresh.' }),
  'unknown-decline': () => ({ what: 'That refusal is not on record.', next: 'Open the machine afresh.' }),
  'photo-not-a-jpeg': () => ({ what: 'What arrived is no JPEG picture.', next: 'Choose the photo again.' }),
  'photo-carries-data': () => ({
    what: 'The picture carries more than the picture: a place, a time or a camera’s notes.',
    next: 'Choose the photo again: the window takes such things out.',
  }),
  'photo-too-heavy': ({ bytes, mostBytes }) => ({
    what: `The photo weighs ${kilobytes(bytes)}; ${kilobytes(mostBytes)} is the most.`,
    next: 'Choose the photo again: the window makes it smaller.',
  }),
  'photo-too-large': ({ widthPx, heightPx, mostPx }) => ({
    what: `The photo is ${widthPx} by ${heightPx} pixels; ${mostPx} is the most for its long side.`,
    next: 'Choose the photo again: the window makes it smaller.',
  }),
  'photo-at-finding': () => ({
    what: 'The photo stands at a finding or a job, and is not thrown away.',
    next: 'Strike it there instead.',
  }),
  'unknown-dial-reading': () => ({ what: 'That meter reading is not on record.', next: 'Open the machine afresh.' }),
  'unknown-slip': () => ({ what: 'There is no slip of that number on record.', next: 'Choose one from the list.' }),
  'dial-went-back': (facts) => dialFault(facts, `is less than ${hours(facts.lastDialHours)}${on(facts.lastReadOn)}`),
  'dial-above-later': (facts) =>
    dialFault(facts, `is more than ${hours(facts.laterDialHours)}, read later${on(facts.laterReadOn)}`),
  'rise-over-24-a-day': (facts) =>
    dialFault(facts, `is over 24 hours a day more than ${hours(facts.lastDialHours)}${on(facts.lastReadOn)}`),
  ...jobFaults,
  ...planFaults,
  ...recordFaults,
  ...recallFaults,
  ...repairFaults,
  ...exchangeFaults,
  ...deskFaults,
  ...fitFaults,
  ...hoursFaults,
};

/** "sizes.3.sizeMm" as a person would point at it: "sizes, 4: size mm". */
export function fieldName(path: string): string {
  if (path === '') return 'What was sent';
  const words = path
    .split('.')
    .map((part) =>
      /^\d+$/.test(part) ? String(Number(part) + 1) : part.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase(),
    );
  return words.join(', ');
}

/** It names a thing that is not there. */
export const isNotOnRecord = ({ code }: Fault): boolean => code.startsWith('unknown-') && code !== 'unknown-operation';

/**
 * What to say of a fault. A code nobody has words for is said so, with its facts, rather than passed over.
 * @param onlyRead nothing was to be changed, so nothing is said of what was not
 */
export function faultText(fault: Fault, { onlyRead = false }: { onlyRead?: boolean } = {}): FaultSaid {
  const sentence = faultSentences[fault.code];
  const said = sentence?.(fault.facts, fault) ?? {
    what: `The program refused this: ${fault.code.replaceAll('-', ' ')}${factsInBrackets(fault.facts)}.`,
  };
  return { safe: onlyRead ? '' : KEPT, next: '', ...said };
}

function factsInBrackets(facts: Facts): string {
  const told = Object.entries(facts).map(([name, value]) => `${fieldName(name)} ${value}`);
  return told.length === 0 ? '' : ` (${told.join('; ')})`;
}
