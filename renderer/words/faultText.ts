import type { Fault } from '#core/contract/operation.ts';
import { isDay } from '#core/units/day.ts';
import { dayText, hoursText, limitFigure } from '#core/words/quantityText.ts';
import { exchangeFaults } from './exchangeFaults.ts';
import { recordFaults } from './recordFaults.ts';

/** A fault in words: what is the matter, what is safe, what to do next. Empty parts are left out. */
export type FaultSaid = { what: string; safe: string; next: string };

type Facts = Fault['facts'];
type Sentence = (facts: Facts, fault: Fault) => Partial<FaultSaid> & { what: string };

const KEPT = 'Nothing was changed.';

const mm = (fact: Facts[string] | undefined): string =>
  typeof fact === 'number' ? `${limitFigure(fact)}\u00A0mm` : 'that size';
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
    safe: 'Everything saved is in the record.',
    next: 'Start the program again.',
  }),
  'no-token': () => ({
    what: 'This window was opened without its key to the program.',
    next: 'Start the program again and use the window it opens.',
  }),
  'no-record': () => ({ what: 'No record is open.', next: 'Open one, or start an empty one.' }),
  'no-such-record': () => ({ what: 'There is no record at that place.', next: 'Look whether the file was moved.' }),
  'not-a-record': () => ({ what: 'That file is no record of this program.', next: 'Choose another file.' }),
  'record-newer': () => ({
    what: 'That record was written by a later version of this program.',
    next: 'Open it with that version, or a later one.',
  }),
  'record-in-use': () => ({
    what: 'Another program has the record open for writing.',
    next: 'Close it there, and try again.',
  }),
  'record-read-only': () => ({
    what: 'The record can be read but not written.',
    next: 'Give the file back its leave to be written, or open a copy of it.',
  }),
  'record-damaged': () => ({
    what: 'The record is damaged: it does not read back as it was written.',
    next: 'Put a backup in its place.',
  }),
  'cannot-open-record': () => ({ what: 'The record could not be opened.', next: 'Look at its place and try again.' }),
  'cannot-reach-record': () => ({
    what: 'The record can no longer be reached.',
    safe: 'What was saved before is in it.',
    next: 'Look whether its disk or network place is still there.',
  }),
  'disk-full': () => ({ what: 'The disk is full.', next: 'Free some space and try once more.' }),
  'backup-not-whole': () => ({ what: 'That backup is not whole.', next: 'Choose another one.' }),
  'file-is-there': () => ({ what: 'A file is there already.', next: 'Choose another name or open that file.' }),
  'unknown-machine': () => ({ what: 'That machine is not on record.', next: 'Choose one from the list.' }),
  'unknown-customer': () => ({ what: 'That customer is not on record.', next: 'Choose one from the list.' }),
  'unknown-assembly': () => ({ what: 'That assembly is not on record.', next: 'Open the machine afresh.' }),
  'unknown-position': () => ({ what: 'That position is not on this assembly.', next: 'Open the machine afresh.' }),
  'unknown-point': () => ({ what: 'That measuring point is not on record.', next: 'Open the machine afresh.' }),
  'unknown-gauge': () => ({ what: 'That gauge is not in the shop’s list.', next: 'Choose one from the list.' }),
  'unknown-size': () => ({ what: 'That size is not on record.', next: 'Open the machine afresh.' }),
  'unknown-finding': () => ({ what: 'That finding is not on record.', next: 'Open the machine afresh.' }),
  'unknown-dial-reading': () => ({ what: 'That meter reading is not on record.', next: 'Open the machine afresh.' }),
  'unknown-slip': () => ({ what: 'There is no slip of that number on record.', next: 'Choose one from the list.' }),
  'already-closed': (facts) => ({
    what: `That finding is closed already${on(facts.closedOn)}.`,
    next: 'If it is open again, enter it anew.',
  }),
  'already-put-right': () => ({
    what: 'That figure was put right already.',
    next: 'Put right the one that took its place.',
  }),
  'not-questioned': () => ({ what: 'That size is not in question any more.', next: 'There is nothing to answer.' }),
  'machine-name-taken': () => ({ what: 'Another machine has that name.', next: 'Add a number or the farm to it.' }),
  'name-taken': () => ({ what: 'That name is taken.', next: 'Choose another.' }),
  'already-there': () => ({ what: 'It is there already.', next: 'Choose where it goes.' }),
  'nothing-typed': () => ({ what: 'Nothing has been typed yet.', next: 'Type a size, a renewal or a finding.' }),
  'limit-better-than-new': (facts) => ({
    what: `${mm(facts.limitMm)} is better than new, ${mm(facts.newSizeMm)}: a part would be past its limit on the day it goes in.`,
    next: facts.wears === 'up' ? 'A limit lies above the new size here.' : 'A limit lies below the new size here.',
  }),
  'reject-before-renew': (facts) => ({
    what: `Reject at ${mm(facts.rejectAtMm)} would come before renew at ${mm(facts.renewAtMm)}.`,
    next: 'Change one of the two.',
  }),
  'dial-went-back': (facts) => dialFault(facts, `is less than ${hours(facts.lastDialHours)}${on(facts.lastReadOn)}`),
  'dial-above-later': (facts) =>
    dialFault(facts, `is more than ${hours(facts.laterDialHours)}, read later${on(facts.laterReadOn)}`),
  'dial-over-full-scale': (facts) =>
    dialFault(facts, `is more than this meter can show: it turns over at ${hours(facts.fullScaleHours)}`),
  'rise-over-24-a-day': (facts) =>
    dialFault(facts, `is over 24 hours a day more than ${hours(facts.lastDialHours)}${on(facts.lastReadOn)}`),
  ...recordFaults,
  ...exchangeFaults,
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

/** What to say of a fault. A code nobody has words for is said so, with its facts, rather than passed over. */
export function faultText(fault: Fault): FaultSaid {
  const sentence = faultSentences[fault.code];
  const said = sentence?.(fault.facts, fault) ?? {
    what: `The program refused this: ${fault.code.replaceAll('-', ' ')}${factsInBrackets(fault.facts)}.`,
  };
  return { safe: KEPT, next: '', ...said };
}

function factsInBrackets(facts: Facts): string {
  const told = Object.entries(facts).map(([name, value]) => `${fieldName(name)} ${value}`);
  return told.length === 0 ? '' : ` (${told.join('; ')})`;
}
