import type { ReactElement } from 'react';
import { INK, text, view } from './elements.ts';
import { WEIGHT } from './paperFonts.ts';

/** A cell of the title block: what it is, what stands in it, and its share of the width. */
export type TitleBlockCell = [head: string, words: string, grow: number];

/** The title block along the bottom of a paper, as on any drawing. */
export const titleBlock = (cells: readonly TitleBlockCell[]): ReactElement =>
  view(
    { flexDirection: 'row', borderWidth: 0.9, borderColor: INK },
    ...cells.map(([head, words, flexGrow], i) =>
      view(
        {
          flexGrow,
          flexBasis: 0,
          paddingHorizontal: 7,
          paddingVertical: 3,
          borderColor: INK,
          borderLeftWidth: i === 0 ? 0 : 0.9,
        },
        text({ face: 'table', sizePt: 9.5 }, {}, head),
        text({ face: 'table', sizePt: 10.5, weight: WEIGHT.label, lines: 1 }, {}, words),
      ),
    ),
  );
