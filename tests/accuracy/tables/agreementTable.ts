import {
  type Agreement,
  type AgreementRun,
  additionClasses,
  additions,
  agreementClasses,
  agrees,
  compareWithPlain,
  share,
  variedClass,
} from '../agreement.ts';
import { compareSharing, sharedTerms, sharingMachines } from '../machinesAgreement.ts';
import { places, printTable } from '../printTable.ts';

/** Production against the plain model summed over its grids: additions switched off on both sides, then each on both. */
export function agreementTable(full: boolean): void {
  const rows: (string | number)[][] = [];
  let all: Agreement[] = [];
  for (const [parts, count] of agreementClasses(full)) {
    const runs = Array.from({ length: count }, (_, k) =>
      compareWithPlain(variedClass(parts, k), additions[0]!.settings),
    );
    rows.push(rowOf('none', parts, runs));
    all = all.concat(runs.flatMap((run) => run.parts));
  }
  for (const { title, settings } of additions.slice(1))
    for (const [parts, count] of additionClasses(full))
      rows.push(
        rowOf(
          title,
          parts,
          Array.from({ length: count }, (_, k) => compareWithPlain(variedClass(parts, 100 + k), settings)),
        ),
      );
  for (const { title, shared } of full ? sharedTerms : sharedTerms.slice(1, 2)) {
    const parts = Array.from({ length: full ? 8 : 1 }, (_, k) => 90 + k).flatMap((seed) =>
      compareSharing(sharingMachines(seed, 3, shared), shared),
    );
    rows.push(rowOf(title, 9, [{ parts }]));
  }
  printTable(
    'Production against plain model: hours apart in %, chance apart in points; median / 95 % / most of parts',
    ['additions', 'class of', 'parts', 'low', 'middle', 'high', 'chance', 'within 0.5 % and 0.2 points'],
    rows,
  );
  console.log(
    `  Asked of every part: 0.5 % and 0.2 points. Additions at zero: ${all.filter(agrees).length} of ${all.length} parts meet it.`,
  );
}

function rowOf(title: string, parts: number, runs: readonly Pick<AgreementRun, 'parts'>[]): (string | number)[] {
  const all = runs.flatMap((run) => run.parts);
  const spread = (key: keyof Agreement) =>
    [0.5, 0.95, 1]
      .map((of) =>
        places(
          100 *
            share(
              all.map((one) => one[key]),
              of,
            ),
          2,
        ),
      )
      .join(' / ');
  return [
    title,
    parts,
    all.length,
    spread('low'),
    spread('middle'),
    spread('high'),
    spread('chance'),
    places(all.filter(agrees).length / all.length, 3),
  ];
}
