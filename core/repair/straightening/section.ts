import { type Outcome, ok, refuse } from '../../outcome.ts';

/** Cross-section of a bent bar where the press bears. Depth is along the push of the press. */
export type Section =
  | { shape: 'rectangle'; widthMm: number; depthMm: number }
  | { shape: 'round'; diameterMm: number }
  | { shape: 'box'; widthMm: number; depthMm: number; wallMm: number }
  | { shape: 'tube'; diameterMm: number; wallMm: number }
  | { shape: 'I-section'; flangeWidthMm: number; depthMm: number; flangeMm: number; webMm: number };

/** What bending needs to know of a cross-section. */
export type SectionFigures = {
  depthMm: number;
  /** second moment of area [mm4] */
  inertiaMm4: number;
  /** first yield: M = yield x elastic [mm3] */
  elasticMm3: number;
  /** yielded through: M = yield x plastic [mm3] */
  plasticMm3: number;
  /** plastic over elastic: what a bar carries between first yield and bending for good */
  shapeFactor: number;
};

/**
 * Elastic and plastic section moduli. Corners are taken square, as if rolled without fillets.
 *   rectangle: Ze = b h^2 / 6, Zp = b h^2 / 4;  round: Ze = pi d^3 / 32, Zp = d^3 / 6
 *   hollow: of the outside less those of the hole, Ze = I / (h / 2)
 *
 * @refuses section-size: a size that is not over 0, or walls that meet
 * @source plastic design of steel, in any text; shape factors 1.5, 1.70, about 1.24 for a box
 * @checked tests/reference/straightening/straightening.test.ts
 */
export function sectionFigures(section: Section): Outcome<SectionFigures> {
  const { outside, holes } = piecesOf(section);
  const all = [outside, ...holes];
  if (!all.every((piece) => piece.depthMm > 0 && piece.widthMm > 0))
    return refuse({ code: 'section-size', facts: { shape: section.shape } });
  const less = (of: (piece: Piece) => number) => holes.reduce((left, hole) => left - of(hole), of(outside));
  const inertiaMm4 = less(inertia);
  const plasticMm3 = less(plastic);
  const elasticMm3 = inertiaMm4 / (outside.depthMm / 2);
  return ok({
    ...{ depthMm: outside.depthMm, inertiaMm4, elasticMm3, plasticMm3, shapeFactor: plasticMm3 / elasticMm3 },
  });
}

/** A solid shape about the middle of the section. */
type Piece = { round: boolean; widthMm: number; depthMm: number };

const inertia = ({ round, widthMm: b, depthMm: h }: Piece) => (round ? (Math.PI * h ** 4) / 64 : (b * h ** 3) / 12);
const plastic = ({ round, widthMm: b, depthMm: h }: Piece) => (round ? h ** 3 / 6 : (b * h ** 2) / 4);

/** A section as one solid outside and the holes in it, all about one middle. */
function piecesOf(section: Section): { outside: Piece; holes: Piece[] } {
  const solid = (widthMm: number, depthMm: number, round = false): Piece => ({ round, widthMm, depthMm });
  switch (section.shape) {
    case 'rectangle':
      return { outside: solid(section.widthMm, section.depthMm), holes: [] };
    case 'round':
      return { outside: solid(section.diameterMm, section.diameterMm, true), holes: [] };
    case 'box': {
      const { widthMm, depthMm, wallMm } = section;
      return { outside: solid(widthMm, depthMm), holes: [solid(widthMm - 2 * wallMm, depthMm - 2 * wallMm)] };
    }
    case 'tube': {
      const { diameterMm, wallMm } = section;
      const holeMm = diameterMm - 2 * wallMm;
      return { outside: solid(diameterMm, diameterMm, true), holes: [solid(holeMm, holeMm, true)] };
    }
    case 'I-section': {
      const { flangeWidthMm, depthMm, flangeMm, webMm } = section;
      // the two hollows beside the web, taken as one
      return { outside: solid(flangeWidthMm, depthMm), holes: [solid(flangeWidthMm - webMm, depthMm - 2 * flangeMm)] };
    }
  }
}
