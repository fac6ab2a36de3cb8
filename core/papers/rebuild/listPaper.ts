import { Document, Page, renderToBuffer, Text } from '@react-pdf/renderer';
import { type ComponentProps, createElement, type ReactElement } from 'react';
import { fixedView, MARGIN_PT, view } from '../elements.ts';
import { registerPaperFonts, tableFont } from '../paperFonts.ts';
import { paperHead, type ShopOnPaper } from '../paperHead.ts';
import { type TitleBlockCell, titleBlock } from '../titleBlock.ts';
import { rebuildWords as words } from './rebuildWords.ts';

export type ListPaper = {
  title: string;
  shop: ShopOnPaper;
  /** ISO day */
  printedOn: string;
  sections: readonly ReactElement[];
  cells: readonly TitleBlockCell[];
};

/** A paper of sections that flow over as many A4 pages as they need, head and title block on each. The same paper gives the same bytes. */
export async function printListPaper({ title, shop, printedOn, sections, cells }: ListPaper): Promise<Uint8Array> {
  registerPaperFonts();
  const printedAt = new Date(`${printedOn}T00:00:00Z`);
  const document = createElement(
    Document,
    {
      ...{ title, author: shop.name, language: 'en', creator: 'Hours and Wear', producer: 'Hours and Wear' },
      ...{ creationDate: printedAt, modificationDate: printedAt },
    },
    createElement(
      Page,
      { size: 'A4', style: { padding: MARGIN_PT, paddingBottom: MARGIN_PT + 52 } },
      view({}, paperHead(shop, [title, printedOn])),
      ...sections,
      pageNumber(),
      fixedView({ left: MARGIN_PT, right: MARGIN_PT, bottom: MARGIN_PT }, titleBlock(cells)),
    ),
  );
  return renderToBuffer(document as Parameters<typeof renderToBuffer>[0]);
}

type PageNumbers = { pageNumber: number; totalPages: number };

/** Its types leave out what a text may be drawn with. */
const pageNumber = (): ReactElement =>
  createElement(Text, {
    fixed: true,
    style: { position: 'absolute', right: MARGIN_PT, bottom: MARGIN_PT + 36, fontSize: 9.5, fontFamily: tableFont },
    render: ({ pageNumber: page, totalPages }: PageNumbers) => words.page(page, totalPages),
  } as unknown as ComponentProps<typeof Text>);
