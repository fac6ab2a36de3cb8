import { hoursFigure } from '#core/words/quantityText.ts';

/** Words of the machine's picture. */
export const pictureWords = {
  picture: 'All parts on one hours axis',
  machineHours: 'Machine hours, since new',
  winters: (hoursPerYear: number | null): string =>
    hoursPerYear === null ? 'Winters' : `Winters, at ${hoursFigure(hoursPerYear)}\u00A0h a year`,
  wintersTooClose: 'Winters lie too close to draw',
  hoursLeft: 'hours left',
  basis: 'own + like',
  planLine: 'limit reached left of this line: this winter’s work',
  inSight: (shown: number, all: number): string => `${shown} of ${all} rows in sight`,
  beyond: 'beyond',
  noLimit: 'no limit set',
  noHoursYet: 'No machine hours yet: read the meter once and the bars find their places.',
  sketch: (assembly: string): string => `Drawing of the ${assembly} with its positions`,
} as const;
