/** One point's sizes on a small scale of its own: new size at the left, reject-at at the right, whichever way it wears. */
export type LimitStrip = {
  fromPx: number;
  toPx: number;
  newX: number;
  renewX: number | null;
  rejectX: number | null;
  lastX: number | null;
  /** this time, with the gauge's whisker (2 sd) */
  found: { x: number; x0: number; x1: number; pastRenew: boolean; pastReject: boolean } | null;
};

export type LimitStripNeeds = {
  wears: 'down' | 'up';
  newSizeMm: number;
  renewAtMm: number | null;
  rejectAtMm: number | null;
  lastMm: number | null;
  foundMm: number | null;
  errorSdMm: number;
  fromPx: number;
  toPx: number;
};

/** Kept clear left of the new size for a part thicker than new, and right of reject-at for one worn past it. */
const BEYOND_SHARE = 0.06;

/**
 * Wear so far between new size and limits, for a row of the strip-down grid.
 * Without limits there is nothing to measure against, and null comes back.
 */
export function limitStrip(needs: LimitStripNeeds): LimitStrip | null {
  const wearOf = (sizeMm: number) => (needs.wears === 'down' ? needs.newSizeMm - sizeMm : sizeMm - needs.newSizeMm);
  const limits = [needs.renewAtMm, needs.rejectAtMm].filter((mm) => mm !== null).map(wearOf);
  const fullMm = Math.max(0, ...limits);
  if (fullMm <= 0) return null;
  const pxPerMm = ((needs.toPx - needs.fromPx) * (1 - 2 * BEYOND_SHARE)) / fullMm;
  const newX = needs.fromPx + (needs.toPx - needs.fromPx) * BEYOND_SHARE;
  const at = (sizeMm: number) => Math.min(needs.toPx, Math.max(needs.fromPx, newX + wearOf(sizeMm) * pxPerMm));
  const orNull = (sizeMm: number | null) => (sizeMm === null ? null : at(sizeMm));
  return {
    fromPx: needs.fromPx,
    toPx: needs.toPx,
    newX,
    renewX: orNull(needs.renewAtMm),
    rejectX: orNull(needs.rejectAtMm),
    lastX: orNull(needs.lastMm),
    found: needs.foundMm === null ? null : foundShape(needs.foundMm, needs, at, wearOf),
  };
}

function foundShape(
  foundMm: number,
  needs: LimitStripNeeds,
  at: (sizeMm: number) => number,
  wearOf: (sizeMm: number) => number,
): NonNullable<LimitStrip['found']> {
  const ends = [at(foundMm - 2 * needs.errorSdMm), at(foundMm + 2 * needs.errorSdMm)];
  const past = (limitMm: number | null) => limitMm !== null && wearOf(foundMm) >= wearOf(limitMm);
  return {
    x: at(foundMm),
    x0: Math.min(...ends),
    x1: Math.max(...ends),
    pastRenew: past(needs.renewAtMm),
    pastReject: past(needs.rejectAtMm),
  };
}
