import { Document, Page, renderToBuffer, Text } from '@react-pdf/renderer';
import { type ComponentProps, createElement, type ReactElement } from 'react';
import type { Rebuild } from '../../contract/rebuild.ts';
import type { DecimalMark } from '../../words/quantityText.ts';
import { block, fixedView, INK, MARGIN_PT, text, view } from '../elements.ts';
import { registerPaperFonts, tableFont, WEIGHT } from '../paperFonts.ts';
import { paperHead, type ShopOnPaper } from '../paperHead.ts';
import { titleBlock } from '../titleBlock.ts';
import { closeOutSheet, cutList, jobCard, machiningList } from './rebuildSections.ts';
import { rebuildWords as words } from './rebuildWords.ts';

export type RebuildPaper = 'job-card' | 'machining-list' | 'cut-list' | 'close-out';
export type OnPaper = {
  shop: ShopOnPaper;
  printedOn: string;
  mark: DecimalMark;
  rebuild: Rebuild;
};

const SECTIONS: Record<RebuildPaper, (paper: OnPaper) => ReactElement[]> = {
  'job-card': jobCard,
  'machining-list': machiningList,
  'cut-list': cutList,
  'close-out': closeOutSheet,
};

/** A paper of a job as a PDF on A4, as many pages as it needs. The same job printed on the same day gives the same bytes. */
export async function printRebuildPaper(kind: RebuildPaper, paper: OnPaper): Promise<Uint8Array> {
  registerPaperFonts();
  const { rebuild, shop, printedOn } = paper;
  const printedAt = new Date(`${printedOn}T00:00:00Z`);
  const document = createElement(
    Document,
    {
      ...{ title: `${words.titles[kind]} ${rebuild.number}`, author: shop.name, language: 'en' },
      ...{ creator: 'Hours and Wear', producer: 'Hours and Wear' },
      ...{ creationDate: printedAt, modificationDate: printedAt },
    },
    createElement(
      Page,
      { size: 'A4', style: { padding: MARGIN_PT, paddingBottom: MARGIN_PT + 52 } },
      view({}, paperHead(shop, [`${words.titles[kind]} ${rebuild.number}`, printedOn])),
      machineHead(rebuild),
      ...SECTIONS[kind](paper),
      pageNumber(),
      foot(paper),
    ),
  );
  return renderToBuffer(document as Parameters<typeof renderToBuffer>[0]);
}

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

type PageNumbers = { pageNumber: number; totalPages: number };

/** Its types leave out what a text may be drawn with. */
const pageNumber = (): ReactElement =>
  createElement(Text, {
    fixed: true,
    style: { position: 'absolute', right: MARGIN_PT, bottom: MARGIN_PT + 36, fontSize: 9.5, fontFamily: tableFont },
    render: ({ pageNumber: page, totalPages }: PageNumbers) => words.page(page, totalPages),
  } as unknown as ComponentProps<typeof Text>);

const foot = ({ rebuild, printedOn }: OnPaper): ReactElement =>
  fixedView(
    { left: MARGIN_PT, right: MARGIN_PT, bottom: MARGIN_PT },
    titleBlock([
      [words.job, rebuild.number, 1.6],
      [words.machine, [rebuild.machine, rebuild.serial].filter(Boolean).join(', '), 4],
      [words.customer, [rebuild.customer, rebuild.place].filter(Boolean).join(', '), 3.4],
      [words.printed, printedOn, 1.8],
    ]),
  );
