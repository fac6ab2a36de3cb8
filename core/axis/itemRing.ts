/**
 * What a position asks for, as its item ring shows it.
 *  - now: this winter's work; filled
 *  - with-it: worth doing with what is opened anyway; double ring
 *  - leave: plain ring
 *  - stop: must not be used; ring crossed
 *  - chosen: the one being looked at, on the drawing
 *  - none: nothing is known; dashed ring
 */
export type RingState = 'now' | 'with-it' | 'leave' | 'stop' | 'chosen' | 'none';

export type ItemRing = {
  /** outer circle */
  radiusPx: number;
  /** inner circle of a double ring; null: single */
  innerRadiusPx: number | null;
  /** both diagonals across the ring, broken where the number stands; null: not crossed */
  crossPath: string | null;
  /** type size of the number [px] */
  figurePx: number;
  filled: boolean;
};

const RADIUS_PX = 9.4;

/** The ring about (0, 0). A double ring is larger, so that the number in it keeps its room. */
export function itemRing(state: RingState, item: number): ItemRing {
  const double = state === 'with-it';
  const radiusPx = double ? 11 : RADIUS_PX;
  return {
    radiusPx,
    innerRadiusPx: double ? 8.4 : null,
    crossPath: state === 'stop' ? crossPath(radiusPx) : null,
    figurePx: item > 99 ? 10 : item > 9 ? 13 : 14,
    filled: state === 'now' || state === 'chosen',
  };
}

/** Each diagonal from a little outside the ring to where the number begins, at both its ends. */
function crossPath(radiusPx: number): string {
  const [out = 0, into = 0] = [radiusPx + 2.2, radiusPx - 3].map((r) => Math.round(r * Math.SQRT1_2 * 100) / 100);
  return [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ]
    .map(([x = 1, y = 1]) => `M${x * out} ${y * out}L${x * into} ${y * into}`)
    .join('');
}
