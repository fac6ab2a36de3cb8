import { addDays, type Day, daysBetween } from '../units/day.ts';
import { lastsTo } from './lookAhead.ts';
import type { RecallMachine, RecallShop, RecallTerms } from './recallMachine.ts';

/**
 * Why a machine's owner is to be contacted, gravest first:
 *  - safety: an open finding forbids its use, or stands where it tows or lifts
 *  - call-back: its owner was promised to be rung by today
 *  - hours: its deciding hours, less the shop's lead, come before it could well be opened again
 *  - no-hours: nobody has read its meter for a year, so nothing said of it can be trusted far
 */
export type RecallReason =
  | { code: 'safety'; count: number; doNotUse: boolean; since: Day }
  | { code: 'call-back'; on: Day }
  | { code: 'hours'; hoursLeft: number; on: Day | null; passed: boolean }
  | { code: 'no-hours'; since: Day | null };

/** A meter not read for this long is asked for (common practice, no source). */
const DAYS_OF_TWELVE_MONTHS = 365;

export function recallReasons(machine: RecallMachine, terms: RecallTerms, shop: RecallShop): RecallReason[] {
  const reasons = [
    safety(machine),
    callBack(machine, shop.asOf),
    hoursDue(machine, terms, shop),
    noHours(machine, shop.asOf),
  ];
  return reasons.filter((reason) => reason !== null);
}

function safety({ safetyFindings }: RecallMachine): RecallReason | null {
  const [first] = safetyFindings;
  if (!first) return null;
  const doNotUse = safetyFindings.some((finding) => finding.doNotUse);
  return { code: 'safety', count: safetyFindings.length, doNotUse, since: first.foundOn };
}

/** The last word with the owner names the day; whatever was said after it takes its place. */
function callBack({ contacts }: RecallMachine, asOf: Day): RecallReason | null {
  const on = contacts.at(-1)?.callBackOn ?? null;
  return on !== null && on <= asOf ? { code: 'call-back', on } : null;
}

/** Gone by already, or on the day they fall, less the lead, within the time the machine must last. */
function hoursDue({ deciding }: RecallMachine, terms: RecallTerms, shop: RecallShop): RecallReason | null {
  if (deciding === null) return null;
  const { hoursLeft, on } = deciding;
  const passed = hoursLeft < 0;
  const due = passed || (on !== null && addDays(on, -shop.leadDays) <= lastsTo(shop, terms));
  return due ? { code: 'hours', hoursLeft, on, passed } : null;
}

function noHours({ hasMeter, hoursReadOn }: RecallMachine, asOf: Day): RecallReason | null {
  if (!hasMeter) return null;
  const silent = hoursReadOn === null || daysBetween(hoursReadOn, asOf) > DAYS_OF_TWELVE_MONTHS;
  return silent ? { code: 'no-hours', since: hoursReadOn } : null;
}
