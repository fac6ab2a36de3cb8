import { decimalFigure } from '#core/words/quantityText.ts';
import type { FaultSaid } from './faultText.ts';
import { fitsWords } from './fitsWords.ts';

type Facts = Readonly<Record<string, string | number | boolean | null>>;
type Said = Partial<FaultSaid> & { what: string };

const mm = (fact: Facts[string] | undefined): string =>
  typeof fact === 'number' ? decimalFigure(fact, 3) : 'the limit';
const limits = (facts: Facts): string =>
  `${mm(facts.sizeMm)} mm is outside ${mm(facts.lowerMm)} to ${mm(facts.upperMm)} mm.`;
const lines = (count: Facts[string] | undefined): string => `${count} ${count === 1 ? 'line' : 'lines'}`;

/** What is said of refusals on jobs. */
export const jobFaults: Record<string, (facts: Facts) => Said> = {
  'unknown-rebuild': () => ({ what: 'That job is not on record.', next: 'Choose one from the list.' }),
  'unknown-rebuild-line': () => ({ what: 'That line is no longer on the job.', next: 'Open the job afresh.' }),
  'rebuild-handed-over': (facts) => ({
    what: `Job ${facts.number ?? ''} was handed over and is closed.`,
    next: 'Take a new job in; within three months it is tied to this one.',
  }),
  'no-rates': () => ({
    what: 'The shop’s own rates are not entered yet.',
    next: 'Enter them on the job, under Quotes.',
  }),
  'nothing-chosen': () => ({
    what: 'No further repair is chosen on this machine.',
    next: 'Open the machine, choose on its Repair sheet, and come back; or add work by hand.',
  }),
  'not-on-this-machine': () => ({
    what: 'That assembly sits on another machine than the job is for.',
    next: 'Take a job in on that machine.',
  }),
  'straightening-closed': (facts) => ({
    what: `Not to be straightened: ${String(facts.because ?? '')
      .split(', ')
      .map((reason) => fitsWords.because[reason as keyof typeof fitsWords.because] ?? reason)
      .join('; ')}.`,
    next: fitsWords.replaceIt,
  }),
  'straightening-not-measured': () => ({
    what: 'The section, its sizes, the yield stress or the span is missing: no force can be said.',
    next: 'Enter them, then put it on the job.',
  }),
  'nothing-to-quote': () => ({ what: 'There is no work on this job to quote.', next: 'Add work first.' }),
  'declined-without-words': () => ({
    what: 'Safety work is declined only in the customer’s own words.',
    next: 'Write down what he said; it is printed, and the flag stays.',
  }),
  'out-of-limits': (facts) => ({ what: limits(facts), next: 'Measure again, or keep it as it came out.' }),
  'out-of-intended-fit': (facts) => ({ what: limits(facts), next: 'Measure again, or hand over all the same.' }),
  'rebuild-undecided': (facts) => ({
    what: `${lines(facts.undecided)} of work are neither agreed nor declined.`,
    next: 'Write down what the customer says, or take them off the job.',
  }),
  'checks-open': (facts) => ({
    what: `${facts.open} of the checks before it leaves are not answered.`,
    next: 'Answer each: done, or does not apply.',
  }),
};
