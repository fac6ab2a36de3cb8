import type { ReactElement } from 'react';
import { flagLeft, hoursRule } from '../axis/hoursRule.ts';
import { type IntervalBar, intervalBar } from '../axis/intervalBar.ts';
import { pictureRange } from '../axis/pictureRange.ts';
import { type HoursScale, hoursScale, hoursToPx, onScale } from '../axis/scale.ts';
import { textWidth } from '../axis/textWidth.ts';
import { winterBands } from '../axis/winterBands.ts';
import type { Slip } from '../contract/slip.ts';
import { group, HAIR, INK, label, line, PAPER, path, picture, rect, WINTER_GREY } from './elements.ts';
import { crossHatchPath, hatchPath } from './hatch.ts';
import { WEIGHT } from './paperFonts.ts';
import { forecastFigure, meterFigure } from './slipFigures.ts';
import { slipLabels } from './slipLabels.ts';
import { itemsText } from './slipNames.ts';

type Axis = NonNullable<Slip['axis']>;
type Row = Axis['rows'][number];

/** The picture's own units, px; the paper scales it as a whole. */
const WIDTH = 698;
const LABEL_X = { item: 0, name: 30 } as const;
const PICTURE = { fromPx: 232, toPx: 518 } as const;
const COLUMN_X = { low: 574, middle: 638, high: 698 } as const;
const RULE_Y = 34;
const FIRST_ROW_Y = 70;
const STEP = { roomy: 25, tight: 22 } as const;
const FONT = { label: 14, figure: 14 } as const;
/** of a winter's name */
const NAME_PX = 13;

/**
 * The reduced hours axis of the slip: the marks of the machine's page, black only. Rows come soonest first; of more than
 * `mostRows` the latest are left out, and a line says so.
 */
export function slipAxis(slip: Slip, axis: Axis, mostRows: number, widthPt: number): ReactElement {
  const rows = axis.rows.slice(0, mostRows);
  const left = axis.rows.length - rows.length;
  const step = rows.length > 5 ? STEP.tight : STEP.roomy;
  const lastRowY = FIRST_ROW_Y + (rows.length - 1) * step;
  const bottom = lastRowY + step / 2 + 1;
  const height = bottom + (axis.comeInDialHours === null && left === 0 ? 4 : 27);
  const scale = axisScale(slip, axis, rows);
  return picture(
    { width: WIDTH, height, widthPt },
    ...bands(axis, scale, bottom),
    ...rule(slip, axis, scale),
    ...rows.flatMap((row, i) => axisRow(slip, row, axis, scale, FIRST_ROW_Y + i * step, step)),
    ...lines(slip, axis, scale, bottom),
    ...(left > 0 ? [label(LABEL_X.name, bottom + 19, slipLabels.more(left, 'rows'), { sizePx: 13 })] : []),
  );
}

function axisScale(slip: Slip, axis: Axis, rows: readonly Row[]): HoursScale {
  // a part just renewed lies far off: it gets an arrow rather than squeezing the bars that matter now
  const near = rows.filter((row) => !row.renewed);
  const range = pictureRange({
    nowHours: axis.nowDialHours,
    historyFromHours: null,
    planLineHours: axis.comeInDialHours,
    hoursPerYear: slip.hoursPerYear,
    rows: (near.length > 0 ? near : rows).map((row) => row.dialHours),
  });
  return hoursScale({ ...range, ...PICTURE });
}

const wintersOn = (axis: Axis, scale: HoursScale) =>
  winterBands(
    axis.winters.map(({ name, fromDialHours, toDialHours }) => ({
      name,
      fromHours: fromDialHours,
      toHours: toDialHours,
    })),
    scale,
    FONT.label,
  );

