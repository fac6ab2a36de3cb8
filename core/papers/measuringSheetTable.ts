import { G } from '@react-pdf/renderer';
import { createElement, type ReactElement } from 'react';
import { shortenMiddle, textWidth } from '../axis/textWidth.ts';
import type { MeasuringSheet } from '../contract/measuringSheet.ts';
import { lengthUnit } from '../words/quantityText.ts';
import { A4_WIDTH_PT, circle, INK, label, MARGIN_PT, PAPER, picture, text, view } from './elements.ts';
import {
  gaugeText,
  lastFigure,
  limitsText,
  newSizeText,
  pointName,
  type SheetPoint,
  sheetWords as words,
} from './measuringSheetWords.ts';
import { WEIGHT } from './paperFonts.ts';

/** A box is written in with a thick pencil and a thicker thumb: 42 pt is 14.8 mm, and none is less than 9 mm high. */
const ROW_PT = 42;
const HEAD_PT = 46;
const RENEWED_PT = 18;
const TICK_PT = 15.5;
const GAP_PT = 3;
/** so many boxes side by side; more stations go on in a second line */
const MOST_BOXES = 3;
const RING_PT = 18;

/** Where the columns stand: the more boxes a row needs, the narrower the name. */
export type SheetColumns = { boxes: number; namePt: number; foundPt: number; leftPt: number };

export function sheetColumns(points: readonly SheetPoint[]): SheetColumns {
  const boxes = Math.min(MOST_BOXES, Math.max(1, ...points.map(({ stations }) => stations.length)));
  const [foundPt, leftPt] = boxes === 1 ? [62, 54] : boxes === 2 ? [52, 46] : [50, 38];
  const seenPt = RENEWED_PT + TICK_PT * words.seenKinds.length;
  const namePt = A4_WIDTH_PT - 2 * MARGIN_PT - boxes * (foundPt + leftPt) - seenPt - 2 * GAP_PT;
  return { boxes, namePt, foundPt, leftPt };
}

export const tableHeadPt = HEAD_PT;

/** Column heads; stand over the rows on every page. */
export const tableHead = (sheet: MeasuringSheet, { boxes, namePt, foundPt, leftPt }: SheetColumns): ReactElement =>
  view(
    { height: HEAD_PT, flexDirection: 'row', alignItems: 'flex-end', borderBottomWidth: 1.2, borderBottomColor: INK },
    headCell(namePt, words.point(lengthUnit(sheet.shop.writing)), ''),
    headCell(boxes * foundPt + GAP_PT, words.asFound, words.last(sheet)),
    headCell(boxes * leftPt + GAP_PT, words.asLeft, ''),
    standing(RENEWED_PT, words.renewed),
    ...words.seenKinds.map((kind) => standing(TICK_PT, kind)),
  );

const headCell = (width: number, head: string, under: string): ReactElement =>
  view(
    { width, paddingBottom: 3, paddingRight: 4 },
    text({ face: 'table', sizePt: 11, weight: WEIGHT.head, lines: 1 }, {}, head),
    ...(under === '' ? [] : [text({ face: 'table', sizePt: 8.5, lines: 2 }, { lineHeight: 1.1 }, under)]),
  );

/** A word that stands upright: its column is no wider than a tick. */
const standing = (width: number, word: string): ReactElement =>
  picture(
    { width, height: HEAD_PT, widthPt: width },
    createElement(
      G,
      { transform: `translate(${width / 2 + 3.4}, ${HEAD_PT - 4}) rotate(-90)` },
      label(0, 0, word, { sizePx: 10, weight: WEIGHT.label }),
    ),
  );

export const pointRowPt = (point: SheetPoint): number => ROW_PT * linesOf(point);

const linesOf = ({ stations }: SheetPoint): number => Math.max(1, Math.ceil(stations.length / MOST_BOXES));

/** A measuring point: its ring and name, a box a station as found and as left, and what may be ticked. */
export function pointRow(sheet: MeasuringSheet, point: SheetPoint, columns: SheetColumns): ReactElement {
  const { writing } = sheet.shop;
  const last = point.stations.map(({ lastSizeMm }) =>
    lastSizeMm === null ? '' : lastFigure(lastSizeMm, point, writing),
  );
  const names = point.stations.map(({ station }) => station);
  return view(
    {
      height: pointRowPt(point),
      flexDirection: 'row',
      alignItems: 'center',
      borderBottomWidth: 0.5,
      borderBottomColor: INK,
    },
    nameCell(sheet, point, columns.namePt),
    boxes(columns.boxes, columns.foundPt, names, last),
    boxes(
      columns.boxes,
      columns.leftPt,
      names,
      names.map(() => ''),
    ),
    tick(RENEWED_PT),
    seenTicks(),
  );
}

