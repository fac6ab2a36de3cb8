import type { ReactElement } from 'react';
import type { Rebuild } from '../../contract/rebuild.ts';
import type { Writing } from '../../words/quantityText.ts';
import { block, INK, text, view } from '../elements.ts';
import { WEIGHT } from '../paperFonts.ts';
import type { ShopOnPaper } from '../paperHead.ts';
import type { FoundAtPlace } from './foundAtPlace.ts';
import { printListPaper } from './listPaper.ts';
import { closeOutSheet, cutList, jobCard, machiningList } from './rebuildSections.ts';
import { rebuildWords as words } from './rebuildWords.ts';

export type RebuildPaper = 'job-card' | 'machining-list' | 'cut-list' | 'close-out';
export type OnPaper = {
  shop: ShopOnPaper;
  printedOn: string;
  writing: Writing;
  rebuild: Rebuild;
  found: readonly FoundAtPlace[];
};

const SECTIONS: Record<RebuildPaper, (paper: OnPaper) => ReactElement[]> = {
  'job-card': jobCard,
  'machining-list': machiningList,
  'cut-list': cutList,
  'close-out': closeOutSheet,
};

/** A paper of a job as a PDF on A4, as many pages as it needs. The same job printed on the same day gives the same bytes. */
export const printRebuildPaper = (kind: RebuildPaper, paper: OnPaper): Promise<Uint8Array> => {
  const { rebuild, shop, printedOn } = paper;
  return printListPaper({
    ...{ title: `${words.titles[kind]} ${rebuild.number}`, shop, printedOn },
    sections: [machineHead(rebuild), ...SECTIONS[kind](paper)],
    cells: [
      [words.job, rebuild.number, 1.6],
      [words.machine, [rebuild.machine, rebuild.serial].filter(Boolean).join(', '), 4],
      [words.customer, [rebuild.customer, rebuild.place].filter(Boolean).join(', '), 3.4],
      [words.printed, printedOn, 1.8],
    ],
  });
};

const machineHead = (rebuild: Rebuild): ReactElement =>
  block(
    { paddingVertical: 8 },
    text({ sizePt: 17, weight: WEIGHT.head, lines: 2 }, { lineHeight: 1.15 }, words.machineLine(rebuild)),
    text({ face: 'table', sizePt: 11.5 }, {}, words.plateLine(rebuild)),
    ...rebuild.doNotUse.map((finding) =>
      view(
        { borderWidth: 1.5, borderColor: INK, padding: 4, marginTop: 4 },
        text({ sizePt: 11.5, weight: WEIGHT.head }, {}, `${words.doNotUse} ${finding}`),
      ),
    ),
  );