function bands(axis: Axis, scale: HoursScale, bottom: number): ReactElement[] {
  const { bands: drawn, names } = wintersOn(axis, scale);
  const edge = { width: 0.8, colour: '#777777' };
  return [
    ...drawn.flatMap((band) => [
      rect(band.x0, RULE_Y, Math.max(1, band.x1 - band.x0), bottom - RULE_Y, WINTER_GREY),
      ...(band.leftEdge ? [line(band.x0, RULE_Y, band.x0, bottom, edge)] : []),
      ...(band.rightEdge ? [line(band.x1, RULE_Y, band.x1, bottom, edge)] : []),
    ]),
    ...(names.length > 0 ? [label(LABEL_X.item, RULE_Y + 16, slipLabels.winters, { sizePx: FONT.label })] : []),
    ...names.map((name) => label(name.x, RULE_Y + 16, name.name, { sizePx: NAME_PX })),
  ];
}

function rule(slip: Slip, axis: Axis, scale: HoursScale): ReactElement[] {
  const flagText = slipLabels.now(slip);
  const widthPx = textWidth(flagText, FONT.figure) + 16;
  const flag = { hours: axis.nowDialHours, widthPx };
  const drawn = hoursRule(scale, { figurePx: FONT.figure, flag, pastBefore: null });
  const flagX = flagLeft(scale, axis.nowDialHours, widthPx);
  return [
    label(LABEL_X.item, 16, slipLabels.hoursOnMeter(slip), { sizePx: FONT.label }),
    ...columnHeads(),
    line(drawn.fromPx, RULE_Y, drawn.toPx, RULE_Y, { width: 1.5 }),
    ...drawn.ticks.map((tick) =>
      line(tick.x, RULE_Y, tick.x, RULE_Y - tick.lengthPx, { width: tick.rank === 'minor' ? 0.8 : 1.3 }),
    ),
    ...drawn.figures.map((figure) =>
      label(figure.x, 17, meterFigure(slip, figure.hours), {
        sizePx: FONT.figure,
        weight: figure.rank === 'major' ? WEIGHT.head : WEIGHT.text,
        anchor: 'middle',
      }),
    ),
    slip.estimated ? rect(flagX, 1, widthPx, 21, PAPER, { width: 1.4, dash: '4 3' }) : rect(flagX, 1, widthPx, 21, INK),
    label(flagX + widthPx / 2, 17, flagText, {
      sizePx: FONT.figure,
      weight: WEIGHT.head,
      anchor: 'middle',
      colour: slip.estimated ? INK : PAPER,
    }),
  ];
}

const columnHeads = (): ReactElement[] => [
  label(COLUMN_X.low, 16, slipLabels.from, { sizePx: FONT.label, anchor: 'end' }),
  label(COLUMN_X.middle, 16, slipLabels.likely, { sizePx: FONT.label, anchor: 'end' }),
  label(COLUMN_X.high, 16, slipLabels.to, { sizePx: FONT.label, anchor: 'end' }),
];

function axisRow(slip: Slip, row: Row, axis: Axis, scale: HoursScale, y: number, step: number): ReactElement[] {
  const suffix = row.renewed ? `, ${slipLabels.renewed}` : '';
  const bar = intervalBar(
    { ...row.dialHours, nowHours: axis.nowDialHours, decides: row.decides, ownReadings: row.ownReadings },
    scale,
  );
  return [
    line(0, y + step / 2, WIDTH, y + step / 2, { width: 0.6, colour: HAIR }),
    label(LABEL_X.item, y + 5, itemsText(row.items), { sizePx: FONT.label, weight: WEIGHT.head }),
    label(LABEL_X.name, y + 5, fitted(row.label, suffix, PICTURE.fromPx - LABEL_X.name - 10), { sizePx: FONT.label }),
    group(0, y, ...barShapes(bar)),
    ...(['low', 'middle', 'high'] as const).map((which) => figure(slip, row, which, y)),
  ];
}

function figure(slip: Slip, row: Row, which: 'low' | 'middle' | 'high', y: number): ReactElement {
  const hours = row.dialHours[which];
  return label(COLUMN_X[which], y + 5, hours === null ? slipLabels.beyond : forecastFigure(slip, hours), {
    sizePx: FONT.figure,
    weight: row.decides === which ? WEIGHT.head : WEIGHT.text,
    anchor: 'end',
  });
}

