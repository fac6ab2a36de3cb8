import type { Finding } from '#core/contract/machine.ts';
import { findingWords } from './stripDownWords.ts';

/** What was seen, in a word or two: "crack"; something other is what its note says. */
export const seenText = (finding: Pick<Finding, 'kind' | 'note'>): string =>
  finding.kind === 'other' ? finding.note : findingWords[finding.kind];

/** "crack, at weld toe, 34 mm": what was seen, and what was noted of it; a note that says it again stands alone. */
export function findingText({ kind, note }: Pick<Finding, 'kind' | 'note'>): string {
  const noted = lowerFirst(note.trim().replace(/\.$/, ''));
  const seen = kind === 'other' ? '' : findingWords[kind];
  const again = seen !== '' && noted.toLowerCase().startsWith(seen);
  return [again ? '' : seen, noted].filter(Boolean).join(', ');
}

/** The first letter of a sentence made small; a name or an abbreviation stays as it is. */
const lowerFirst = (text: string): string =>
  /^[A-ZÀ-Þ][a-zß-ÿ ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
