import type { Brand } from './brand.ts';

/** Millimetres: the only length in the record. */
export type Mm = Brand<number, 'Mm'>;
/** Micrometres: deviations of limits and fits. */
export type Um = Brand<number, 'Um'>;

export const mm = (value: number): Mm => value as Mm;
export const um = (value: number): Um => value as Um;

export const MM_PER_INCH = 25.4; // exact by definition (international yard and pound agreement, 1959)
export const inchToMm = (inch: number): Mm => mm(inch * MM_PER_INCH);
export const mmToInch = (size: number): number => size / MM_PER_INCH;
