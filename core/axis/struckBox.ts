import { px } from './scale.ts';

/** A rectangle with both diagonals: do not use. Outline and diagonals in one path, left upper corner at (x, y). */
export const struckBoxPath = (x: number, y: number, width: number, height: number): string =>
  `M${px(x)} ${px(y)}h${px(width)}v${px(height)}h${px(-width)}zl${px(width)} ${px(height)}m0 ${px(-height)}l${px(-width)} ${px(height)}`;
