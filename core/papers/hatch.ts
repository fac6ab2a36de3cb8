import { px } from '../axis/scale.ts';

/** Hatching of a bar about y = 0, drawn as lines: paper knows no patterns. */
export type Hatched = { x0: number; x1: number; half: number; stepPx: number };

/**
 * Lines at 45 degrees rising to the right, kept inside x0..x1.
 * @returns one path; empty for a bar too narrow to hatch
 */
export function hatchPath({ x0, x1, half, stepPx }: Hatched): string {
  const lines: string[] = [];
  // a line that starts at s on the lower edge ends at s + 2 half on the upper one
  for (let s = Math.ceil((x0 - 2 * half) / stepPx) * stepPx; s < x1; s += stepPx) {
    const from = Math.max(s, x0);
    const to = Math.min(s + 2 * half, x1);
    if (to > from) lines.push(`M${px(from)} ${px(half - (from - s))}L${px(to)} ${px(half - (to - s))}`);
  }
  return lines.join('');
}

/** The same lines and those falling to the right: material gone, limit passed. */
export const crossHatchPath = (bar: Hatched): string => hatchPath(bar) + mirrored(hatchPath(bar));

const mirrored = (path: string): string => path.replace(/ (-?[\d.]+)/g, (_, y: string) => ` ${-Number(y)}`);
