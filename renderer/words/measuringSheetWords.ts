import { counted } from './english.ts';

/** Words of the screen that shows a blank measuring sheet. What the paper itself says stands in core/papers. */
export const measuringSheetWords = {
  key: 'Measuring sheet',
  of: (machine: string): string => (machine === '' ? 'Measuring sheet' : `Measuring sheet: ${machine}`),
  sub: (pages: number): string => `blank, ${pages} ${counted(pages, 'page', 'pages')}, to be written on at the bench`,
  printing: 'Laying out the pages',
  toMachine: 'Machine',
  toStripDown: 'Strip-down',
  how: 'On paper, then in the program',
  howNote:
    'The rows are those of the strip-down, in its order, and the ring numbers those of the drawing. The last size stands small in each box. A sheet written on later goes in under Old sheets.',
  howBoxes: 'Boxes are 14.8 mm high: a carpenter’s pencil and a thumb.',
  blockKept: 'Kept',
  notKept: 'no: it is printed anew from the record each time',
  blockFile: 'File',
} as const;
