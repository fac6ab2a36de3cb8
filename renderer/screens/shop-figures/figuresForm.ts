import type { AskOf, ReplyOf } from '#core/contract/operation.ts';
import type { ShopFigure, shopFiguresRead, shopFiguresSave } from '#core/contract/shopFigures.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { valueText } from '#renderer/words/forecastSettingsWords.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

export type FiguresRead = ReplyOf<typeof shopFiguresRead>;
export type FiguresAsk = Omit<AskOf<typeof shopFiguresSave>, 'by'>;

/** The figures as typed. */
export type FiguresForm = {
  texts: Readonly<Record<string, string>>;
  barsText: string;
  rack: readonly RackRow[];
};
export type RackRow = { bar: string; lengthText: string; countText: string };

export const EMPTY_ROW: RackRow = { bar: '', lengthText: '', countText: '1' };

export const barsText = (barsMm: readonly number[]): string => barsMm.join(' ');

export const figuresForm = ({ figures, roundBarsMm, rack }: FiguresRead, writing: Writing): FiguresForm => ({
  texts: Object.fromEntries(figures.map(({ name, value }) => [name, valueText(value, writing)])),
  barsText: barsText(roundBarsMm),
  rack: rack.map(({ bar, lengthMm, count }) => ({
    ...{ bar, lengthText: String(lengthMm), countText: String(count) },
  })),
});

/** A figure's value as typed; null where it is none, or beyond what may be set. */
export function readFigure({ from, to, whole }: ShopFigure, text: string): number | null {
  const read = readNumber(text, 'mm');
  if (!read.ok || read.value < from || read.value > to || (whole && !Number.isInteger(read.value))) return null;
  return read.value;
}

/** Diameters parted by spaces, semicolons or a comma and a space; null: one cannot be read, or there are none. */
export function readBars(text: string): number[] | null {
  const read = text
    .split(/[;\s]+|,\s+/)
    .filter((word) => word !== '')
    .map((word) => readNumber(word, 'mm'));
  const values = read.flatMap((one) => (one.ok && one.value > 0 && one.value <= 1000 ? [one.value] : []));
  return values.length === read.length && values.length > 0 && values.length <= 200 ? values : null;
}

/** A row of the rack; null: it cannot stand. */
export function readRow({ bar, lengthText, countText }: RackRow): FiguresAsk['rack'][number] | null {
  const [length, count] = [readNumber(lengthText, 'mm'), readNumber(countText, 'mm')];
  if (bar.trim() === '' || !length.ok || !count.ok) return null;
  const sound =
    length.value > 0 &&
    length.value <= 20_000 &&
    Number.isInteger(count.value) &&
    count.value >= 1 &&
    count.value <= 1000;
  return sound ? { bar: bar.trim(), lengthMm: length.value, count: count.value } : null;
}

/** What the form stands for; null where something could not be read. */
export function figuresAsk(form: FiguresForm, figures: readonly ShopFigure[]): FiguresAsk | null {
  const changed: Record<string, number> = {};
  for (const figure of figures) {
    const value = readFigure(figure, form.texts[figure.name] ?? '');
    if (value === null) return null;
    if (value !== figure.usual) changed[figure.name] = value;
  }
  const roundBarsMm = readBars(form.barsText);
  const rack = form.rack.map(readRow);
  if (!roundBarsMm || rack.includes(null)) return null;
  return { changed, roundBarsMm, rack: rack.filter((row) => row !== null) };
}
