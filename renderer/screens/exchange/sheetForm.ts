import type { exchangeLookAtSheet, SheetMapping } from '#core/contract/exchange.ts';
import type { ReplyOf } from '#core/contract/operation.ts';

export type SeenSheet = ReplyOf<typeof exchangeLookAtSheet>;
export type SeenColumn = SeenSheet['columns'][number];

/** Where one of our columns comes from, as chosen so far: a column of the sheet, one word for every row, or nowhere. */
export type ColumnForm = {
  column: string;
  place: number | 'every-row' | null;
  fixed: string;
  unit: 'mm' | 'in' | 'h' | null;
  how: 'same' | 'alias' | 'near' | 'remembered' | 'chosen' | null;
};

export type SheetForm = {
  columns: ColumnForm[];
  dateOrder: 'ymd' | 'dmy' | 'mdy' | null;
  decimalMark: '.' | ',' | null;
};

/** As the program takes it to be, for a person to confirm. */
export const sheetForm = (seen: SeenSheet): SheetForm => ({
  columns: seen.columns.map(({ column, place, fixed, sheetUnit, unit, how }) => ({
    column,
    place: place ?? (fixed === '' ? null : 'every-row'),
    fixed,
    unit: unit === null ? null : (sheetUnit ?? unit),
    how,
  })),
  dateOrder: seen.dateOrder,
  decimalMark: seen.decimalMark,
});

export const withColumn = (form: SheetForm, column: string, changed: Partial<ColumnForm>): SheetForm => ({
  ...form,
  columns: form.columns.map((one) => (one.column === column ? { ...one, ...changed } : one)),
});

const isGiven = ({ place, fixed }: ColumnForm): boolean => place !== null && (place !== 'every-row' || fixed !== '');

/** Columns the rows cannot do without and that come from nowhere yet. */
export const missingColumns = (seen: SeenSheet, form: SheetForm): string[] =>
  seen.columns.flatMap(({ column, needed }, index) => {
    const chosen = form.columns[index];
    return needed && chosen && !isGiven(chosen) ? [column] : [];
  });

/** Heads of the sheet that nothing is taken from. */
export const headsLeft = (seen: SeenSheet, form: SheetForm): string[] =>
  seen.heads
    .filter(({ place, head }) => head !== '' && !form.columns.some((column) => column.place === place))
    .map(({ head }) => head);

/** The mapping, once everything is said; null while something is still asked. */
export function mappingOf(seen: SeenSheet, form: SheetForm): SheetMapping | null {
  const { dateOrder, decimalMark } = form;
  if (dateOrder === null || decimalMark === null || missingColumns(seen, form).length > 0) return null;
  const columns = form.columns.filter(isGiven).map(({ column, place, fixed, unit }) => ({
    column,
    place: place === 'every-row' ? null : place,
    fixed: place === 'every-row' ? fixed : '',
    unit,
  }));
  return { columns, dateOrder, decimalMark, headRow: seen.headRow };
}
