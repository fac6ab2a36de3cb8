import { sizeStep } from './sizeStep.ts';

/** Standard tolerance grades that are computed here: IT5 (fine) to IT13 (coarse). */
export const GRADES = [5, 6, 7, 8, 9, 10, 11, 12, 13] as const;
export type Grade = (typeof GRADES)[number];

export const isGrade = (value: number): value is Grade => (GRADES as readonly number[]).includes(value);

/** Upper bounds of the main steps of sizes [mm]. */
export const MAIN_STEPS_UP_TO_MM = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500] as const;

/**
 * Standard tolerances [micrometre], one row a grade, one column a main step of sizes. IT4 is asked for only by {@link deltaUm}.
 * @source ISO 286-1:2010, Table 1 (IT4 to IT13), as open tables repeat it; see tests/reference/iso286/SOURCE.md
 */
const IT_UM: Readonly<Record<4 | Grade, readonly number[]>> = {
  4: [3, 4, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20],
  5: [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27],
  6: [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40],
  7: [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63],
  8: [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97],
  9: [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155],
  10: [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250],
  11: [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400],
  12: [100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630],
  13: [140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810, 890, 970],
};

/**
 * Width of the tolerance zone of a grade at a size.
 *
 * @param nominalMm over 0 up to 500 [mm]
 * @returns [micrometre], or null when the size is outside the tables
 * @source ISO 286-1:2010, Table 1
 * @checked tests/reference/iso286/limits.test.ts
 * @example toleranceUm(50, 7) // 25
 */
export function toleranceUm(nominalMm: number, grade: Grade): number | null {
  const step = sizeStep(nominalMm, MAIN_STEPS_UP_TO_MM);
  return step === null ? null : (IT_UM[grade][step] ?? null);
}

/**
 * What a hole of letters K to S is let out by, so that it fits a shaft one grade finer as that shaft letter fits its hole:
 *   delta = IT(n) - IT(n - 1), 0 up to 3 mm
 *
 * @param grade IT5 to IT8; coarser holes have no delta
 * @returns [micrometre], or null when the size is outside the tables
 * @source ISO 286-1:2010, Table 3, last columns
 * @checked tests/reference/iso286/limits.test.ts
 * @example deltaUm(50, 7) // 9
 */
export function deltaUm(nominalMm: number, grade: 5 | 6 | 7 | 8): number | null {
  const step = sizeStep(nominalMm, MAIN_STEPS_UP_TO_MM);
  if (step === null) return null;
  if (step === 0) return 0;
  const finer = (grade - 1) as 4 | 5 | 6 | 7;
  const [coarse, fine] = [IT_UM[grade][step], IT_UM[finer][step]];
  return coarse === undefined || fine === undefined ? null : coarse - fine;
}
