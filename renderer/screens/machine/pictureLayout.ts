import { pictureRange } from '#core/axis/pictureRange.ts';
import { type HoursScale, hoursScale } from '#core/axis/scale.ts';
import { textWidth } from '#core/axis/textWidth.ts';
import type { PictureProps } from './pictureProps.ts';

export type PictureLayout = {
  kind: 'wide' | 'narrow';
  widthPx: number;
  /** of the names, before the axis */
  leftPx: number;
  /** of the figures, after it */
  rightPx: number;
  rowPx: number;
  /** for a row's name */
  nameRoomPx: number;
  /** where the bar stands in its row */
  barY: number;
  hours: HoursScale;
};

export const RIGHT_PX = 258;
/** Over the first row, for the triangle of its bar. */
export const ROWS_TOP_PX = 4;
/** A line for an assembly's name, as high as a row: no row is cut through where they scroll. */
export const ASSEMBLY_HEAD_PX = 24;
/** Ring and gap before a name. */
const RING_PX = 32;
const MARGIN_PX = 14;
/** Ring, its margins, and the mm figures of the chart that hang left of the axis. */
const BESIDE_NAME_PX = 76;
const NARROW_BELOW_PX = 860;

/** Columns of the picture for a width: names, axis, figures; below 860 px names and figures stand over the axis. */
export function pictureLayout(props: PictureProps, widthPx: number): PictureLayout {
  const range = pictureRange({
    nowHours: props.nowHours ?? 0,
    historyFromHours: historyFrom(props),
    planLineHours: props.planLineHours,
    hoursPerYear: props.hoursPerYear,
    rows: props.rows.filter((row) => row.doNotUse === null).map((row) => row.atLimit),
  });
  if (widthPx < NARROW_BELOW_PX) {
    const hours = hoursScale({ ...range, fromPx: 52, toPx: Math.max(120, widthPx - MARGIN_PX - 12) });
    return {
      kind: 'narrow',
      widthPx,
      leftPx: MARGIN_PX,
      rightPx: MARGIN_PX,
      rowPx: 52,
      barY: 38,
      nameRoomPx: widthPx - 290 - RING_PX,
      hours,
    };
  }
  const longest = Math.max(0, ...props.rows.map((row) => textWidth(rowName(row), 14)));
  const leftPx = Math.round(Math.min(Math.max(240, 0.19 * widthPx, longest + BESIDE_NAME_PX), 0.26 * widthPx));
  const hours = hoursScale({ ...range, fromPx: leftPx + 16, toPx: widthPx - RIGHT_PX - 12 });
  return {
    kind: 'wide',
    widthPx,
    leftPx,
    rightPx: RIGHT_PX,
    rowPx: 24,
    barY: 12,
    nameRoomPx: leftPx - MARGIN_PX - RING_PX,
    hours,
  };
}

/** Top of each row [px], and the height of them all, assembly heads among them. */
export function rowPlaces(rows: PictureProps['rows'], { rowPx }: PictureLayout): { tops: number[]; heightPx: number } {
  const tops: number[] = [];
  let top = ROWS_TOP_PX;
  for (const row of rows) {
    if (row.assemblyHead !== undefined) top += ASSEMBLY_HEAD_PX;
    tops.push(top);
    top += rowPx;
  }
  return { tops, heightPx: top };
}

export const rowName = (row: { position: string; point: string }): string =>
  row.point === '' ? row.position : `${row.position}, ${row.point}`;

function historyFrom({ rows }: PictureProps): number | null {
  const hours = rows.flatMap((row) => [...row.renewals.map((r) => r.hours), ...row.readings]);
  return hours.length === 0 ? null : Math.min(...hours);
}
