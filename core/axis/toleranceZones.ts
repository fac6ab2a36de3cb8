/** Tolerance zones of a hole and a shaft about the line of the nominal size, to one scale. */
export type ToleranceZones = {
  /** line of the nominal size, through the whole picture */
  nominalY: number;
  pxPerUm: number;
  ticks: { um: number; y: number }[];
  hole: Zone;
  shaft: Zone;
  /** dimensions between the two, each on a line of its own: from the hole's edge to the shaft's */
  least: Dimension;
  most: Dimension;
};
export type Zone = { x0: number; x1: number; upperY: number; lowerY: number };
export type Dimension = { x: number; holeY: number; shaftY: number; arrows: string };

type Deviations = { upperDeviationUm: number; lowerDeviationUm: number };
export type ZonesNeeds = {
  hole: Deviations;
  shaft: Deviations;
  fromPx: number;
  toPx: number;
  /** top and bottom of what is drawn, labels kept clear of already */
  topPx: number;
  bottomPx: number;
};

/** Each zone takes this share of the width, at its end; the dimensions stand between. */
const ZONE_SHARE = 0.22;
/** Least distance between two ticks [px]. */
const TICK_LEAST_PX = 26;
const ARROW = { long: 9, half: 2.2 };

/**
 * Where zones, ticks and dimensions lie. The nominal size is always in the picture, whichever side the zones are on.
 */
export function toleranceZones({ hole, shaft, fromPx, toPx, topPx, bottomPx }: ZonesNeeds): ToleranceZones {
  const ends = [hole, shaft].flatMap((of) => [of.upperDeviationUm, of.lowerDeviationUm]);
  const highest = Math.max(0, ...ends);
  const lowest = Math.min(0, ...ends);
  const pxPerUm = (bottomPx - topPx) / Math.max(highest - lowest, 1);
  const y = (um: number) => topPx + (highest - um) * pxPerUm;
  const widthPx = (toPx - fromPx) * ZONE_SHARE;
  const zone = (of: Deviations, x0: number): Zone => ({
    ...{ x0, x1: x0 + widthPx, upperY: y(of.upperDeviationUm), lowerY: y(of.lowerDeviationUm) },
  });
  const between = toPx - fromPx - 2 * widthPx;
  const dimension = (share: number, holeUm: number, shaftUm: number): Dimension => {
    const at = { x: fromPx + widthPx + between * share, holeY: y(holeUm), shaftY: y(shaftUm) };
    return { ...at, arrows: dimensionArrows(at.x, at.holeY, at.shaftY) };
  };
  return {
    nominalY: y(0),
    pxPerUm,
    ticks: ticksBetween(lowest, highest, pxPerUm).map((um) => ({ um, y: y(um) })),
    hole: zone(hole, fromPx),
    shaft: zone(shaft, toPx - widthPx),
    least: dimension(0.08, hole.lowerDeviationUm, shaft.upperDeviationUm),
    most: dimension(0.54, hole.upperDeviationUm, shaft.lowerDeviationUm),
  };
}

/** Round deviations from lowest to highest, at least so far apart that their figures do not touch. */
function ticksBetween(lowestUm: number, highestUm: number, pxPerUm: number): number[] {
  const leastUm = TICK_LEAST_PX / pxPerUm;
  const decade = 10 ** Math.floor(Math.log10(leastUm));
  const stepUm = [1, 2, 5, 10].map((times) => times * decade).find((step) => step >= leastUm) ?? 10 * decade;
  const first = Math.ceil(lowestUm / stepUm);
  const last = Math.floor(highestUm / stepUm);
  return Array.from({ length: last - first + 1 }, (_, at) => (first + at) * stepUm);
}

/** Line between two heights with a slim arrow at each end: inside where there is room for both, else pointing in from outside. */
function dimensionArrows(x: number, oneY: number, otherY: number): string {
  const [top, bottom] = [Math.min(oneY, otherY), Math.max(oneY, otherY)];
  const inside = bottom - top >= 3 * ARROW.long;
  const head = (tipY: number, away: 1 | -1) => `M${x} ${tipY}l${-ARROW.half} ${away * ARROW.long}h${2 * ARROW.half}z`;
  const out = inside ? 0 : 2 * ARROW.long;
  return `M${x} ${top - out}V${bottom + out}${head(top, inside ? 1 : -1)}${head(bottom, inside ? -1 : 1)}`;
}
