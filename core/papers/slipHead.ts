import type { ReactElement } from 'react';
import { struckBoxPath } from '../axis/struckBox.ts';
import type { Slip } from '../contract/slip.ts';
import { day } from '../units/day.ts';
import { block, INK, path, picture, text, view } from './elements.ts';
import { WEIGHT } from './paperFonts.ts';
import { longDay } from './slipFigures.ts';
import { slipLabels } from './slipLabels.ts';
import { decidingText, headlineText, machineLine } from './slipWords.ts';

/** The shop's head, and which slip this is. */
export const shopHead = (slip: Slip): ReactElement =>
  view(
    {
      flexDirection: 'row',
      justifyContent: 'space-between',
      alignItems: 'flex-end',
      borderBottomWidth: 1.5,
      borderBottomColor: INK,
      paddingBottom: 6,
    },
    view(
      { flexGrow: 1, flexBasis: 0, paddingRight: 20 },
      text({ sizePt: 15, weight: WEIGHT.head, lines: 1 }, {}, slip.shop.name),
      text({ face: 'table', sizePt: 11.5, lines: 2 }, {}, shopLine(slip)),
    ),
    view(
      { alignItems: 'flex-end' },
      text({ face: 'table', sizePt: 11.5 }, {}, slipLabels.slip(slip)),
      text({ face: 'table', sizePt: 11.5 }, {}, longDay(day(slip.madeOn))),
    ),
  );

const shopLine = ({ shop }: Slip): string =>
  [...shop.headLines, shop.phone, shop.email].filter((words) => words !== '').join(', ');

/** The one sentence that matters; a do-not-use finding stands in a struck box. */
export const headline = (slip: Slip): ReactElement =>
  slip.headline.kind === 'do-not-use' ? stopHeadline(slip) : plainHeadline(slip);

const plainHeadline = (slip: Slip): ReactElement =>
  block(
    { marginTop: 8 },
    text({ sizePt: 22.5, weight: WEIGHT.head, lines: 3 }, { lineHeight: 1.14 }, headlineText(slip)),
    text({ face: 'table', sizePt: 12.5, lines: 2 }, { marginTop: 4 }, machineLine(slip)),
    text({ face: 'table', sizePt: 12.5, lines: 4 }, { marginTop: 3 }, decidingText(slip)),
  );

const stopHeadline = (slip: Slip): ReactElement =>
  block(
    { marginTop: 12, borderWidth: 3, borderColor: INK, padding: 12, flexDirection: 'row', alignItems: 'center' },
    picture({ width: 90, height: 64, widthPt: 84 }, path(struckBoxPath(2, 2, 86, 60), { width: 3.5 })),
    view(
      { flexGrow: 1, flexBasis: 0, marginLeft: 16 },
      text({ sizePt: 22.5, weight: WEIGHT.head, lines: 2 }, { lineHeight: 1.14 }, headlineText(slip)),
      text({ sizePt: 12.5, lines: 5 }, { marginTop: 4 }, decidingText(slip)),
      text({ face: 'table', sizePt: 12.5, lines: 2 }, { marginTop: 4 }, machineLine(slip)),
    ),
  );
