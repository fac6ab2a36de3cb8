import { PHOTO } from '#core/contract/photo.ts';

/** A way to draw a picture small: its sides [px], and how finely JPEG keeps it (0 to 1). */
export type PhotoStep = { widthPx: number; heightPx: number; quality: number };

const QUALITIES = [0.86, 0.78, 0.7, 0.6, 0.5];
const NEXT_SMALLER = 0.8;
/** Below this no photo shows anything. */
const LEAST_PX = 320;

/**
 * Ways to draw a picture so that it weighs little, the finest first: the quality goes down before the size does.
 * A picture smaller than a photo may be is not drawn larger.
 */
export function photoSteps(widthPx: number, heightPx: number): PhotoStep[] {
  const long = Math.max(widthPx, heightPx);
  const steps: PhotoStep[] = [];
  let side = Math.min(long, PHOTO.mostPx);
  do {
    const drawn = { widthPx: drawnPx(widthPx, side / long), heightPx: drawnPx(heightPx, side / long) };
    steps.push(...QUALITIES.map((quality) => ({ ...drawn, quality })));
    side = Math.floor(side * NEXT_SMALLER);
  } while (side >= LEAST_PX);
  return steps;
}

/** A strip a thousand times as long as it is high still has a height. */
const drawnPx = (px: number, scale: number): number => Math.max(1, Math.round(px * scale));
