import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { fitOf } from '#core/iso286/isoFit.ts';
import { limitsOfSize } from '#core/iso286/limitsOfSize.ts';
import { distanceAboveUm, distanceBelowUm } from '#core/iso286/shaftDeviation.ts';
import { deltaUm, GRADES, toleranceUm } from '#core/iso286/toleranceGrade.ts';
import { orRefuse } from '#core/outcome.ts';

type Row = Record<string, string>;
const rowsOf = (file: string): Row[] =>
  Papa.parse<Row>(readFileSync(join(import.meta.dirname, file), 'utf8'), { header: true, skipEmptyLines: true }).data;

/** Deviations as "+25/0", the way a drawing writes them. */
function limits(nominalMm: number, toleranceClass: string): string {
  const { upperDeviationUm, lowerDeviationUm } = orRefuse(limitsOfSize(nominalMm, toleranceClass));
  const signed = (um: number) => (um > 0 ? `+${um}` : `${um}`);
  return `${signed(upperDeviationUm)}/${signed(lowerDeviationUm)}`;
}
const refusal = (nominalMm: number, toleranceClass: string) => {
  const outcome = limitsOfSize(nominalMm, toleranceClass);
  return outcome.ok ? null : outcome.refusal.code;
};

describe('limits of size', () => {
  test('all 784 pairs of limits come out as printed', () => {
    const rows = rowsOf('limits-check.csv');
    const wrong = rows
      .map(({ nominal_mm, class: of = '', upper_um, lower_um }) => {
        const found = orRefuse(limitsOfSize(Number(nominal_mm), of));
        const same = found.upperDeviationUm === Number(upper_um) && found.lowerDeviationUm === Number(lower_um);
        return same ? null : `${nominal_mm} ${of}: ${found.upperDeviationUm}/${found.lowerDeviationUm}`;
      })
      .filter((line) => line !== null);
    expect(wrong).toEqual([]);
    expect(rows).toHaveLength(784);
    expect(new Set(rows.map((row) => row.class)).size).toBe(28);
  });

  test('the standard tolerances are those of both tables, over one bound and up to the next', () => {
    const rows = rowsOf('it-grades.csv');
    for (const row of rows) {
      for (const grade of GRADES) {
        const printed = Number(row[`IT${grade}_um`]);
        expect([grade, toleranceUm(Number(row.up_to_incl_mm), grade)]).toEqual([grade, printed]);
        expect([grade, toleranceUm(Number(row.over_mm) + 0.001, grade)]).toEqual([grade, printed]);
      }
    }
    expect(rows).toHaveLength(13);
  });

  test('the fundamental deviations are those tabulated, and delta is the difference of two grades', () => {
    const rows = rowsOf('fundamental-deviations.csv');
    for (const row of rows) {
      for (const sizeMm of [Number(row.up_to_incl_mm), Number(row.over_mm) + 0.001]) {
        for (const letter of ['d', 'e', 'f', 'g', 'h'] as const)
          expect([letter, distanceBelowUm(sizeMm, letter)]).toEqual([letter, Math.abs(Number(row[`${letter}_es`]))]);
        for (const letter of ['m', 'n', 'p', 'r', 's'] as const)
          expect([letter, distanceAboveUm(sizeMm, letter, 6)]).toEqual([letter, Number(row[`${letter}_ei`])]);
        expect(distanceAboveUm(sizeMm, 'k', 6)).toBe(Number(row.k_ei_IT4toIT7));
        for (const grade of [5, 6, 7, 8] as const) expect(deltaUm(sizeMm, grade)).toBe(Number(row[`delta_IT${grade}`]));
      }
    }
    expect(rows).toHaveLength(25);
  });

  test('the worked examples of textbooks', () => {
    expect([limits(50, 'H7'), limits(50, 's6')]).toEqual(['+25/0', '+59/+43']);
    expect([limits(25, 'H7'), limits(25, 'g6'), limits(25, 'p6')]).toEqual(['+21/0', '-7/-20', '+35/+22']);
  });
});

describe('what public tables get wrong', () => {
  /** Every row of the file by its first words, and the test of it. */
  const PITFALLS: Record<string, () => void> = {
    'IT10 at 120-180': () => expect([toleranceUm(120.5, 10), toleranceUm(180, 10)]).toEqual([160, 160]),
    'E7 at 315-400': () => expect([limits(320, 'E7'), limits(400, 'E7')]).toEqual(['+182/+125', '+182/+125']),
    'f6 at 120-180': () => expect(limits(150, 'f6')).toBe('-43/-68'),
    'K6 at 6-10': () => expect([limits(8, 'K6'), limits(10, 'K6')]).toEqual(['+2/-7', '+2/-7']),
    'E8 at 80-120': () => expect(limits(100, 'E8')).toBe('+126/+72'),
    'f9 at 250-315': () => expect(limits(300, 'f9')).toBe('-56/-186'),
    'R10 at 18-30': () => expect(limits(25, 'R10')).toBe('-28/-112'),
    'r and s above 50 mm': () =>
      expect([60, 70, 90, 110].map((size) => distanceAboveUm(size, 's', 6))).toEqual([53, 59, 71, 79]),
    'K M N up to IT8 and P-ZC up to IT7 (holes)': () => expect(limits(50, 'P7')).toBe('-17/-42'),
    'M6 at 250-315': () =>
      expect([limits(250, 'M6'), limits(251, 'M6'), limits(315, 'M6'), limits(316, 'M6')]).toEqual([
        ...['-8/-37', '-9/-41', '-9/-41', '-10/-46'],
      ]),
    'N above IT8': () => expect([limits(50, 'N9'), limits(3, 'N9')]).toEqual(['0/-62', '-4/-29']),
    'k outside IT4-IT7': () => expect([limits(50, 'k7'), limits(50, 'k8')]).toEqual(['+27/+2', '+39/0']),
    'step boundary': () => expect([limits(50, 'H7'), limits(50.001, 'H7')]).toEqual(['+25/0', '+30/0']),
    'js/JS odd IT': () => expect([limits(50, 'JS7'), limits(50, 'js7')]).toEqual(['+12.5/-12.5', '+12.5/-12.5']),
    'K above IT8 over 3 mm': () => {
      expect(refusal(50, 'K9')).toBe('iso286-not-tabulated');
      expect([limits(3, 'K9'), limits(50, 'K8')]).toEqual(['0/-25', '+12/-27']);
    },
  };

  test.each(Object.entries(PITFALLS))('%s', (_, check) => check());

  test('every row of the file has its test', () => {
    expect(rowsOf('pitfalls.csv').map((row) => row.where)).toEqual(Object.keys(PITFALLS));
  });
});

