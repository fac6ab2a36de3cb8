import type { ReactElement } from 'react';
import { textWidth } from '../axis/textWidth.ts';
import type { Slip } from '../contract/slip.ts';
import { day } from '../units/day.ts';
import { digitBoxes } from './digitBoxes.ts';
import { A4_WIDTH_PT, fixedView, INK, line, MARGIN_PT, picture, strong, text, view } from './elements.ts';
import { WEIGHT } from './paperFonts.ts';
import { cautionText, planningAidHead } from './slipCautions.ts';
import { longDay } from './slipFigures.ts';
import { meterBoxes, meterDays, slipLabels } from './slipLabels.ts';
import { machineOnPlate } from './slipWords.ts';
import { type TitleBlockCell, titleBlock } from './titleBlock.ts';

const CAUTION = { sizePt: 11, linePt: 14.2, mostLines: 5 } as const;
/** tear-off card, title block, and the clear paper about them */
const UNDER_CAUTION_PT = 100;

/** Text of this weight runs at least so much narrower than the widths known, which are those of the heavy one. */
const NARROWER = 0.96;

/** Room the foot takes at the end of the page [pt]. */
export function footPt(slip: Slip): number {
  const runs =
    (NARROWER * textWidth(`${planningAidHead} ${cautionText(slip)}`, CAUTION.sizePt)) / (A4_WIDTH_PT - 2 * MARGIN_PT);
  return UNDER_CAUTION_PT + CAUTION.linePt * Math.min(CAUTION.mostLines, Math.ceil(runs));
}

/** Stands at the bottom of the page whatever is above it. */
export const slipFoot = (slip: Slip): ReactElement =>
  fixedView(
    {
      left: MARGIN_PT,
      right: MARGIN_PT,
      bottom: MARGIN_PT,
      height: footPt(slip),
      justifyContent: 'flex-end',
    },
    view(
      { borderTopWidth: 0.8, borderTopColor: INK, paddingTop: 5, paddingBottom: 6 },
      text(
        { face: 'table', sizePt: CAUTION.sizePt, lines: CAUTION.mostLines },
        {},
        strong(planningAidHead),
        ` ${cautionText(slip)}`,
      ),
    ),
    tearLine(),
    meterCard(slip),
    titleBlock(titleCells(slip)),
  );

/** Across the whole sheet, margins too: here it is torn off. */
const tearLine = (): ReactElement =>
  view(
    { marginLeft: -MARGIN_PT, width: A4_WIDTH_PT },
    picture({ width: 595, height: 2, widthPt: A4_WIDTH_PT }, line(0, 1, 595, 1, { width: 0.8, dash: '3 2' })),
  );

const meterCard = (slip: Slip): ReactElement =>
  view(
    { flexDirection: 'row', alignItems: 'flex-end', paddingVertical: 6 },
    view(
      { flexGrow: 1, flexBasis: 0, paddingRight: 14 },
      text({ sizePt: 12, weight: WEIGHT.head }, {}, slipLabels.meterCard(slip)),
      text({ face: 'table', sizePt: 11, lines: 2 }, {}, slipLabels.meterCardBy(slip)),
    ),
    ...meterDays(day(slip.madeOn)).map((on) =>
      view(
        { marginLeft: 12 },
        text({ face: 'table', sizePt: 11 }, { marginBottom: 2 }, longDay(on)),
        digitBoxes(meterBoxes(slip)),
      ),
    ),
  );

const titleCells = (slip: Slip): TitleBlockCell[] => [
  [slipLabels.machine, machineOnPlate(slip), 5],
  [slipLabels.asOf, slip.asOf, 2],
  [slipLabels.restsOn, slipLabels.basis(slip), 4.7],
  [slipLabels.measuredBy, slip.measuredBy === '' ? slipLabels.nobody : slip.measuredBy, 2.3],
  [slipLabels.sheet, slipLabels.oneOfOne, 1.2],
];
