import { type Outcome, ok, refuse } from '../outcome.ts';
import { GRADES, type Grade, isGrade } from './toleranceGrade.ts';

/** Letters of holes and shafts that are computed here; capitals are holes. */
export const HOLE_LETTERS = ['D', 'E', 'F', 'G', 'H', 'JS', 'K', 'M', 'N', 'P', 'R', 'S'] as const;
export const SHAFT_LETTERS = ['d', 'e', 'f', 'g', 'h', 'js', 'k', 'm', 'n', 'p', 'r', 's'] as const;
export type HoleLetter = (typeof HOLE_LETTERS)[number];
export type ShaftLetter = (typeof SHAFT_LETTERS)[number];

/** A tolerance class such as H7 or g6: where the zone lies, and how wide it is. */
export type HoleClass = { of: 'hole'; letter: HoleLetter; grade: Grade };
export type ShaftClass = { of: 'shaft'; letter: ShaftLetter; grade: Grade };
export type ToleranceClass = HoleClass | ShaftClass;

const isHoleLetter = (text: string): text is HoleLetter => (HOLE_LETTERS as readonly string[]).includes(text);
const isShaftLetter = (text: string): text is ShaftLetter => (SHAFT_LETTERS as readonly string[]).includes(text);

/** "H7", "js6". */
export const classText = ({ letter, grade }: ToleranceClass): string => `${letter}${grade}`;

/**
 * Reads a tolerance class as it stands on a drawing. Capital letter: a hole; small letter: a shaft.
 *
 * @refuses iso286-not-a-class (no letter and number), iso286-letter-unknown, iso286-grade-unknown; each with what was written
 * @example readClass('H7') // { ok: true, value: { of: 'hole', letter: 'H', grade: 7 } }
 */
export function readClass(written: string): Outcome<ToleranceClass> {
  const found = /^([A-Za-z]{1,2})\s*(?:IT)?(\d{1,2})$/.exec(written.trim());
  if (!found) return refuse({ code: 'iso286-not-a-class', facts: { written } });
  const [, letter = '', digits = ''] = found;
  const isHole = isHoleLetter(letter);
  if (!isHole && !isShaftLetter(letter)) {
    const known = (/^[A-Z]/.test(letter) ? HOLE_LETTERS : SHAFT_LETTERS).join(' ');
    return refuse({ code: 'iso286-letter-unknown', facts: { written, letter, known } });
  }
  const grade = Number(digits);
  if (!isGrade(grade)) {
    const [finest, coarsest] = [GRADES[0], GRADES[GRADES.length - 1] ?? GRADES[0]];
    return refuse({ code: 'iso286-grade-unknown', facts: { written, grade, finest, coarsest } });
  }
  return ok(isHole ? { of: 'hole', letter, grade } : { of: 'shaft', letter: letter as ShaftLetter, grade });
}
