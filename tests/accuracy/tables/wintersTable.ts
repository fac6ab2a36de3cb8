import { places, printTable } from '../printTable.ts';
import { CELLS, type CellResult, winterCells } from '../winter-shops/winterCells.ts';

/** The plan of winters against three rules of thumb, over 20 winters of invented shops that wear by a gamma process. */
export async function wintersTable(full: boolean): Promise<void> {
  const seeds = full ? [1, 2] : [1];
  const machines = full ? 12 : 6;
  // the corners and the middle one, where it is not the full count
  const cells = full ? CELLS : CELLS.filter((_, place) => place % 4 === 0);
  printWinterCells(await winterCells(cells, seeds, machines), seeds.length, machines, 20);
}

export function printWinterCells(cells: readonly CellResult[], shops: number, machines: number, winters: number): void {
  printTable(
    `Plan of winters, ${winters} winters, ${shops} shop(s) of ${machines} hitches of 8 parts, bench hours; breakdowns in brackets`,
    [
      ...['breakdown', 'strip-down', '(a) when broken', '(b) every 5500 h', '(c) own middle', 'plan'],
      ...['of the best', 'cover', 'sizes', ''],
    ],
    cells.map((cell) => [
      `${cell.breakdownCost} h`,
      `${places(100 * cell.stripDownShare, 0)} %`,
      `${places(cell.whenBroken, 0)} (${cell.breakdowns.whenBroken})`,
      `${places(cell.everyHours, 0)} (${cell.breakdowns.everyHours})`,
      `${places(cell.atOwnMiddle, 0)} (${cell.breakdowns.atOwnMiddle})`,
      `${places(cell.plan, 0)} (${cell.breakdowns.plan})`,
      `${places(100 * cell.ofBest, 0)} %`,
      places(cell.cover, 2),
      cell.found,
      lossOf(cell),
    ]),
  );
}

function lossOf({ ofBest, breakdowns, cover }: CellResult): string {
  const losses = [
    ofBest >= 1 && 'dearer than the best of the three',
    breakdowns.plan > breakdowns.everyHours && 'more breakdowns than (b)',
    (cover < 0.76 || cover > 0.84) && 'band off',
  ].filter(Boolean);
  return losses.length > 0 ? `LOSS: ${losses.join(', ')}` : '';
}
