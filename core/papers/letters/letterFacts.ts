import type { Slip } from '../../contract/slip.ts';

/** What a letter is written from: the machine's slip, and every open finding of it, gravest first. */
export type LetterFacts = { slip: Slip; openFindings: readonly Slip['watch'][number][] };

const GRAVEST_FIRST = ['do-not-use', 'repair', 'watch'];

/** The finding that heads a slip is one of those still open. */
export function letterFacts(slip: Slip): LetterFacts {
  const { headline } = slip;
  const heads = headline.kind === 'do-not-use' ? [{ ...headline, severity: 'do-not-use' as const }] : [];
  const open = [...heads, ...slip.watch];
  open.sort((a, b) => GRAVEST_FIRST.indexOf(a.severity) - GRAVEST_FIRST.indexOf(b.severity));
  return { slip, openFindings: open };
}

/** Plain characters only: what a mail program, a telephone or a calendar shows as it was written. */
export const plainText = (text: string): string =>
  text
    .replace(/[\u2009\u00A0\u202F]/g, ' ')
    .replace(/\u2212/g, '-')
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/[\u201C\u201D]/g, '"');
