import type { Fault } from '#core/contract/operation.ts';
import { isDay } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';

type Facts = Fault['facts'];

/** What is said when a share, a source of hours or a meter’s particulars are refused. */
export const hoursFaults: Record<string, (facts: Facts) => { what: string; safe?: string; next?: string }> = {
  'unknown-work-share': () => ({ what: 'That share is not on record.', next: 'Open the machine afresh.' }),
  'unknown-hours-source': () => ({ what: 'That source of hours is not on record.', next: 'Open the machine afresh.' }),
  'day-taken': ({ from }) => ({
    what: `Something is on record already from ${typeof from === 'string' && isDay(from) ? dayText(from) : 'the beginning'} on.`,
    next: 'Put that right, or give another day.',
  }),
  'pulled-in-a-ring': ({ machines }) => ({
    what: `Each of these would be pulled by the next, and their hours would rest on themselves: ${machines}.`,
    next: 'Choose the machine that has a meter.',
  }),
  'no-meter-read': () => ({
    what: 'No meter of this machine has been read, so nothing is known of its clock.',
    next: 'Enter what it shows first.',
  }),
  'nothing-changed': () => ({ what: 'That is what the record says already.', next: '' }),
};
