import { type SizeScale, sizeToPx } from './scale.ts';

/** `size` is in the unit of the ticks. */
export type SizeTick = { sizeMm: number; size: number; y: number; figure: boolean };

const LEAST_TICK_PX = 7;
const LEAST_FIGURE_PX = 26;

/**
 * Ticks of a size scale: figures at 1, 2 or 5 of some power of ten where they have room, finer ticks between.
 * @param unitMm what the figures count in [mm]: 1, or an inch
 */
export function sizeTicks(scale: SizeScale, unitMm = 1): { ticks: SizeTick[]; figureStep: number; decimals: number } {
  const pxPerUnit = ((scale.fromPx - scale.toPx) / (scale.toMm - scale.fromMm)) * unitMm;
  const figureStep = roundStep(LEAST_FIGURE_PX / pxPerUnit);
  const tickStep =
    [10, 5, 2].map((n) => figureStep / n).find((step) => step * pxPerUnit >= LEAST_TICK_PX) ?? figureStep;
  const ticks: SizeTick[] = [];
  const last = Math.floor(scale.toMm / unitMm / tickStep + 1e-9);
  for (let n = Math.ceil(scale.fromMm / unitMm / tickStep - 1e-9); n <= last; n++) {
    const size = n * tickStep;
    const sizeMm = size * unitMm;
    const ofFigure = size / figureStep;
    ticks.push({ sizeMm, size, y: sizeToPx(scale, sizeMm), figure: Math.abs(ofFigure - Math.round(ofFigure)) < 1e-6 });
  }
  return { ticks, figureStep, decimals: Math.max(0, Math.ceil(-Math.log10(figureStep) - 1e-9)) };
}

/** The smallest of 1, 2, 5 times a power of ten that is no less. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return [1, 2, 5].map((n) => n * power).find((step) => step >= least * (1 - 1e-9)) ?? 10 * power;
}
