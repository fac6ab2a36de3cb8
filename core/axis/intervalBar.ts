import { clampToScale, type HoursScale, hoursToPx, onScale, px } from './scale.ts';

/** Bar from -HALF to +HALF about the row's middle [px]. */
export const BAR_HALF_PX = 5.5;
export const MIDDLE_TICK = { widthPx: 3, halfPx: 8.5, gapPx: 2.5 } as const;
/** The triangle over the figure that decides: clear of the bar, and of the tick where it stands over the middle [px]. */
const TRIANGLE = { overBarPx: 7, overTickPx: 9.5, heightPx: 5.5, halfPx: 4.5 } as const;
const BREAK_PX = 4;

/** What a bar rests on: three or more readings of its own, one or two, none. */
export type BarBasis = 'own' | 'part' | 'borrowed';
export const barBasis = (ownReadings: number): BarBasis =>
  ownReadings >= 3 ? 'own' : ownReadings >= 1 ? 'part' : 'borrowed';

/** An end is square on the scale, a break where the bar goes on off it. */
export type BarEnd = 'square' | 'break';

export type BarHours = {
  /** hours at limit; null: beyond what can be said, always off the scale to the right */
  low: number | null;
  middle: number | null;
  high: number | null;
  nowHours: number;
  decides: 'low' | 'middle';
  ownReadings: number;
};

/** One stretch of a bar: its outline as a closed path about y = 0, and what its ends are. */
export type BarStretch = { x0: number; x1: number; left: BarEnd; right: BarEnd; path: string };

export type IntervalBar = {
  basis: BarBasis;
  /** right of now; null when all of it is past, or none of it is on the scale */
  ahead: BarStretch | null;
  /** left of now: the limit may have been passed there */
  past: BarStretch | null;
  /** x of the middle's tick; null: off the scale */
  middleX: number | null;
  /** the triangle over the figure that decides; null: that figure is off the scale */
  decides: { x: number; path: string } | null;
  /** all of it lies off this end of the scale: an arrow stands there instead */
  wholly: 'off-left' | 'off-right' | null;
  /** an arrow for it, about y = 0 */
  arrow: { x: number; path: string } | null;
  /** where a figure of what is off the scale may stand, right of this [px] */
  endX: number;
};

/** The bar from low to high hours at limit, on one scale with everything else. */
export function intervalBar(hours: BarHours, scale: HoursScale): IntervalBar {
  const basis = barBasis(hours.ownReadings);
  const low = hours.low ?? Number.POSITIVE_INFINITY;
  const high = hours.high ?? Number.POSITIVE_INFINITY;
  const wholly = low > scale.toHours ? 'off-right' : high < scale.fromHours ? 'off-left' : null;
  if (wholly) return { ...nothing(basis), wholly, ...arrowAt(wholly, scale) };
  const decidingHours = hours[hours.decides];
  return {
    basis,
    ahead: high > hours.nowHours ? stretch(Math.max(low, hours.nowHours), high, scale) : null,
    past: low < hours.nowHours ? stretch(low, Math.min(high, hours.nowHours), scale) : null,
    middleX: hours.middle !== null && onScale(scale, hours.middle) ? hoursToPx(scale, hours.middle) : null,
    decides:
      decidingHours !== null && onScale(scale, decidingHours)
        ? triangle(hoursToPx(scale, decidingHours), hours.decides)
        : null,
    wholly: null,
    arrow: null,
    endX: clampToScale(scale, high),
  };
}

const nothing = (basis: BarBasis) => ({ basis, ahead: null, past: null, middleX: null, decides: null });

function arrowAt(wholly: 'off-left' | 'off-right', scale: HoursScale): { arrow: IntervalBar['arrow']; endX: number } {
  const [x, way] = wholly === 'off-right' ? [scale.toPx, -1] : [scale.fromPx, 1];
  const path = `M${px(x + way * 30)} 0H${px(x + way * 10)}M${px(x)} 0L${px(x + way * 11)} -4V4Z`;
  return { arrow: { x, path }, endX: wholly === 'off-right' ? scale.toPx : scale.fromPx + 30 };
}

function triangle(x: number, over: 'low' | 'middle'): { x: number; path: string } {
  const tip = over === 'middle' ? TRIANGLE.overTickPx : TRIANGLE.overBarPx;
  const base = -(tip + TRIANGLE.heightPx);
  return { x, path: `M${px(x - TRIANGLE.halfPx)} ${base}H${px(x + TRIANGLE.halfPx)}L${px(x)} ${-tip}Z` };
}

/** A bar as thin as a line still shows: at least this wide [px]. */
const LEAST_PX = 3;

function stretch(fromHours: number, toHours: number, scale: HoursScale): BarStretch | null {
  if (toHours < scale.fromHours || fromHours > scale.toHours) return null;
  const left: BarEnd = fromHours < scale.fromHours ? 'break' : 'square';
  const right: BarEnd = toHours > scale.toHours ? 'break' : 'square';
  const x0 = clampToScale(scale, fromHours);
  const x1 = Math.max(clampToScale(scale, toHours), x0 + LEAST_PX);
  return { x0, x1, left, right, path: barPath(x0, x1, left, right) };
}

/** A closed outline; a break is a zigzag, as a long thing cut short on a drawing. */
export function barPath(x0: number, x1: number, left: BarEnd, right: BarEnd): string {
  const h = BAR_HALF_PX;
  const rightEnd = right === 'square' ? `V${h}` : zigzagDown(x1, h);
  const leftEnd = left === 'square' ? 'Z' : `${zigzagUp(x0, h)}Z`;
  return `M${px(x0)} ${-h}H${px(x1)}${rightEnd}H${px(x0)}${leftEnd}`;
}

const zigzagDown = (x: number, h: number): string =>
  `L${px(x + BREAK_PX)} ${px(-h / 3)}L${px(x - BREAK_PX)} ${px(h / 3)}L${px(x)} ${h}`;
const zigzagUp = (x: number, h: number): string =>
  `L${px(x - BREAK_PX)} ${px(h / 3)}L${px(x + BREAK_PX)} ${px(-h / 3)}L${px(x)} ${-h}`;

export type ThinInterval = { x0: number; x1: number; middleX: number | null; offLeft: boolean; offRight: boolean };

/** A further position as a thin line with a short tick; null when none of it is on the scale. */
export function thinInterval(
  hours: { low: number | null; middle: number | null; high: number | null },
  scale: HoursScale,
): ThinInterval | null {
  const low = hours.low ?? Number.POSITIVE_INFINITY;
  const high = hours.high ?? Number.POSITIVE_INFINITY;
  if (low > scale.toHours || high < scale.fromHours) return null;
  return {
    x0: clampToScale(scale, low),
    x1: clampToScale(scale, high),
    middleX: hours.middle !== null && onScale(scale, hours.middle) ? hoursToPx(scale, hours.middle) : null,
    offLeft: low < scale.fromHours,
    offRight: high > scale.toHours,
  };
}

/** A part already past its limit at its own last size: a stub at that reading, ending there. Null: off the scale. */
export function pastStub(atHours: number, scale: HoursScale): BarStretch | null {
  if (!onScale(scale, atHours)) return null;
  const x = hoursToPx(scale, atHours);
  return { x0: x - 7, x1: x, left: 'square', right: 'square', path: barPath(x - 7, x, 'square', 'square') };
}
