/** One thing wrong, or odd, in what was brought in: where it is, what stands there, what was expected. */
export type Remark = {
  file: string;
  /** line of the file, the heading is 1; null: the whole file */
  row: number | null;
  column: string | null;
  value: string;
  code: string;
  expected: string;
  facts: Record<string, string | number | boolean | null>;
};

/** A line of a file as it stands there, for remarks to point at. */
export type Line = {
  file: string;
  row: number;
  cells: readonly string[];
  /** column name -> place among the cells; one map a file */
  columns: ReadonlyMap<string, number>;
};

export const cellText = (line: Line, column: string): string => {
  const place = line.columns.get(column);
  return place === undefined ? '' : (line.cells[place] ?? '').trim();
};

const LONGEST_VALUE = 200;

export const remarkAt = (
  line: Line,
  column: string | null,
  code: string,
  expected: string,
  facts: Remark['facts'] = {},
): Remark => ({
  file: line.file,
  row: line.row,
  column,
  value: column === null ? '' : cellText(line, column).slice(0, LONGEST_VALUE),
  code,
  expected,
  facts,
});

export const remarkOnFile = (
  file: string,
  code: string,
  expected: string,
  about: { row?: number; column?: string; value?: string; facts?: Remark['facts'] } = {},
): Remark => ({
  file,
  row: about.row ?? null,
  column: about.column ?? null,
  value: (about.value ?? '').slice(0, LONGEST_VALUE),
  code,
  expected,
  facts: about.facts ?? {},
});
