import { type Outcome, ok, refuse } from '../outcome.ts';
import { type AboveLetter, distanceAboveUm, distanceBelowUm, isBelow } from './shaftDeviation.ts';
import { LARGEST_NOMINAL_MM } from './sizeStep.ts';
import { classText, type HoleClass, readClass, type ShaftLetter, type ToleranceClass } from './toleranceClass.ts';
import { deltaUm, toleranceUm } from './toleranceGrade.ts';

/** The two sizes a part may have, and how far they lie from the nominal size. */
export type LimitsOfSize = {
  nominalMm: number;
  /** "H7" */
  toleranceClass: string;
  of: 'hole' | 'shaft';
  /** upper and lower deviation from the nominal size [micrometre]; half micrometres are kept (JS, js) */
  upperDeviationUm: number;
  lowerDeviationUm: number;
  /** the sizes themselves [mm] */
  largestMm: number;
  smallestMm: number;
};

const UM_PER_MM = 1000;

/** Nominal size and deviation as one size, without the dust of binary fractions (kept: a ten-thousandth of a micrometre). */
const sizeMm = (nominalMm: number, deviationUm: number): number =>
  Number((nominalMm + deviationUm / UM_PER_MM).toFixed(7));

/**
 * Limits of size of a hole or shaft, worked out by the standard's rules from its two base tables.
 *
 * @param nominalMm over 0 up to 500 [mm]
 * @param written "H7", "g6", or the class read from it
 * @refuses iso286-size-outside; iso286-not-tabulated (K coarser than IT8 over 3 mm); what {@link readClass} refuses
 * @source ISO 286-1:2010, clauses 4.1 and 4.3 with Tables 1 to 3
 * @checked tests/reference/iso286/limits.test.ts
 * @example orRefuse(limitsOfSize(50, 'H7')).largestMm // 50.025
 */
export function limitsOfSize(nominalMm: number, written: string | ToleranceClass): Outcome<LimitsOfSize> {
  const read = typeof written === 'string' ? readClass(written) : ok(written);
  if (!read.ok) return read;
  const of = read.value;
  const toleranceClass = classText(of);
  const widthUm = toleranceUm(nominalMm, of.grade);
  if (widthUm === null)
    return refuse({ code: 'iso286-size-outside', facts: { nominalMm, largestMm: LARGEST_NOMINAL_MM } });
  const lowerDeviationUm = of.of === 'hole' ? lowerOfHoleUm(nominalMm, of, widthUm) : lowerOfShaftUm(nominalMm, of);
  if (lowerDeviationUm === null) return refuse({ code: 'iso286-not-tabulated', facts: { nominalMm, toleranceClass } });
  const upperDeviationUm = lowerDeviationUm + widthUm;
  return ok({
    nominalMm,
    toleranceClass,
    of: of.of,
    upperDeviationUm,
    lowerDeviationUm,
    largestMm: sizeMm(nominalMm, upperDeviationUm),
    smallestMm: sizeMm(nominalMm, lowerDeviationUm),
  });
}

/**
 * Lower deviation of a shaft: d to h hang from es, k to s stand on ei, js lies half about the nominal size.
 *   d to h: ei = es - IT;  js: ei = -IT / 2
 * @source ISO 286-1:2010, 4.3.2 and Tables 2 and 3
 */
function lowerOfShaftUm(nominalMm: number, { letter, grade }: Extract<ToleranceClass, { of: 'shaft' }>): number | null {
  const widthUm = toleranceUm(nominalMm, grade);
  if (widthUm === null) return null;
  if (letter === 'js') return -widthUm / 2;
  if (!isBelow(letter)) return distanceAboveUm(nominalMm, letter, grade);
  const below = distanceBelowUm(nominalMm, letter);
  return below === null ? null : -below - widthUm;
}

/**
 * Lower deviation of a hole: D to H stand on EI, the shaft's es turned over; K to S hang from ES.
 *   D to H: EI = -es;  JS: EI = -IT / 2;  K to S: EI = ES - IT
 * @source ISO 286-1:2010, 4.3.2 and Tables 2 and 3
 */
function lowerOfHoleUm(nominalMm: number, of: HoleClass, widthUm: number): number | null {
  if (of.letter === 'JS') return -widthUm / 2;
  const shaft = of.letter.toLowerCase() as Exclude<ShaftLetter, 'js'>;
  if (isBelow(shaft)) return distanceBelowUm(nominalMm, shaft);
  const upper = upperOfHoleUm(nominalMm, of, shaft);
  return upper === null ? null : upper - widthUm;
}

/**
 * Upper deviation ES of holes K to S: the shaft's ei turned over, let out by delta while the grade is fine.
 *   ES = -ei + delta for K, M, N up to IT8 and P, R, S up to IT7;  ES = -ei for coarser M, P, R, S
 * Told apart in the tables: N coarser than IT8 over 3 mm has ES = 0; K coarser than IT8 over 3 mm is not tabulated;
 * M6 over 250 up to 315 mm has ES = -9, not -11.
 * @source ISO 286-1:2010, Table 3 and its notes; coarse K, M, N and M6 from memory, an open table agrees on N and M6
 */
function upperOfHoleUm(nominalMm: number, { letter, grade }: HoleClass, shaft: AboveLetter): number | null {
  // the hole's rule turns over the shaft's tabulated value, at a grade where k has one
  const ei = distanceAboveUm(nominalMm, shaft, 5);
  if (ei === null) return null;
  if (letter === 'M' && grade === 6 && nominalMm > 250 && nominalMm <= 315) return -9;
  const deltaUpTo = letter === 'K' || letter === 'M' || letter === 'N' ? 8 : 7;
  if (grade <= deltaUpTo) {
    const delta = deltaUm(nominalMm, grade as 5 | 6 | 7 | 8);
    return delta === null ? null : delta - ei;
  }
  const small = nominalMm <= 3;
  if (letter === 'N' && !small) return 0;
  if (letter === 'K' && !small) return null;
  return 0 - ei;
}
