/**
 * Ways in a machine, as seen from the driver's seat looking forward. Left and right never depend on where a fitter stands.
 */
export const WAYS = ['front', 'rear', 'left', 'right', 'up', 'down'] as const;
export type Way = (typeof WAYS)[number];

/** How a hole runs through its part: from left to right, up and down, or from front to rear. */
export const HOLE_RUNS = ['across', 'upright', 'lengthwise'] as const;
export type HoleRun = (typeof HOLE_RUNS)[number];

/**
 * The plane a hole is looked at in. Across: from the left, front on the left hand. Upright: from above, front at the top.
 * Lengthwise: from behind, looking forward.
 */
const PLANE: Readonly<Record<HoleRun, { plusX: Way; minusX: Way; plusY: Way; minusY: Way }>> = {
  across: { plusX: 'rear', minusX: 'front', plusY: 'up', minusY: 'down' },
  upright: { plusX: 'right', minusX: 'left', plusY: 'front', minusY: 'rear' },
  lengthwise: { plusX: 'right', minusX: 'left', plusY: 'up', minusY: 'down' },
};

/** A shift in the plane of a hole [mm]. */
export type Shift = { xMm: number; yMm: number };

/** One part of a shift: how far to which side. */
export type Toward = { way: Way; mm: number };

/** The four ways a hole can wear or be shifted, in the order right of the picture, up, left, down. */
export function waysOf(run: HoleRun): readonly [Way, Way, Way, Way] {
  const { plusX, plusY, minusX, minusY } = PLANE[run];
  return [plusX, plusY, minusX, minusY];
}

/**
 * Angle of a way in the picture, from its right hand turning to the left [deg].
 * @returns null: a hole that runs this way is not worn that way
 * @example angleOfWay('across', 'up') // 90
 */
export function angleOfWay(run: HoleRun, way: Way): number | null {
  const place = waysOf(run).indexOf(way);
  return place < 0 ? null : place * 90;
}

/**
 * A shift in words of the machine, the longer part first; parts too small to read off a bar are left out.
 * @param leastMm what is still named [mm]
 * @example towards('across', { xMm: 0.6, yMm: 0 }) // [{ way: 'rear', mm: 0.6 }]
 */
export function towards(run: HoleRun, { xMm, yMm }: Shift, leastMm = 0.005): Toward[] {
  const { plusX, minusX, plusY, minusY } = PLANE[run];
  const parts: Toward[] = [
    { way: xMm >= 0 ? plusX : minusX, mm: Math.abs(xMm) },
    { way: yMm >= 0 ? plusY : minusY, mm: Math.abs(yMm) },
  ];
  return parts.filter(({ mm }) => mm >= leastMm).sort((one, other) => other.mm - one.mm);
}
