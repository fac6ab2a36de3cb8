import type { Slip } from '../contract/slip.ts';
import type { FindingKind, Severity } from '../shop/finding.ts';

/** What parts, findings and the thing itself are called on the slip. */

/** An assembly in the middle of a sentence: "Front loader" is "front loader", "H-2207" stays. */
export const midSentence = (name: string): string =>
  /^[A-ZÀ-Þ][a-zß-ÿ]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/** What is to be brought in. */
export const thingOf = ({ machine }: Slip): string => midSentence(machine.assembly || machine.name);

/** Item numbers as they stand on the drawing: "8 9". */
export const itemsText = (items: readonly number[]): string => items.join(' ');

const findingWords: Record<FindingKind, string> = {
  crack: 'cracked',
  bent: 'bent',
  broken: 'broken',
  seized: 'seized',
  missing: 'missing',
  other: 'faulty',
};

/** What was seen, once: a note that names it already stands alone. */
export function findingText({ finding, note }: { finding: FindingKind; note: string }): string {
  const word = findingWords[finding];
  const bare = midSentence(note.replace(/[.\s]+$/, ''));
  if (bare === '') return word;
  return NAMED_IN_NOTE[finding].test(bare) ? bare : `${word}, ${bare}`;
}

const NAMED_IN_NOTE: Record<FindingKind, RegExp> = {
  crack: /crack/i,
  bent: /ben[dt]/i,
  broken: /br(oken?|eak)/i,
  seized: /seiz|stuck/i,
  missing: /missing|gone|lost/i,
  other: /./,
};

export const severityWords: Record<Severity, string> = {
  'do-not-use': 'do not use',
  repair: 'needs repair',
  watch: 'watch it',
};
