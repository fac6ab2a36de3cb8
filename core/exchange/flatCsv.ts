import Papa from 'papaparse';

type Flat = Record<string, string | number | boolean | null>;

/**
 * Rows of JSON as CSV: an object's fields become columns of their own, `hoursLeft_low`; a list becomes one cell, its
 * entries parted by "; ". Text that a spreadsheet would take for a formula is kept inert.
 *
 * @param rows their columns alike
 * @param columns what stands in the heading when there are no rows; with rows these name their columns themselves
 */
export const flatCsv = (rows: readonly object[], columns: readonly string[]): string =>
  rows.length === 0
    ? `${Papa.unparse([columns], { newline: '\n' })}\n`
    : `${Papa.unparse(
        rows.map((row) => flat(row)),
        { escapeFormulae: true, newline: '\n' },
      )}\n`;

function flat(row: object, under = ''): Flat {
  const cells: Flat = {};
  for (const [name, value] of Object.entries(row)) {
    if (Array.isArray(value)) cells[under + name] = value.map(entryText).join('; ');
    else if (value !== null && typeof value === 'object') Object.assign(cells, flat(value, `${under}${name}_`));
    else cells[under + name] = value;
  }
  return cells;
}

const entryText = (entry: unknown): string =>
  entry !== null && typeof entry === 'object' ? Object.values(entry).filter(Boolean).join(' ') : String(entry);
