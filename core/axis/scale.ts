/** Which hours lie where, left to right [h, px]. */
export type HoursScale = {
  readonly fromHours: number;
  readonly toHours: number;
  readonly fromPx: number;
  readonly toPx: number;
};

/** Which sizes lie where; millimetres grow upwards, so `fromPx` (of the smaller size) is the larger number [mm, px]. */
export type SizeScale = {
  readonly fromMm: number;
  readonly toMm: number;
  readonly fromPx: number;
  readonly toPx: number;
};

export function hoursScale(scale: HoursScale): HoursScale {
  if (!(scale.toHours > scale.fromHours)) throw new Error('Broken invariant: an hours scale spans some hours');
  if (!(scale.toPx > scale.fromPx)) throw new Error('Broken invariant: an hours scale runs left to right');
  return scale;
}

export function sizeScale(scale: SizeScale): SizeScale {
  if (!(scale.toMm > scale.fromMm)) throw new Error('Broken invariant: a size scale spans some millimetres');
  if (!(scale.fromPx > scale.toPx)) throw new Error('Broken invariant: a size scale runs bottom to top');
  return scale;
}

export const pxPerHour = (scale: HoursScale): number => (scale.toPx - scale.fromPx) / (scale.toHours - scale.fromHours);

export const hoursToPx = (scale: HoursScale, hours: number): number =>
  scale.fromPx + (hours - scale.fromHours) * pxPerHour(scale);

export const pxToHours = (scale: HoursScale, px: number): number =>
  scale.fromHours + (px - scale.fromPx) / pxPerHour(scale);

export const sizeToPx = (scale: SizeScale, sizeMm: number): number =>
  scale.fromPx + ((sizeMm - scale.fromMm) * (scale.toPx - scale.fromPx)) / (scale.toMm - scale.fromMm);

export const onScale = (scale: HoursScale, hours: number): boolean =>
  hours >= scale.fromHours && hours <= scale.toHours;

/** The nearest place on the scale [px]. */
export const clampToScale = (scale: HoursScale, hours: number): number =>
  hoursToPx(scale, Math.min(scale.toHours, Math.max(scale.fromHours, hours)));

/** Two decimals are a hundredth of a pixel: enough for any screen or paper, and short in a path. */
export const px = (value: number): number => Math.round(value * 100) / 100;
