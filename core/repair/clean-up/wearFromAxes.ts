/** A diameter read on one axis of a hole: the axis's angle in the picture [deg], 0 to 180. */
export type AxisReading = { axisDeg: number; diameterMm: number };

/** How far a hole wore, and along which line [deg]; which end of the line diameters cannot tell. */
export type WearLine = { wearMm: number; lineDeg: number };

const RAD = Math.PI / 180;

/**
 * The one-sided wear that diameters on several axes point to: least squares of
 *   D_i - D0 = w |cos(axis_i - line)|
 * Between two lines square to an axis the signs of the cosines stand, and the squares are those of a plain vector; each such
 * piece is solved, and its ends are tried. Two axes square to each other always leave two lines; both are given.
 *
 * @param newBoreMm D0 [mm]
 * @param readings at least one
 * @returns the lines that fit best, one or several alike; wear 0 or more [mm]
 * @source own derivation; for two square axes w = sqrt(a^2 + b^2), line = +-atan2(b, a)
 * @checked tests/reference/bore-clean-up/cleanUpBore.test.ts
 */
export function wearFromAxes(newBoreMm: number, readings: readonly AxisReading[]): WearLine[] {
  const growth = readings.map(({ axisDeg, diameterMm }) => ({ axisDeg, mm: diameterMm - newBoreMm }));
  const bounds = [...new Set(growth.map(({ axisDeg }) => (axisDeg + 90) % 180))].sort((a, b) => a - b);
  const tries = bounds.flatMap((from, i) => {
    const to = bounds[i + 1] ?? (bounds[0] ?? 0) + 180;
    return [solvePiece(growth, from, to), atLine(growth, from)].filter((line) => line !== null);
  });
  const judged = tries.map((line) => ({ line, misfit: misfitOf(growth, line) }));
  const least = Math.min(...judged.map(({ misfit }) => misfit));
  const alike = judged.filter(({ misfit }) => misfit <= least + SAME_MISFIT).map(({ line }) => line);
  return alike.filter((line, i) => alike.findIndex((other) => sameLine(line, other)) === i);
}

/** Misfits nearer than this are one [mm^2]: far below what any gauge tells, far above what arithmetic leaves. */
const SAME_MISFIT = 1e-9;
/** Lines nearer than this are one [deg]. */
const ONE_LINE_DEG = 0.1;

type Growth = readonly { axisDeg: number; mm: number }[];

/** Least squares where the signs stand: g_i = sign_i (u cos + v sin). Null: the answer lies outside the piece. */
function solvePiece(growth: Growth, fromDeg: number, toDeg: number): WearLine | null {
  const inside = (fromDeg + toDeg) / 2;
  let [cc, cs, ss, gc, gs] = [0, 0, 0, 0, 0];
  for (const { axisDeg, mm } of growth) {
    const sign = Math.cos((axisDeg - inside) * RAD) >= 0 ? 1 : -1;
    const [c, s] = [sign * Math.cos(axisDeg * RAD), sign * Math.sin(axisDeg * RAD)];
    cc += c * c;
    cs += c * s;
    ss += s * s;
    gc += mm * c;
    gs += mm * s;
  }
  const determinant = cc * ss - cs * cs;
  // one axis only: nothing tells the line
  if (determinant < 1e-9) return null;
  const u = (gc * ss - gs * cs) / determinant;
  const v = (gs * cc - gc * cs) / determinant;
  const wearMm = Math.hypot(u, v);
  if (wearMm === 0) return { wearMm: 0, lineDeg: inside % 180 };
  const lineDeg = Math.atan2(v, u) / RAD;
  const turned = fromDeg + ((((lineDeg - fromDeg) % 360) + 360) % 360);
  return turned <= toDeg + 1e-9 ? { wearMm, lineDeg: turned % 180 } : null;
}

/** Best wear along a given line; along an axis when there is only one. */
function atLine(growth: Growth, boundDeg: number): WearLine {
  const lineDeg = growth.length === 1 ? (growth[0]?.axisDeg ?? 0) : boundDeg;
  let [top, bottom] = [0, 0];
  for (const { axisDeg, mm } of growth) {
    const c = Math.abs(Math.cos((axisDeg - lineDeg) * RAD));
    top += mm * c;
    bottom += c * c;
  }
  return { wearMm: bottom > 0 ? Math.max(0, top / bottom) : 0, lineDeg };
}

const misfitOf = (growth: Growth, { wearMm, lineDeg }: WearLine): number =>
  growth.reduce((sum, { axisDeg, mm }) => sum + (mm - wearMm * Math.abs(Math.cos((axisDeg - lineDeg) * RAD))) ** 2, 0);

function sameLine(one: WearLine, other: WearLine): boolean {
  const apart = Math.abs(one.lineDeg - other.lineDeg) % 180;
  return (one.wearMm < 1e-9 && other.wearMm < 1e-9) || Math.min(apart, 180 - apart) < ONE_LINE_DEG;
}
