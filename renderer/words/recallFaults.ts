import type { FaultSaid } from './faultText.ts';

type Said = Partial<FaultSaid> & { what: string };

/** What is said of refusals about contacts and the recall list. */
export const recallFaults: Record<string, () => Said> = {
  'unknown-contact': () => ({ what: 'That contact is no longer on record.', next: 'Open the farm afresh.' }),
  'unknown-quiet-period': () => ({ what: 'That quiet period is no longer on record.', next: 'Open the farm afresh.' }),
  'no-slips-to-make': () => ({
    what: 'None of these machines has an owner who may be written to.',
    next: 'Choose others, or say on the Customers screen whose they are.',
  }),
  'slip-numbers-taken': () => ({
    what: 'Others made slips while these were printed, and took their numbers.',
    safe: 'None of these slips was kept.',
    next: 'Make them once more.',
  }),
};
