import type { ReactElement } from 'react';
import { struckBoxPath } from '../axis/struckBox.ts';
import type { Slip } from '../contract/slip.ts';
import { day } from '../units/day.ts';
import { block, INK, path, picture, text, view } from './elements.ts';
import { WEIGHT } from './paperFonts.ts';
import { paperHead } from './paperHead.ts';
import { longDay } from './slipFigures.ts';
import { slipLabels } from './slipLabels.ts';
import { decidingText, headlineText, machineLine } from './slipWords.ts';

/** The shop's head, and which slip this is. */
export const shopHead = (slip: Slip): ReactElement =>
  paperHead(slip.shop, [slipLabels.slip(slip), longDay(day(slip.madeOn))]);

/** The one sentence that matters; a do-not-use finding stands in a struck box. */
export const headline = (slip: Slip, cut: boolean): ReactElement =>
  slip.headline.kind === 'do-not-use' ? stopHeadline(slip, cut) : plainHeadline(slip, cut);

const headlineSize = (cut: boolean) => ({ sizePt: cut ? 15 : 22.5, weight: WEIGHT.head, lines: cut ? 3 : 4 });

const plainHeadline = (slip: Slip, cut: boolean): ReactElement =>
  block(
    { marginTop: 8 },
    text(headlineSize(cut), { lineHeight: 1.14 }, headlineText(slip)),
    text({ face: 'table', sizePt: 12.5, lines: cut ? 1 : 3 }, { marginTop: 4 }, machineLine(slip)),
    text({ face: 'table', sizePt: 12.5, lines: cut ? 2 : 5 }, { marginTop: 3 }, decidingText(slip)),
  );

const stopHeadline = (slip: Slip, cut: boolean): ReactElement =>
  block(
    { marginTop: 12, borderWidth: 3, borderColor: INK, padding: 12, flexDirection: 'row', alignItems: 'center' },
    picture({ width: 90, height: 64, widthPt: 84 }, path(struckBoxPath(2, 2, 86, 60), { width: 3.5 })),
    view(
      { flexGrow: 1, flexBasis: 0, marginLeft: 16 },
      text(headlineSize(cut), { lineHeight: 1.14 }, headlineText(slip)),
      text({ sizePt: 12.5, lines: cut ? 4 : 8 }, { marginTop: 4 }, decidingText(slip)),
      text({ face: 'table', sizePt: 12.5, lines: 2 }, { marginTop: 4 }, machineLine(slip)),
    ),
  );
