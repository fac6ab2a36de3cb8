import type { ReactElement } from 'react';
import { picture, rect } from './elements.ts';

/** Boxes in a row, one for each figure to be written. */
export const digitBoxes = (count: number): ReactElement => {
  const width = count * 19 - 2;
  return picture(
    { width, height: 23, widthPt: width },
    ...Array.from({ length: count }, (_, i) => rect(i * 19 + 0.5, 0.5, 15.5, 22, null, { width: 0.9 })),
  );
};
