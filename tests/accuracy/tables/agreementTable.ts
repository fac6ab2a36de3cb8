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
  withOneNeverRead,
} from '../agreement.ts';
import { compareSharing, sharedTerms, sharingMachines } from '../machinesAgreement.ts';
import { places, printTable } from '../printTable.ts';

/** Production against the plain model summed over its grids: additions switched off on both sides, then each on both. */
export function agreementTable(full: boolean): void {
  const rows: (string | number)[][] = [];
  let all: Agreement[] = [];
  for (const [parts, count] of agreementClasses(full)) {
    const runs = Array.from({ length: count }, (_, k) =>
      compareWithPlain(withOneNeverRead(variedClass(parts, k)), additions[0]!.settings),
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
          Array.from({ length: count }, (_, k) =>
            compareWithPlain(withOneNeverRead(variedClass(parts, 100 + k)), settings),
          ),
        ),
      );
  printTable(`Production against plain model: ${APART}`, ['additions', ...COLUMNS], rows);
  console.log(
    `  Asked of every part: 0.5 % and 0.2 points. Additions at zero: ${all.filter(agrees).length} of ${all.length} parts meet it.`,
  );
}

/** The same where parts of a machine share its harshness, the shop's word on it, the error of a visit; in full over 2,000 parts of each, for hours. */
export function sharingTable(full: boolean): void {
  const rows = sharedTerms.map(({ title, shared }) => {
    const parts = Array.from({ length: full ? 360 : 1 }, (_, k) =>
      compareSharing(sharingMachines(90 + k, 3, shared), shared),
    ).flat();
    return rowOf(title, 9, [{ parts }]);
  });
  printTable(`Production against plain model of machines: ${APART}`, ['shared', ...COLUMNS], rows);
}

const APART = 'hours apart in %, chance apart in points; median / 95 % / most of parts';
const COLUMNS = ['class of', 'parts', 'low', 'middle', 'high', 'chance', 'within 0.5 % and 0.2 points'];

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