/** Solid, hatched or open after what it rests on; cross-hatched where the limit may have gone by. */
function barShapes(bar: IntervalBar): ReactElement[] {
  const { ahead, past } = bar;
  return [
    ...(ahead ? [path(ahead.path, { width: 1.3, ...(bar.basis === 'borrowed' && { dash: '4 3' }) }, fillOf(bar))] : []),
    ...(ahead && bar.basis === 'part' ? [hatch(hatchPath, ahead)] : []),
    ...(past ? [path(past.path, { width: 1.3 }, PAPER), hatch(crossHatchPath, past)] : []),
    ...(bar.middleX === null ? [] : middleTick(bar.middleX)),
    ...(bar.decides ? [path(bar.decides.path, null, INK)] : []),
    ...(bar.arrow ? [path(bar.arrow.path, { width: 1.5 }, INK)] : []),
  ];
}

const fillOf = (bar: IntervalBar): string => (bar.basis === 'own' ? INK : PAPER);

/** Lines stop short of a broken end, whose zigzag they would cross. */
function hatch(of: typeof hatchPath, its: { x0: number; x1: number; left: string; right: string }): ReactElement {
  const x0 = its.x0 + (its.left === 'break' ? 4 : 0);
  const x1 = its.x1 - (its.right === 'break' ? 4 : 0);
  return path(of({ x0, x1, half: 5.5, stepPx: 5 }), { width: 0.8 });
}

const middleTick = (x: number): ReactElement[] => [
  line(x, -7, x, 7, { width: 7, colour: PAPER }),
  line(x, -9, x, 9, { width: 3 }),
];

/** A line through all rows; it gives way to a winter's name, as a dimension line does to its figure. */
function upright(
  x: number,
  fromY: number,
  bottom: number,
  axis: Axis,
  scale: HoursScale,
  style: Parameters<typeof line>[4],
): ReactElement[] {
  const crosses = wintersOn(axis, scale).names.some(
    (name) => x > name.x - 3 && x < name.x + textWidth(name.name, NAME_PX) + 3,
  );
  if (!crosses) return [line(x, fromY, x, bottom, style)];
  return [line(x, fromY, x, RULE_Y + 4, style), line(x, RULE_Y + 20, x, bottom, style)];
}

function lines(slip: Slip, axis: Axis, scale: HoursScale, bottom: number): ReactElement[] {
  const now = hoursToPx(scale, axis.nowDialHours);
  const nowStyle = { width: 1.6, ...(slip.estimated && { dash: '5 3' }) };
  const nowLine = upright(now, 22, bottom, axis, scale, nowStyle);
  const comeIn = axis.comeInDialHours;
  if (comeIn === null || !onScale(scale, comeIn)) return nowLine;
  const x = hoursToPx(scale, comeIn);
  const words = slipLabels.comeIn(slip, comeIn);
  const half = textWidth(words, 15) / 2;
  return [
    ...nowLine,
    ...upright(x, RULE_Y, bottom, axis, scale, { width: 2.6 }),
    path(`M${x - 7} ${bottom + 7}L${x} ${bottom - 2}L${x + 7} ${bottom + 7}Z`, null, INK),
    label(Math.max(half, Math.min(x, WIDTH - half)), bottom + 22, words, {
      sizePx: 15,
      weight: WEIGHT.head,
      anchor: 'middle',
    }),
  ];
}

/** A label with what must stay at its end, cut to its room, with three dots where it was cut. */
function fitted(words: string, suffix: string, roomPx: number): string {
  const room = roomPx - textWidth(suffix, FONT.label);
  if (textWidth(words, FONT.label) <= room) return words + suffix;
  let cut = words;
  while (cut.length > 1 && textWidth(`${cut}…`, FONT.label) > room) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…${suffix}`;
}
