import type { Finding } from '#core/contract/machine.ts';
import { findingText } from '#renderer/words/findingText.ts';
import { findingWords, severityWords } from '#renderer/words/stripDownWords.ts';
import type { FindingEntry } from './sheet.ts';

/** "Crack: do not use". */
export const judgedText = ({ kind, severity }: Pick<FindingEntry, 'kind' | 'severity'>): string =>
  capital(`${findingWords[kind]}: ${severityWords[severity]}`);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "Crack, 34 mm at the weld toe: do not use". */
export const wholeText = (finding: Pick<FindingEntry, 'kind' | 'severity' | 'note'>): string =>
  capital(`${findingText(finding)}: ${severityWords[finding.severity]}`);

/** What stands at a position: findings open from before, and those of this sheet with their place in it. */
export type SeenAt = { before: readonly Finding[]; now: readonly { finding: FindingEntry; at: number }[] };

export function seenAt(positionId: number, open: readonly Finding[], entries: readonly FindingEntry[]): SeenAt {
  return {
    before: open.filter((finding) => finding.positionId === positionId),
    now: entries.flatMap((finding, at) => (finding.positionId === positionId ? [{ finding, at }] : [])),
  };
}

/** A position that must not be used, whether found before or now. */
export const isStopped = ({ before, now }: SeenAt): boolean =>
  [...before, ...now.map(({ finding }) => finding)].some(({ severity }) => severity === 'do-not-use');
