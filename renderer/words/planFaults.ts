import type { faultSentences } from './faultText.ts';

/** What is said where the winter plan refuses. */
export const planFaults: typeof faultSentences = {
  'no-machines': () => ({ what: 'There is no machine on record to plan.', next: 'Take one in first.' }),
  'plan-overtaken': () => ({
    what: 'A visit was changed while the winter was being planned.',
    safe: 'What was changed stands; the new plan was not kept.',
    next: 'Propose once more.',
  }),
  'unknown-visit': () => ({ what: 'That visit is not on the plan any more.', next: 'Look at the plan again.' }),
  'visit-done': () => ({ what: 'That visit has been done.', next: 'Undo that first if it was not.' }),
  'visit-agreed': (facts) => ({
    what: facts.saidBy ? `That visit is agreed with ${facts.saidBy}.` : 'That visit is agreed with the customer.',
    safe: 'Nothing was changed.',
    next: 'Change it all the same only once he has been told.',
  }),
  'visit-has-no-week': () => ({ what: 'That visit has no week yet.', next: 'Move it to a week first.' }),
  'visit-there-already': () => ({
    what: 'That machine is on the plan of this winter already.',
    next: 'Choose its visit and change that.',
  }),
  'unknown-away': () => ({ what: 'Those days are not on record any more.', next: 'Look at the list again.' }),
};
