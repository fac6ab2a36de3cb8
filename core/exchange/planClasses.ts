import { type Planning, sameName } from './plan.ts';
import type { RowOf } from './readFolder.ts';
import { remarkAt } from './remark.ts';

/** What the trade says of part classes; what the record says already stays. */
export function planClasses(planning: Planning, rows: readonly RowOf<'classes.csv'>[]): void {
  const { plan, known, faults, notes } = planning;
  for (const row of rows) {
    const there = known.life.partClasses.find(({ name }) => sameName(name, row.part_class));
    const inFile = plan.classes.find(({ name }) => sameName(name, row.part_class));
    if (inFile?.row) faults.push(remarkAt(row.line, 'part_class', 'class-twice', 'each class once'));
    else if (!inOrder(planning, row)) continue;
    else if (there?.tradeWear) {
      if (!sameWear(there.tradeWear, row))
        notes.push(remarkAt(row.line, 'part_class', 'kept-as-in-record', wearText(there.tradeWear)));
    } else if (inFile) inFile.row = row;
    else plan.classes.push({ name: row.part_class, row });
  }
}

function inOrder({ faults }: Planning, row: RowOf<'classes.csv'>): boolean {
  const before = faults.length;
  if (row.wear_to_mm < row.wear_from_mm) {
    faults.push(remarkAt(row.line, 'wear_to_mm', 'out-of-order', `at least wear_from_mm ${row.wear_from_mm} mm`));
  }
  if (row.hours_to < row.hours_from) {
    faults.push(remarkAt(row.line, 'hours_to', 'out-of-order', `at least hours_from ${row.hours_from} h`));
  }
  return faults.length === before;
}

type Wear = { wearFromMm: number; wearToMm: number; hoursFrom: number; hoursTo: number };

const sameWear = (wear: Wear, row: RowOf<'classes.csv'>): boolean =>
  wear.wearFromMm === row.wear_from_mm &&
  wear.wearToMm === row.wear_to_mm &&
  wear.hoursFrom === row.hours_from &&
  wear.hoursTo === row.hours_to;

const wearText = ({ wearFromMm, wearToMm, hoursFrom, hoursTo }: Wear): string =>
  `${wearFromMm} to ${wearToMm} mm in ${hoursFrom} to ${hoursTo} h`;
