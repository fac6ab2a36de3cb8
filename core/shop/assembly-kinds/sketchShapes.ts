import type { SketchStyle } from '../assemblyKinds.ts';

/*
 * Small shapes the built-in drawings are made of. Closed outlines hide what was drawn before them, so a drawing is
 * built from the back to the front. All lengths in the sketch's own units.
 */
export type SketchShape = { d: string; style: SketchStyle };
type Xy = readonly [x: number, y: number];

const xy = (at: Xy): string => `${round(at[0])} ${round(at[1])}`;
const round = (value: number): number => Math.round(value * 10) / 10;

export const shape = (style: SketchStyle, d: string): SketchShape => ({ style, d });

/** A closed figure through corners. */
export const face = (style: SketchStyle, ...corners: Xy[]): SketchShape =>
  shape(style, `M${corners.map(xy).join('L')}Z`);

export const rect = (style: SketchStyle, left: number, top: number, right: number, bottom: number): SketchShape =>
  face(style, [left, top], [right, top], [right, bottom], [left, bottom]);

/** An open line through points; not for outlines, whose inside is filled. */
export const line = (style: 'thin' | 'hidden' | 'centre', ...points: Xy[]): SketchShape =>
  shape(style, `M${points.map(xy).join('L')}`);

export const circle = (style: SketchStyle, at: Xy, radius: number): SketchShape =>
  shape(
    style,
    `M${round(at[0] - radius)} ${round(at[1])}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z`,
  );

/** Centre lines crossing at a pin or hole. */
export const cross = ([x, y]: Xy, reach: number): SketchShape =>
  shape(
    'centre',
    `M${round(x - reach)} ${round(y)}H${round(x + reach)}M${round(x)} ${round(y - reach)}V${round(y + reach)}`,
  );

/** A pin seen from its end in the boss it runs in, with its centre lines. */
export const pin = (at: Xy, bossRadius: number, pinRadius: number): SketchShape[] => [
  circle('outline', at, bossRadius),
  circle('thin', at, pinRadius),
  cross(at, bossRadius + 3),
];

/** A straight bar between two points, as wide as stated at either end. */
export function bar(style: SketchStyle, from: Xy, to: Xy, widthFrom: number, widthTo = widthFrom): SketchShape {
  const { across } = direction(from, to);
  const side = (at: Xy, width: number): Xy => [at[0] + across[0] * width, at[1] + across[1] * width];
  return face(
    style,
    side(from, widthFrom / 2),
    side(to, widthTo / 2),
    side(to, -widthTo / 2),
    side(from, -widthFrom / 2),
  );
}

/** A hydraulic ram with its barrel at `cap`, rod out at `rod`, its eyes and its axis. */
export function ram(cap: Xy, rod: Xy, barrelWidth: number, barrelShare = 0.58): SketchShape[] {
  const { along, length } = direction(cap, rod);
  const on = (distance: number): Xy => [cap[0] + along[0] * distance, cap[1] + along[1] * distance];
  const barrelEnd = length * barrelShare;
  return [
    bar('outline', on(barrelEnd), on(length), barrelWidth * 0.42),
    bar('outline', on(4), on(barrelEnd), barrelWidth),
    bar('outline', on(barrelEnd - 4), on(barrelEnd), barrelWidth + 2.4),
    line('centre', on(-7), on(length + 7)),
  ];
}

function direction(from: Xy, to: Xy): { along: Xy; across: Xy; length: number } {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length = Math.hypot(dx, dy);
  return { along: [dx / length, dy / length], across: [-dy / length, dx / length], length };
}

/** A short wavy line where a part is broken off: the drawing does not show the rest of it. */
export const breakLine = (from: Xy, to: Xy): SketchShape => {
  const { along, across, length } = direction(from, to);
  const at = (share: number, off: number): Xy => [
    from[0] + along[0] * length * share + across[0] * off,
    from[1] + along[1] * length * share + across[1] * off,
  ];
  return shape(
    'thin',
    `M${xy(from)}C${xy(at(0.2, 3))} ${xy(at(0.35, 3))} ${xy(at(0.5, 0))}S${xy(at(0.8, -3))} ${xy(to)}`,
  );
};

/** Ring of an item, and the place on the part its leader ends at. */
export const item = (number: number, ring: Xy, at: Xy) => ({
  item: number,
  ring: { x: ring[0], y: ring[1] },
  at: { x: at[0], y: at[1] },
});
