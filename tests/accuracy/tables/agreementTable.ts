import { compareWithPlain, plainSettings, share } from '../agreement.ts';
import { places, printTable } from '../printTable.ts';
import { simulatedClass, truths } from '../simulatedClass.ts';

/** Production against the plain model summed over its grids, additions switched off on both sides. */
export function agreementTable(full: boolean): void {
  const rows = (full ? [3, 10, 30, 100, 300] : [3, 10, 30]).map((parts) => {
    const runs = [0, 1].map((k) =>
      compareWithPlain(simulatedClass(7000 + 10 * parts + k, parts, truths[3 * k]!.truth), plainSettings),
    );
    const all = runs.flatMap((run) => run.parts);
    const both = (key: 'low' | 'middle' | 'high' | 'chance') =>
      `${places(
        100 *
          share(
            all.map((one) => one[key]),
            0.5,
          ),
        2,
      )} / ${places(
        100 *
          share(
            all.map((one) => one[key]),
            0.95,
          ),
        2,
      )}`;
    const seconds = (key: 'productionSeconds' | 'referenceSeconds') => runs.reduce((sum, run) => sum + run[key], 0);
    return [
      parts,
      all.length,
      both('low'),
      both('middle'),
      both('high'),
      both('chance'),
      places(seconds('productionSeconds'), 2),
      places(seconds('referenceSeconds'), 1),
    ];
  });
  printTable(
    'Production against plain model: hours apart in %, chance apart in points; median / 95 % of parts',
    ['parts in class', 'n', 'low', 'middle', 'high', 'chance', 'production s', 'plain s'],
    rows,
  );
}
