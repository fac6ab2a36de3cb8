import type { ReactElement } from 'react';
import type { Rebuild } from '../../contract/rebuild.ts';
import type { Writing } from '../../words/quantityText.ts';
import { block, text, view } from '../elements.ts';
import { WEIGHT } from '../paperFonts.ts';
import { partSketch } from './partSketch.ts';
import { makeSizesText, partName, rebuildWords as words } from './rebuildWords.ts';

type Make = Rebuild['lines'][number]['makes'][number];

/** A part to make with its sizes, its stock and its drawing. */
export const partToMake = (item: string, make: Make, writing: Writing): ReactElement =>
  block(
    { marginTop: 12, flexDirection: 'row', alignItems: 'center' },
    view(
      { flexGrow: 1, flexBasis: 0, paddingRight: 10 },
      text({ sizePt: 12, weight: WEIGHT.head }, {}, words.partHead(item, make.count, partName(make))),
      text({ face: 'table', sizePt: 11 }, {}, makeSizesText(make, writing)),
      text({ face: 'table', sizePt: 11 }, {}, [make.material, make.stock].filter(Boolean).join(', ')),
    ),
    partSketch(make, writing),
  );
