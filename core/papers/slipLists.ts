import type { ReactElement } from 'react';
import { cutToLines, textWidth } from '../axis/textWidth.ts';
import type { Slip } from '../contract/slip.ts';
import { A4_WIDTH_PT, block, HAIR, INK, MARGIN_PT, strong, text, view } from './elements.ts';
import type { SlipRoom } from './forecastSlipPaper.ts';
import { WEIGHT } from './paperFonts.ts';
import { sketchDrawing } from './sketchDrawing.ts';
import { slipLabels } from './slipLabels.ts';
import { doneLine, foundLine, type SlipLine, watchLines } from './slipLines.ts';
import { howToRead, thenDoText } from './slipWords.ts';

const COLUMN = { flexGrow: 1, flexBasis: 0 } as const;

/** A heading with its line under it. */
export const sectionHead = (words: string): ReactElement =>
  view(
    { borderBottomWidth: 0.8, borderBottomColor: INK, paddingBottom: 2, marginBottom: 2 },
    text({ sizePt: 12, weight: WEIGHT.head }, {}, words),
  );

/** What was found and what was done, side by side; where nothing was done, what was found takes both columns. */
export function foundAndDone(slip: Slip, mostLines: number): ReactElement | null {
  if (slip.found.length === 0 && slip.done.length === 0) return null;
  const found = slip.found.map((row) => foundLine(slip, row));
  const done = slip.done.map((row) => doneLine(slip, row));
  if (done.length === 0) return foundAlone(slip, found, mostLines);
  return block(
    { flexDirection: 'row', marginTop: 8, gap: COLUMNS_APART_PT },
    view(COLUMN, sectionHead(slipLabels.found(slip)), ...lines(found, mostLines), ...noLines(found)),
    view(COLUMN, sectionHead(slipLabels.done(slip)), ...lines(done, mostLines)),
  );
}

/** As many lines a column as the page has room for, read down the left one first. */
function foundAlone(slip: Slip, found: readonly SlipLine[], mostLines: number): ReactElement {
  const left = Math.min(mostLines, Math.ceil(found.length / 2));
  return block(
    { marginTop: 8 },
    sectionHead(slipLabels.found(slip)),
    view(
      { flexDirection: 'row', gap: COLUMNS_APART_PT },
      view(COLUMN, ...found.slice(0, left).map(listLine)),
      view(COLUMN, ...lines(found.slice(left), mostLines)),
    ),
  );
}

function lines(all: readonly SlipLine[], most: number): ReactElement[] {
  const left = all.length - most;
  if (left <= 0) return all.map(listLine);
  const more = text({ face: 'table', sizePt: 10 }, { paddingTop: 2, marginLeft: 30 }, slipLabels.more(left, 'lines'));
  return [...all.slice(0, most).map(listLine), more];
}

const noLines = (found: readonly SlipLine[]): ReactElement[] =>
  found.length > 0 ? [] : [text({ face: 'table', sizePt: 11 }, { paddingVertical: 3 }, slipLabels.nothingFound)];

const LINE_PT = 11.5;
const ITEMS_PT = 30;
const BEFORE_RIGHT_PT = 8;
const COLUMNS_APART_PT = 20;
const COLUMN_PT = (A4_WIDTH_PT - 2 * MARGIN_PT - COLUMNS_APART_PT) / 2;

/** in widths of the heavy face, of which this one takes 19 of 20 */
const roomBeside = (right: string): number =>
  (COLUMN_PT - ITEMS_PT - BEFORE_RIGHT_PT) / 0.95 - textWidth(right, LINE_PT);

const listLine = (its: SlipLine): ReactElement =>
  view(
    { flexDirection: 'row', borderBottomWidth: 0.5, borderBottomColor: HAIR, paddingVertical: 1.8 },
    text({ face: 'table', sizePt: LINE_PT, weight: WEIGHT.head, lines: 1 }, { width: ITEMS_PT }, its.items),
    text(
      { face: 'table', sizePt: LINE_PT, lines: 2 },
      { flexGrow: 1, flexBasis: 0, paddingRight: BEFORE_RIGHT_PT },
      cutToLines(its.label, roomBeside(its.right), LINE_PT, 2),
    ),
    text({ face: 'table', sizePt: LINE_PT, weight: its.strong ? WEIGHT.head : WEIGHT.text, lines: 1 }, {}, its.right),
  );

/** What would be done at that visit and what to watch till then; the assembly's drawing beside them where there is room. */
export function thenAndWatch(slip: Slip, room: SlipRoom): ReactElement {
  const then = thenDoText(slip);
  const sketch = room.drawing ? slip.sketch : null;
  const thenLines = [
    sectionHead(slipLabels.thenDo),
    text({ face: 'table', sizePt: 11.5, lines: room.cut ? 2 : 6 }, {}, then),
  ];
  return block(
    { flexDirection: 'row', marginTop: 6, gap: 20 },
    view(COLUMN, ...(then === '' ? [] : thenLines), ...watchText(slip, room)),
    ...(sketch === null ? [] : [sketchDrawing(sketch, { widthPt: 180, heightPt: 100 })]),
  );
}

function watchText(slip: Slip, { watchLines: most, cut }: SlipRoom): ReactElement[] {
  const all = watchLines(slip);
  if (all.length === 0) return [];
  const left = all.length - most;
  const shown = [...all.slice(0, most), ...(left > 0 ? [`${slipLabels.moreSentence(left)}.`] : [])].join(' ');
  return [
    text(
      { face: 'table', sizePt: 11, ...(cut && { lines: 2 }) },
      { marginTop: 4 },
      strong(slipLabels.watch(slip)),
      ` ${shown}`,
    ),
  ];
}

/** One in ten, nine in ten, and what solid, hatched and open mean. */
export const barsExplained = (slip: Slip): ReactElement | null =>
  slip.axis === null || slip.axis.rows.length === 0
    ? null
    : text({ face: 'table', sizePt: 10.5 }, { marginTop: 4 }, strong(slipLabels.howToRead), ` ${howToRead}`);