describe('what is refused, by name', () => {
  test.each([
    [0, 'H7', 'iso286-size-outside'],
    [-20, 'H7', 'iso286-size-outside'],
    [500.01, 'H7', 'iso286-size-outside'],
    [Number.NaN, 'H7', 'iso286-size-outside'],
    [50, 'H4', 'iso286-grade-unknown'],
    [50, 'g14', 'iso286-grade-unknown'],
    [50, 'C11', 'iso286-letter-unknown'],
    [50, 'cd8', 'iso286-letter-unknown'],
    [50, 'Js7', 'iso286-letter-unknown'],
    [50, 'ZC7', 'iso286-letter-unknown'],
    [50, 't6', 'iso286-letter-unknown'],
    [50, 'X', 'iso286-not-a-class'],
    [50, '', 'iso286-not-a-class'],
  ])('%f %s: %s', (nominalMm, toleranceClass, code) => {
    expect(refusal(nominalMm, toleranceClass)).toBe(code);
  });
});

describe('a hole and a shaft together', () => {
  const fit = (written: string) => {
    const { kind, leastClearanceUm, mostClearanceUm, feel } = orRefuse(fitOf(written));
    return [kind, leastClearanceUm, mostClearanceUm, feel];
  };

  test('clearance, transition and interference by their limits', () => {
    expect(fit('50 H7/g6')).toEqual(['clearance', 9, 50, 'slides freely']);
    expect(fit('50 H9/d9')).toEqual(['clearance', 80, 204, 'loose']);
    expect(fit('50 H8/f7')).toEqual(['clearance', 25, 89, 'runs freely']);
    expect(fit('50 H8/e8')).toEqual(['clearance', 50, 128, 'runs easily']);
    expect(fit('50 H7/h6')).toEqual(['clearance', 0, 41, 'pushes in by hand']);
    expect(fit('50 H7/k6')).toEqual(['transition', -18, 23, 'taps in']);
    expect(fit('50 H7/n6')).toEqual(['transition', -33, 8, 'drives in']);
    expect(fit('50 H7/p6')).toEqual(['interference', -42, -1, 'presses in']);
    expect(fit('50 H7/s6')).toEqual(['interference', -59, -18, 'presses in hard']);
  });

  test('delta does what it is for: X(n)/h(n-1) has the very clearance of H(n)/x(n-1)', () => {
    for (const sizeMm of [4, 10, 25, 50, 65, 70, 119, 130, 190, 240, 300, 380, 500])
      for (const letter of ['k', 'm', 'n', 'p', 'r', 's'])
        for (const grade of letter < 'o' ? [6, 7, 8] : [6, 7]) {
          // k of IT8 and coarser is 0, so its hole has no like; M6 over 250 up to 315 is the standard's own exception
          if (letter === 'm' && grade === 6 && sizeMm === 300) continue;
          const onHole = fit(`${sizeMm} H${grade}/${letter}${grade - 1}`);
          const onShaft = fit(`${sizeMm} ${letter.toUpperCase()}${grade}/h${grade - 1}`);
          expect([sizeMm, letter, grade, ...onShaft]).toEqual([sizeMm, letter, grade, ...onHole]);
        }
  });

  test('H7/p6 up to 3 mm may still have clearance', () => {
    expect(fit('3 H7/p6')).toEqual(['transition', -12, 4, 'drives in']);
  });

  test('a fit reads the same however it is spaced, marked or turned round', () => {
    for (const written of ['50 H7/g6', 'Ø50H7/g6', '50 g6/H7', ' 50 mm H7 / g6 ', '50 H7-g6', '50,0 H7 g6'])
      expect([written, fitOf(written)]).toEqual([written, fitOf('50 H7/g6')]);
  });

  test.each(['H7/g6', '50', '50 H7', '50 H7/H8', '50 g6/h6', '50 H7/g6/k6', 'fifty H7/g6', '1.234,5 H7/g6'])(
    '%s is no fit',
    (written) => {
      const outcome = fitOf(written);
      expect(outcome.ok ? null : outcome.refusal.code).toBe('iso286-not-a-fit');
    },
  );

  test('a size comes out without the dust of binary fractions', () => {
    expect(orRefuse(limitsOfSize(40.1, 'H7'))).toMatchObject({ largestMm: 40.125, smallestMm: 40.1 });
    expect(orRefuse(limitsOfSize(50, 's6'))).toMatchObject({ largestMm: 50.059, smallestMm: 50.043 });
  });
});
