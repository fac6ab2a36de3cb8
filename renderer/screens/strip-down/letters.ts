import { answerOfLetter, type OpenQuestion } from './questions.ts';

/** What a letter pressed in a size box does. Sizes are figures, so letters are free. */
export type LetterDoes =
  | { does: 'answer'; choice: string }
  | { does: 'see' | 'swap' | 'stop-swapping' | 'renewed' | 'part' | 'gauge' | 'other-grid' | 'hours' };

const PLAIN: Record<string, Exclude<LetterDoes, { does: 'answer' }>['does']> = {
  '+': 'see',
  S: 'swap',
  R: 'renewed',
  P: 'part',
  G: 'gauge',
  L: 'other-grid',
  H: 'hours',
};

/**
 * A question's letters come first; "m" after a figure begins "mm" and is let through unless a question asks for it.
 * @returns null: the letter goes into the box as typed
 */
export function letterDoes(key: string, inHand: OpenQuestion | null, swapping: boolean): LetterDoes | null {
  if (key === 'Escape') return swapping ? { does: 'stop-swapping' } : null;
  if (key.length !== 1) return null;
  const choice = inHand && /[a-z]/i.test(key) ? answerOfLetter(inHand.question, key) : null;
  if (choice !== null) return { does: 'answer', choice };
  const does = PLAIN[key.toUpperCase()];
  return does ? { does } : null;
}
