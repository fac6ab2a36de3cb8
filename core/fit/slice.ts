/** A slice of what one unknown of a block may be: N(mean, sd^2), with this share of it all. */
export type Slice = {
  /** place among the block's unknowns */
  readonly place: number;
  /** of u ln rate, of a visit's error mm */
  readonly mean: number;
  readonly sd: number;
  readonly lnShare: number;
};

/** Slices from the middle one upwards, and from the one below it downwards. */
export type Outwards = [upwards: Slice[], downwards: Slice[]];

/** Middles of slices lie so many of their sd apart: their sum then hardly ripples. */
export const APART = 1.4;

/** So many slices upwards from the middle one, as many downwards. */
export const outwards = (middle: number, most: number, slice: (k: number) => Slice): Outwards => [
  Array.from({ length: most + 1 }, (_, k) => slice(middle + k)),
  Array.from({ length: most }, (_, k) => slice(middle - 1 - k)),
];
