import type { ReactElement } from 'react';
import { shortenMiddle, textWidth } from '../axis/textWidth.ts';
import { A4_WIDTH_PT, INK, MARGIN_PT, text, view } from './elements.ts';
import { WEIGHT } from './paperFonts.ts';

/** A cell of the title block: what it is, what stands in it, and its share of the width. */
export type TitleBlockCell = [head: string, words: string, grow: number];

const WORDS_PT = 10.5;
const LEAST_PT = 8.5;
const PADDING_PT = 7;
/** text of this weight runs at least so much narrower than the widths known, which are those of the heavy one */
const NARROWER = 0.96;

/** The title block along the bottom of a paper, as on any drawing. */
export function titleBlock(cells: readonly TitleBlockCell[]): ReactElement {
  const shares = cells.reduce((sum, [, , share]) => sum + share, 0);
  const forWordsPt = A4_WIDTH_PT - 2 * MARGIN_PT - cells.length * (2 * PADDING_PT + 0.9);
  return view(
    { flexDirection: 'row', borderWidth: 0.9, borderColor: INK },
    ...cells.map(([head, words, flexGrow], i) =>
      view(
        {
          flexGrow,
          flexBasis: 0,
          paddingHorizontal: PADDING_PT,
          paddingVertical: 3,
          borderColor: INK,
          borderLeftWidth: i === 0 ? 0 : 0.9,
        },
        text({ face: 'table', sizePt: 9.5 }, {}, head),
        inCell(words, (forWordsPt * flexGrow) / shares),
      ),
    ),
  );
}

/** A name too long for its cell is set smaller, and then loses its middle: machine and serial stand at its ends. */
function inCell(words: string, roomPt: number): ReactElement {
  const fits = NARROWER * textWidth(words, WORDS_PT) <= roomPt;
  const sizePt = fits ? WORDS_PT : LEAST_PT;
  return text(
    { face: 'table', sizePt, weight: WEIGHT.label, lines: 1 },
    { lineHeight: (1.28 * WORDS_PT) / sizePt },
    fits ? words : shortenMiddle(words, roomPt, sizePt),
  );
}
