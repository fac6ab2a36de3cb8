/** A table of plain text: columns as wide as they need, numbers to the right. */
export function printTable(
  title: string,
  head: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): void {
  const cells = [head, ...rows.map((row) => row.map(String))];
  const widths = head.map((_, column) => Math.max(...cells.map((row) => (row[column] ?? '').length)));
  console.log(`\n${title}`);
  for (const row of cells)
    console.log(
      `  ${row.map((cell, column) => (column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!))).join('  ')}`,
    );
}

/** A number with so many places behind the point. */
export const places = (value: number, count: number): string => value.toFixed(count);
