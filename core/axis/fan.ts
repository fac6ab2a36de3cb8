/** Size at some machine hours: low, middle, high of the size (not of the wear) [h, mm]. */
export type CurvePoint = { machineHours: number; low: number; middle: number; high: number };

/** A slice of the fan that is still short of the limit; the middle is null once it has reached it. */
export type FanSlice = { machineHours: number; low: number; middle: number | null; high: number };

/**
 * The fan of a forecast, cut off at the limit: past it there is nothing to foretell, the part is due.
 * Slices are put in where an edge or the middle meets the limit, so the cut is exact.
 *
 * @param curve sorted by machine hours
 * @param limitMm renew-at; null: nothing to stop at, the fan runs on
 * @param wears down: sizes fall to the limit; up: they rise to it
 * @returns slices up to where the last edge meets the limit
 */
export function fanToLimit(curve: readonly CurvePoint[], limitMm: number | null, wears: 'down' | 'up'): FanSlice[] {
  if (limitMm === null) return [...curve];
  const within = (sizeMm: number) => (wears === 'down' ? sizeMm >= limitMm : sizeMm <= limitMm);
  const clip = (sizeMm: number) => (wears === 'down' ? Math.max(sizeMm, limitMm) : Math.min(sizeMm, limitMm));
  const slices: FanSlice[] = [];
  for (const point of withCrossings(curve, limitMm)) {
    const lastEdge = wears === 'down' ? point.high : point.low;
    slices.push({
      machineHours: point.machineHours,
      low: clip(point.low),
      middle: within(point.middle) ? point.middle : null,
      high: clip(point.high),
    });
    if (!within(lastEdge) || Math.abs(lastEdge - limitMm) < 1e-9) break;
  }
  return slices;
}

/** The curve with points added where low, middle or high crosses a size. */
function withCrossings(curve: readonly CurvePoint[], sizeMm: number): CurvePoint[] {
  return curve.flatMap((point, i) => {
    const before = curve[i - 1];
    if (!before) return [point];
    const shares = (['low', 'middle', 'high'] as const)
      .map((edge) => ({ edge, share: (sizeMm - before[edge]) / (point[edge] - before[edge]) }))
      .filter(({ share }) => share > 0 && share < 1)
      .sort((a, b) => a.share - b.share);
    return [...shares.map(({ edge, share }) => ({ ...between(before, point, share), [edge]: sizeMm })), point];
  });
}

const between = (a: CurvePoint, b: CurvePoint, share: number): CurvePoint => ({
  machineHours: a.machineHours + share * (b.machineHours - a.machineHours),
  low: a.low + share * (b.low - a.low),
  middle: a.middle + share * (b.middle - a.middle),
  high: a.high + share * (b.high - a.high),
});
