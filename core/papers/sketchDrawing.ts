import type { ReactElement } from 'react';
import type { Sketch } from '../contract/shop.ts';
import { circle, INK, label, line, PAPER, path, picture, type Stroke } from './elements.ts';
import { WEIGHT } from './paperFonts.ts';

/** Width of each stroke on the paper [pt], whatever units the sketch was drawn in. */
const STROKES: Record<Sketch['shapes'][number]['style'], Stroke & { fill?: string }> = {
  outline: { width: 1.1 },
  thin: { width: 0.6 },
  hidden: { width: 0.6, dash: '3 2' },
  centre: { width: 0.5, dash: '7 2 1.5 2' },
  section: { width: 1.1, fill: '#d9d9d9' },
  'section-other': { width: 1.1, fill: '#efefef' },
  nylon: { width: 0.9, fill: '#f6f6f6' },
};
const RING_PT = 6.6;

/** The assembly's line drawing with its item rings: the numbers are those of the lists and of the axis. */
export function sketchDrawing(sketch: Sketch, most: { widthPt: number; heightPt: number }): ReactElement {
  const unitPt = Math.min(most.widthPt / sketch.width, most.heightPt / sketch.height);
  const inUnits = (pt: number) => pt / unitPt;
  const ring = inUnits(RING_PT);
  return picture(
    { width: sketch.width, height: sketch.height, widthPt: sketch.width * unitPt },
    ...sketch.shapes.map(({ d, style }) => {
      const { width, dash, fill } = STROKES[style];
      const scaledDash = dash
        ?.split(' ')
        .map((pt) => inUnits(Number(pt)))
        .join(' ');
      return path(d, { width: inUnits(width), ...(scaledDash && { dash: scaledDash }) }, fill ?? null);
    }),
    ...sketch.items.flatMap(({ item, at, ring: centre }) => [
      line(at.x, at.y, centre.x, centre.y, { width: inUnits(0.6) }),
      circle(at.x, at.y, inUnits(1.1), INK, { width: 0 }),
      circle(centre.x, centre.y, ring, PAPER, { width: inUnits(0.9) }),
      label(centre.x, centre.y + inUnits(3), String(item), {
        sizePx: inUnits(item > 99 ? 6.5 : 8.5),
        weight: WEIGHT.label,
        anchor: 'middle',
      }),
    ]),
  );
}
