import type { Finding } from '#core/contract/machine.ts';
import { findingWords } from './stripDownWords.ts';

/** What was seen, in a word or two: "crack"; something other is what its note says. */
export const seenText = (finding: Pick<Finding, 'kind' | 'note'>): string =>
  finding.kind === 'other' ? finding.note : findingWords[finding.kind];

/** "crack, at weld toe, 34 mm": what was seen, and what was noted of it. */
export const findingText = (finding: Pick<Finding, 'kind' | 'note'>): string =>
  finding.kind === 'other'
    ? finding.note
    : [findingWords[finding.kind], lowerFirst(finding.note.trim())].filter(Boolean).join(', ');

const lowerFirst = (text: string): string =>
  /^[A-ZÀ-Þ][a-zß-ÿ ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
