import { sizeStep } from './sizeStep.ts';
import type { ShaftLetter } from './toleranceClass.ts';
import { type Grade, MAIN_STEPS_UP_TO_MM } from './toleranceGrade.ts';

/** Letters whose zone lies under the nominal size, and those whose zone lies over it; js lies about it. */
export type BelowLetter = 'd' | 'e' | 'f' | 'g' | 'h';
export type AboveLetter = 'k' | 'm' | 'n' | 'p' | 'r' | 's';

export const isBelow = (letter: ShaftLetter): letter is BelowLetter => ['d', 'e', 'f', 'g', 'h'].includes(letter);

/** Upper bounds of the finer steps of r and s [mm]: above 50 mm the main steps are parted. */
const FINE_STEPS_UP_TO_MM = [
  3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500,
] as const;

/**
 * Distance of the zone's nearer limit from the nominal size [micrometre]: down to es for d to h, up to ei for k to s.
 * @source ISO 286-1:2010, Tables 2 and 3, as open tables repeat them; see tests/reference/iso286/SOURCE.md
 */
const MAIN_UM: Readonly<Record<BelowLetter | 'k' | 'm' | 'n' | 'p', readonly number[]>> = {
  d: [20, 30, 40, 50, 65, 80, 100, 120, 145, 170, 190, 210, 230],
  e: [14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135],
  f: [6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68],
  g: [2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20],
  h: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  k: [0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5],
  m: [2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23],
  n: [4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40],
  p: [6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68],
};
const FINE_UM: Readonly<Record<'r' | 's', readonly number[]>> = {
  r: [...[10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68], ...[77, 80, 84, 94, 98, 108, 114, 126, 132]],
  s: [
    ...[14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108],
    ...[122, 130, 140, 158, 170, 190, 208, 232, 252],
  ],
};

/**
 * Upper deviation es of shafts d to h at a size; a hole of the same letter has EI of the same amount, upwards.
 *
 * @returns how far the zone lies under the nominal size [micrometre], 0 or more; null outside the tables
 * @source ISO 286-1:2010, Table 2
 * @checked tests/reference/iso286/limits.test.ts
 * @example distanceBelowUm(50, 'g') // 9
 */
export function distanceBelowUm(nominalMm: number, letter: BelowLetter): number | null {
  const step = sizeStep(nominalMm, MAIN_STEPS_UP_TO_MM);
  return step === null ? null : (MAIN_UM[letter][step] ?? null);
}

/**
 * Lower deviation ei of shafts k to s at a size, as tabulated. For k the table holds for IT4 to IT7; coarser k has ei = 0.
 *
 * @returns [micrometre], 0 or more; null outside the tables
 * @source ISO 286-1:2010, Table 3 and its note on k
 * @checked tests/reference/iso286/limits.test.ts
 * @example distanceAboveUm(70, 's', 6) // 59
 */
export function distanceAboveUm(nominalMm: number, letter: AboveLetter, grade: Grade): number | null {
  const fine = letter === 'r' || letter === 's';
  const step = sizeStep(nominalMm, fine ? FINE_STEPS_UP_TO_MM : MAIN_STEPS_UP_TO_MM);
  if (step === null) return null;
  if (letter === 'k' && grade > 7) return 0;
  return (fine ? FINE_UM[letter] : MAIN_UM[letter])[step] ?? null;
}
