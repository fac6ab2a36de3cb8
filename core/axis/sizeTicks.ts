import { type SizeScale, sizeToPx } from './scale.ts';

export type SizeTick = { sizeMm: number; y: number; figure: boolean };

const LEAST_TICK_PX = 7;
const LEAST_FIGURE_PX = 26;

/** Ticks of a size scale: figures at 1, 2 or 5 of some power of ten where they have room, finer ticks between. */
export function sizeTicks(scale: SizeScale): { ticks: SizeTick[]; figureStepMm: number; decimals: number } {
  const pxPerMm = (scale.fromPx - scale.toPx) / (scale.toMm - scale.fromMm);
  const figureStepMm = roundStep(LEAST_FIGURE_PX / pxPerMm);
  const tickStepMm =
    [10, 5, 2].map((n) => figureStepMm / n).find((step) => step * pxPerMm >= LEAST_TICK_PX) ?? figureStepMm;
  const ticks: SizeTick[] = [];
  const last = Math.floor(scale.toMm / tickStepMm + 1e-9);
  for (let n = Math.ceil(scale.fromMm / tickStepMm - 1e-9); n <= last; n++) {
    const sizeMm = n * tickStepMm;
    const ofFigure = sizeMm / figureStepMm;
    ticks.push({ sizeMm, y: sizeToPx(scale, sizeMm), figure: Math.abs(ofFigure - Math.round(ofFigure)) < 1e-6 });
  }
  return { ticks, figureStepMm, decimals: Math.max(0, Math.ceil(-Math.log10(figureStepMm) - 1e-9)) };
}

/** The smallest of 1, 2, 5 times a power of ten that is no less. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return [1, 2, 5].map((n) => n * power).find((step) => step >= least * (1 - 1e-9)) ?? 10 * power;
}
