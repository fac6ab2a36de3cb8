import { type HoursScale, hoursScale } from '#core/axis/scale.ts';
import type { ListRange } from '#core/contract/machine.ts';

/** Width of a column of figures [px]. */
export const FIGURE_PX = 56;

export type ListLayout = {
  kind: 'wide' | 'narrow';
  widthPx: number;
  /** left edges and widths of the columns of words [px] */
  name: Column;
  hours: Column;
  first: Column;
  /** right edges of the figures [px] */
  figures: { low: number; middle: number; high: number };
  likelyBy: Column;
  rowPx: number;
  headPx: number;
  /** top of what reaches its limit first, in its row [px] */
  firstTop: number;
  /** of the bar and the first thin line under it, from the top of the row [px] */
  barY: number;
  scale: HoursScale;
};
type Column = { left: number; width: number };

const MARGIN_PX = 14;
const LIKELY_PX = 124;
const HOURS_PX = 88;
/** Room for half a figure of the rule at either end of the axis. */
const OVERHANG_PX = 24;
const NARROW_BELOW_PX = 980;

/** Columns of the list: whose machine, its hours, the one scale, what reaches its limit first and when. */
export function listLayout(widthPx: number, range: ListRange): ListLayout {
  return widthPx < NARROW_BELOW_PX ? narrow(widthPx, range) : wide(widthPx, range);
}

function wide(widthPx: number, range: ListRange): ListLayout {
  const nameWidth = clamp(0.165 * widthPx, 180, 320);
  const firstWidth = clamp(0.155 * widthPx, 160, 300);
  const right = widthPx - MARGIN_PX;
  const high = right - LIKELY_PX;
  const firstLeft = high - 3 * FIGURE_PX - firstWidth;
  const hoursLeft = MARGIN_PX + nameWidth;
  return {
    kind: 'wide',
    widthPx,
    name: { left: MARGIN_PX, width: nameWidth - 8 },
    hours: { left: hoursLeft, width: HOURS_PX },
    first: { left: firstLeft, width: firstWidth },
    figures: { low: high - 2 * FIGURE_PX, middle: high - FIGURE_PX + 2, high },
    likelyBy: { left: high + 8, width: LIKELY_PX - 8 },
    rowPx: 41,
    headPx: 27,
    firstTop: 2,
    barY: 15,
    scale: hoursScale({ ...range, fromPx: hoursLeft + HOURS_PX + OVERHANG_PX, toPx: firstLeft - OVERHANG_PX }),
  };
}

/** Zoomed or narrow: whose it is, then what reaches its limit first, then the axis under both. */
function narrow(widthPx: number, range: ListRange): ListLayout {
  const right = widthPx - MARGIN_PX;
  const high = right - LIKELY_PX;
  return {
    kind: 'narrow',
    widthPx,
    name: { left: MARGIN_PX, width: right - HOURS_PX - MARGIN_PX - 8 },
    hours: { left: right - HOURS_PX, width: HOURS_PX },
    first: { left: MARGIN_PX, width: Math.max(60, high - 3 * FIGURE_PX - MARGIN_PX) },
    figures: { low: high - 2 * FIGURE_PX, middle: high - FIGURE_PX + 2, high },
    likelyBy: { left: high + 8, width: LIKELY_PX - 8 },
    rowPx: 118,
    headPx: 27,
    firstTop: 43,
    barY: 96,
    scale: hoursScale({ ...range, fromPx: MARGIN_PX + OVERHANG_PX, toPx: right - OVERHANG_PX }),
  };
}

const clamp = (value: number, least: number, most: number): number =>
  Math.round(Math.min(most, Math.max(least, value)));
