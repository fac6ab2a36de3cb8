import { createElement, Fragment, type ReactElement } from 'react';
import { block, carriedOver, HAIR, INK, notAlone, text, view } from '../elements.ts';
import { WEIGHT } from '../paperFonts.ts';

/** A column: its head, its share of the width, and where its words stand. An empty box is drawn to be ticked or written in. */
export type Column = { head: string; share: number; align?: 'right'; box?: true };

/**
 * A heading and a table under it; rows are never split over two pages, the heading goes with the first row, and the heads of
 * the columns stand again where the table goes on.
 */
export function tableSection(
  head: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  empty = '',
): ReactElement {
  if (rows.length === 0)
    return block({ marginTop: 10 }, sectionHead(head), text({ sizePt: 11.5 }, { paddingTop: 3 }, empty));
  // side by side on the page: the heading alone is moved on with what it heads
  return createElement(
    Fragment,
    null,
    notAlone(FIRST_ROW_PT, { marginTop: 10 }, sectionHead(head)),
    view({}, heads(columns), ...rows.map((cells) => row(columns, cells))),
  );
}

export const sectionHead = (head: string): ReactElement =>
  text(
    { sizePt: 12.5, weight: WEIGHT.head },
    { borderBottomWidth: 1.2, borderBottomColor: INK, paddingBottom: 2 },
    head,
  );

/** Heads and a row of some lines. */
const FIRST_ROW_PT = 80;

const heads = (columns: readonly Column[]): ReactElement =>
  carriedOver(
    { flexDirection: 'row' },
    ...columns.map(({ head, share, align }, place) =>
      view(
        { flexGrow: share, flexBasis: 0, paddingRight: gapAfter(columns, place), paddingTop: 2 },
        text({ face: 'table', sizePt: 9.5, weight: WEIGHT.label }, { textAlign: align ?? 'left' }, head),
      ),
    ),
  );

const row = (columns: readonly Column[], cells: readonly string[]): ReactElement =>
  block(
    { flexDirection: 'row', borderBottomWidth: 0.5, borderBottomColor: HAIR, paddingVertical: 4 },
    ...columns.map((column, place) =>
      cell(column, cells[place] ?? '', hasBox(columns, cells), gapAfter(columns, place)),
    ),
  );

/** Words of one column are not read on into the next; the last ends where the rules end [pt]. */
const gapAfter = (columns: readonly Column[], place: number): number => (place < columns.length - 1 ? 12 : 0);

/** Some cell of the row is still to be written in. */
const hasBox = (columns: readonly Column[], cells: readonly string[]): boolean =>
  columns.some(({ box }, place) => box && (cells[place] ?? '') === '');

const BOX_PT = 20;
const WORDS_PT = 11.5;
const LINE_HEIGHT = 1.2;

/** Words begin at the top of their row; beside a box, their first line stands in its middle. */
const cell = ({ share, align, box }: Column, words: string, besideBox: boolean, gapPt: number): ReactElement =>
  view(
    { flexGrow: share, flexBasis: 0, paddingRight: gapPt },
    box && words === ''
      ? view({ height: BOX_PT, borderWidth: 0.9, borderColor: INK })
      : text(
          { face: 'table', sizePt: WORDS_PT },
          {
            textAlign: align ?? 'left',
            lineHeight: LINE_HEIGHT,
            paddingTop: besideBox ? (BOX_PT - LINE_HEIGHT * WORDS_PT) / 2 : 0,
          },
          words,
        ),
  );

/** A heading and sentences under it. */
export const sentences = (head: string, lines: readonly string[]): ReactElement =>
  view(
    { marginTop: 10 },
    block({}, sectionHead(head), ...lines.slice(0, 1).map(sentence)),
    ...lines.slice(1).map(sentence),
  );

const sentence = (words: string): ReactElement => block({}, text({ sizePt: 11.5 }, { paddingTop: 3 }, words));

/** A sentence by itself, before what it holds for. */
export const remark = (words: string): ReactElement => text({ face: 'table', sizePt: 11 }, { marginTop: 6 }, words);
