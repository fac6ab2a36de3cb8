/** Exact by definition: the international yard and pound agreement, 1959. */
export const MM_PER_INCH = 25.4;

/** In which a shop reads and writes lengths. The record holds millimetres whichever it is. */
export type LengthUnit = 'mm' | 'inch';
