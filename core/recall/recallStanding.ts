import type { WinterOfYear } from '../shop/winter.ts';
import { wintersFrom } from '../shop/winter.ts';
import { addDays, type Day } from '../units/day.ts';
import type { RecallContact, RecallMachine, RecallTerms } from './recallMachine.ts';
import type { RecallReason } from './recallReasons.ts';

/**
 * Where a machine that is due stands:
 *  - to-contact: its owner is to be contacted
 *  - waiting: something was sent, and no answer has come yet
 *  - held: an answer, a promise or a quiet period keeps it off the list, up to and with a day; null: for good
 */
export type RecallStanding =
  | { code: 'to-contact' }
  | { code: 'waiting'; sentOn: Day }
  | { code: 'held'; why: 'booked' | 'later' | 'declined' | 'sold' | 'call-back' | 'quiet'; until: Day | null };

/** So long an answer is waited for (common practice, no source). */
const DAYS_TO_ANSWER = 14;
/** "Later", with no day named (common practice, no source). */
const DAYS_OF_LATER = 30;

const TO_CONTACT: RecallStanding = { code: 'to-contact' };

/**
 * What was said goes before what is due, but for what nobody could have known then: a safety finding made since brings the
 * machine back whatever was answered, unless it was sold. A quiet period and a visit on the plan hold back all but a finding
 * that forbids use.
 */
export function recallStanding(
  machine: RecallMachine,
  reasons: readonly RecallReason[],
  terms: RecallTerms,
  asOf: Day,
  winterOfYear: WinterOfYear,
): RecallStanding {
  const { contacts, safetyFindings } = machine;
  const answered = contacts.findLast(({ answer }) => answer !== null);
  if (answered?.answer === 'sold') return { code: 'held', why: 'sold', until: null };
  const quiet = terms.quiet.find(({ fromOn, toOn }) => fromOn <= asOf && asOf <= toOn);
  const stopped = safetyFindings.some(({ doNotUse }) => doNotUse);
  if (quiet && !stopped) return { code: 'held', why: 'quiet', until: quiet.toOn };
  if (reasons.some(({ code }) => code === 'call-back')) return TO_CONTACT;
  if (machine.visitTo !== null && machine.visitTo >= asOf && !stopped)
    return { code: 'held', why: 'booked', until: machine.visitTo };
  const last = contacts.at(-1);
  const unheardOf = (said: RecallContact) =>
    safetyFindings.some(({ foundOn, entered }) => foundOn > said.madeOn || entered > said.entered);
  if (last && last.callBackOn !== null && !unheardOf(last))
    return { code: 'held', why: 'call-back', until: addDays(last.callBackOn, -1) };
  if (answered && !unheardOf(answered)) {
    const held = heldBy(answered, winterOfYear);
    if (held && (held.until === null || held.until >= asOf)) return held;
  }
  // what was sent after the last answer is waited for
  if (last && last.answer === null && SENT.includes(last.way) && !unheardOf(last))
    return addDays(last.madeOn, DAYS_TO_ANSWER) >= asOf ? { code: 'waiting', sentOn: last.madeOn } : TO_CONTACT;
  return TO_CONTACT;
}

const SENT: readonly string[] = ['slip', 'email', 'message'];

type Held = Extract<RecallStanding, { code: 'held' }>;

function heldBy({ answer, answerOn, madeOn }: RecallContact, winterOfYear: WinterOfYear): Held | null {
  const winterEnd = wintersFrom(winterOfYear, madeOn, 1)[0]?.to ?? madeOn;
  switch (answer) {
    case 'booked':
      return { code: 'held', why: 'booked', until: answerOn ?? winterEnd };
    case 'later':
      return { code: 'held', why: 'later', until: addDays(answerOn ?? addDays(madeOn, DAYS_OF_LATER), -1) };
    case 'declined':
      return { code: 'held', why: 'declined', until: winterEnd };
    default:
      return null;
  }
}