/** One for each kind of finding, parted from what was measured. */
const seenTicks = (): ReactElement =>
  view(
    { height: '100%', flexDirection: 'row', alignItems: 'center', borderLeftWidth: 0.5, borderLeftColor: INK },
    ...words.seenKinds.map(() => tick(TICK_PT)),
  );

const NAME_PT = 10.5;
const SMALL_PT = 8.5;
/** widths are known of the heavy face; the light one runs so much narrower */
const LIGHTER = 1.02;

function nameCell(sheet: MeasuringSheet, point: SheetPoint, width: number): ReactElement {
  const { writing } = sheet.shop;
  const roomPt = width - RING_PT - 10;
  const smallRoomPt = roomPt * LIGHTER;
  const cut = (line: string, beside = '') =>
    `${shortenMiddle(line, smallRoomPt - textWidth(beside, SMALL_PT), SMALL_PT)}${beside}`;
  const small = (line: string) => text({ face: 'table', sizePt: SMALL_PT, lines: 1 }, { lineHeight: 1.12 }, line);
  // a limit is never cut: where all three do not fit in one line, as in inches, the new size stands beside the name
  const [asNew, limits] = [newSizeText(point, writing), limitsText(point, writing)];
  const inOneLine = textWidth(`${asNew}, ${limits}`, SMALL_PT) <= smallRoomPt;
  return view(
    { width, flexDirection: 'row', alignItems: 'center', paddingRight: 4 },
    ring(point.item),
    view(
      { flexGrow: 1, flexBasis: 0, marginLeft: 4 },
      text(
        { face: 'table', sizePt: NAME_PT, weight: WEIGHT.head, lines: 1 },
        { lineHeight: 1.12 },
        shortenMiddle(point.position, roomPt, NAME_PT),
      ),
      small(cut(pointName(point), inOneLine ? '' : `, ${asNew}`)),
      small(inOneLine ? `${asNew}, ${limits}` : limits),
      small(cut(gaugeText(point, writing))),
    ),
  );
}

/** The item number as it stands on the drawing. */
const ring = (item: number): ReactElement =>
  picture(
    { width: RING_PT, height: RING_PT, widthPt: RING_PT },
    circle(RING_PT / 2, RING_PT / 2, RING_PT / 2 - 1, PAPER, { width: 0.9 }),
    label(RING_PT / 2, RING_PT / 2 + 3.6, String(item), {
      sizePx: item > 99 ? 8 : 10,
      weight: WEIGHT.label,
      anchor: 'middle',
    }),
  );

/** Boxes of one row: the station's name and the last size small along the top, the rest to be written in. */
const boxes = (columns: number, widthPt: number, names: readonly string[], last: readonly string[]): ReactElement =>
  view(
    { width: columns * widthPt + GAP_PT },
    ...linesOfBoxes(names.map((name, i) => box(widthPt, name, last[i] ?? ''))).map((line) =>
      view({ flexDirection: 'row' }, ...line),
    ),
  );

const linesOfBoxes = (all: readonly ReactElement[]): ReactElement[][] =>
  Array.from({ length: Math.ceil(all.length / MOST_BOXES) }, (_, i) => all.slice(i * MOST_BOXES, (i + 1) * MOST_BOXES));

const IN_BOX_PT = 7.8;

/** Where name and size do not fit side by side, the size stands under the name. */
function box(widthPt: number, name: string, last: string): ReactElement {
  const roomPt = (widthPt - GAP_PT - 6) * LIGHTER;
  const beside = last === '' || textWidth(`${name} ${last}`, IN_BOX_PT) <= roomPt;
  return view(
    { width: widthPt, height: ROW_PT, paddingVertical: 1.5, paddingRight: GAP_PT },
    view(
      {
        flexGrow: 1,
        borderWidth: 0.9,
        borderColor: INK,
        flexDirection: beside ? 'row' : 'column',
        justifyContent: beside ? 'space-between' : 'flex-start',
        paddingHorizontal: 1.5,
      },
      inBox(shortenMiddle(name, roomPt, IN_BOX_PT), 'left'),
      inBox(last, 'right'),
    ),
  );
}

const inBox = (content: string, textAlign: 'left' | 'right'): ReactElement =>
  text({ face: 'table', sizePt: IN_BOX_PT, lines: 1 }, { lineHeight: 1.1, textAlign }, content);

export const TICK_BOX_PT = 13;

/** A box to be ticked, in the middle of its column. */
const tick = (width: number): ReactElement => view({ width, alignItems: 'center' }, tickBox());

export const tickBox = (): ReactElement =>
  view({ width: TICK_BOX_PT, height: TICK_BOX_PT, borderWidth: 0.9, borderColor: INK });
