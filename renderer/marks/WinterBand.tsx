import type { WinterBand as Band } from '#core/axis/winterBands.ts';

/** A winter: a tinted band with two edges. An edge off the scale is not drawn. */
export function WinterBand({ band, y0, y1 }: { band: Band; y0: number; y1: number }) {
  const edges = [band.leftEdge ? `M${band.x0} ${y0}V${y1}` : '', band.rightEdge ? `M${band.x1} ${y0}V${y1}` : ''].join(
    '',
  );
  return (
    <g>
      <rect className="winter" x={band.x0} y={y0} width={Math.max(1, band.x1 - band.x0)} height={y1 - y0} />
      <path className="l-wedge" d={edges} />
    </g>
  );
}

/** The start of the winter after the one being planned: what reaches its limit left of it is this winter's work. */
export const PlanLine = ({ x, y0, y1 }: { x: number; y0: number; y1: number }) => (
  <path className="l-plan" d={`M${x} ${y0}V${y1}`} />
);
