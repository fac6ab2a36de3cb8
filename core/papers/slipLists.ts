import type { ReactElement } from 'react';
import type { Slip } from '../contract/slip.ts';
import { block, HAIR, INK, strong, text, view } from './elements.ts';
import { WEIGHT } from './paperFonts.ts';
import { sketchDrawing } from './sketchDrawing.ts';
import { doneLine, foundLine, howToRead, type SlipLine, slipLabels, thenDoText, watchLines } from './slipWords.ts';

const COLUMN = { flexGrow: 1, flexBasis: 0 } as const;

/** A heading with its line under it. */
export const sectionHead = (words: string): ReactElement =>
  view(
    { borderBottomWidth: 0.8, borderBottomColor: INK, paddingBottom: 2, marginBottom: 2 },
    text({ sizePt: 12, weight: WEIGHT.head }, {}, words),
  );

/** What was found and what was done, side by side, on the same item numbers. */
export function foundAndDone(slip: Slip, mostLines: number): ReactElement | null {
  if (slip.found.length === 0 && slip.done.length === 0) return null;
  const found = slip.found.map((row) => foundLine(slip, row));
  const done = slip.done.map((row) => doneLine(slip, row));
  return block(
    { flexDirection: 'row', marginTop: 8, gap: 20 },
    column(slipLabels.found(slip), found, slipLabels.nothingFound, mostLines),
    column(slipLabels.done(slip), done, slipLabels.nothingDone, mostLines),
  );
}

function column(head: string, lines: readonly SlipLine[], none: string, most: number): ReactElement {
  const shown = lines.slice(0, most);
  const left = lines.length - shown.length;
  return view(
    COLUMN,
    sectionHead(head),
    ...shown.map(listLine),
    ...(lines.length === 0 ? [text({ face: 'table', sizePt: 11 }, { paddingVertical: 3 }, none)] : []),
    ...(left > 0
      ? [text({ face: 'table', sizePt: 10 }, { paddingTop: 3, marginLeft: 30 }, slipLabels.more(left, 'lines'))]
      : []),
  );
}

const listLine = (its: SlipLine): ReactElement =>
  view(
    { flexDirection: 'row', borderBottomWidth: 0.5, borderBottomColor: HAIR, paddingVertical: 1.8 },
    text({ face: 'table', sizePt: 11.5, weight: WEIGHT.head, lines: 1 }, { width: 30 }, its.items),
    text({ face: 'table', sizePt: 11.5, lines: 2 }, { flexGrow: 1, flexBasis: 0, paddingRight: 8 }, its.label),
    text({ face: 'table', sizePt: 11.5, weight: its.strong ? WEIGHT.head : WEIGHT.text, lines: 1 }, {}, its.right),
  );

/**
 * What would be done at that visit, and what to watch till then: side by side, or one above the other with the
 * assembly's drawing beside them.
 */
export function thenAndWatch(slip: Slip, mostWatch: number, drawing: boolean): ReactElement | null {
  const then = thenDoText(slip);
  const watch = watchLines(slip);
  const sketch = drawing ? slip.sketch : null;
  const parts = [
    ...(then === '' ? [] : [view({}, sectionHead(slipLabels.thenDo), thenText(then))]),
    ...(watch.length === 0 ? [] : [view({}, sectionHead(slipLabels.watch), ...watchList(watch, mostWatch))]),
  ];
  if (parts.length === 0 && sketch === null) return null;
  if (sketch === null) {
    return block({ flexDirection: 'row', marginTop: 4, gap: 20 }, ...parts.map((part) => view(COLUMN, part)));
  }
  return block(
    { flexDirection: 'row', marginTop: 4, gap: 20 },
    view({ ...COLUMN, gap: 6 }, ...parts),
    sketchDrawing(sketch, { widthPt: 190, heightPt: 130 }),
  );
}

const thenText = (words: string): ReactElement => text({ face: 'table', sizePt: 11.5, lines: 6 }, {}, words);

/** One in ten, nine in ten, and what solid, hatched and open mean. */
export const barsExplained = (slip: Slip): ReactElement | null =>
  slip.axis === null || slip.axis.rows.length === 0
    ? null
    : block({ marginTop: 8 }, text({ face: 'table', sizePt: 10.5 }, {}, strong(slipLabels.howToRead), ` ${howToRead}`));

function watchList(lines: readonly string[], most: number): ReactElement[] {
  const shown = lines.slice(0, most);
  const left = lines.length - shown.length;
  return [
    ...shown.map((words) => text({ face: 'table', sizePt: 11.5, lines: 2 }, { paddingTop: 1.5 }, words)),
    ...(left > 0 ? [text({ face: 'table', sizePt: 10 }, { paddingTop: 1.5 }, slipLabels.more(left, 'lines'))] : []),
  ];
}
