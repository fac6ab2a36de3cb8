import { type DecimalMark, hoursText } from '#core/words/quantityText.ts';

type Facts = Record<string, string | number | boolean | null>;
type Sentence = (facts: Facts, mark: DecimalMark) => string;

/** Every caution that can travel with a forecast, and what is said of it. The key is the code. */
export const cautionSentences: Record<string, Sentence> = {
  'no-limit': () => 'No renew-at size is set, so there is nothing to count hours to.',
  'no-hours': () => 'No machine hours on record yet.',
  'beyond-horizon': () => 'Further off than can be reckoned.',
  'do-not-use': () => 'Do not use: no forecast while this finding is open.',
  'machine-has-do-not-use': () => 'Another part of this machine must not be used.',
  'past-at-last-size': () => 'Was past its limit when last measured.',
  'from-trade-prior': () => 'Rests on what the trade says: too few like parts measured here.',
  'long-extrapolation': () => 'Reaches far beyond what was measured.',
  'dates-not-reliable': () => 'Months are a guess: too few meter readings.',
  'station-missing': () => 'A station read before was not read this time; only those read both times count.',
  'hours-estimated': (facts) =>
    typeof facts.sdHours === 'number'
      ? `Hours are estimated, give or take ${hoursText(2 * facts.sdHours)}.`
      : 'Hours are estimated.',
};

/** What to say of a caution; a code nobody has words for is still said. */
export const cautionText = (code: string, facts: Facts = {}, mark: DecimalMark = '.'): string =>
  cautionSentences[code]?.(facts, mark) ?? `${sentenceCase(code.replaceAll('-', ' '))}.`;

const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
