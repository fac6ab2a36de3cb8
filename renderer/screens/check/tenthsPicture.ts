/** One tenth of the chances given: how many sizes fell in it, drawn as a column from the base line. */
export type TenthColumn = { x: number; width: number; height: number; outer: boolean };

export type TenthsPicture = {
  columns: TenthColumn[];
  /** where the columns would end if all were alike */
  evenY: number;
  /** edges of the 80 % range */
  edges: [number, number];
};

const GAP_PX = 1.5;

/**
 * Ten columns side by side, their heights on one scale: the even height is two fifths of the room, what is higher than the room
 * is cut off at it.
 */
export function tenthsPicture(tenths: readonly number[], widthPx: number, heightPx: number): TenthsPicture {
  const all = tenths.reduce((sum, n) => sum + n, 0);
  const step = widthPx / tenths.length;
  const even = 0.4 * heightPx;
  const heightOf = (n: number) => (all === 0 ? 0 : Math.min(heightPx, (n / (all / tenths.length)) * even));
  return {
    columns: tenths.map((n, i) => ({
      x: i * step + GAP_PX / 2,
      width: step - GAP_PX,
      height: heightOf(n),
      outer: i === 0 || i === tenths.length - 1,
    })),
    evenY: heightPx - even,
    edges: [step, widthPx - step],
  };
}
