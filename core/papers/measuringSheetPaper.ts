import { Document, Page } from '@react-pdf/renderer';
import { createElement, type ReactElement } from 'react';
import type { MeasuringSheet } from '../contract/measuringSheet.ts';
import { fixedView, MARGIN_PT } from './elements.ts';
import { customerLine, sheetWords as words } from './measuringSheetWords.ts';
import { titleBlock } from './titleBlock.ts';

/** The blank measuring sheet, drawn. Dates of the document are those of the sheet: the same sheet gives the same bytes. */
export function measuringSheetPaper(sheet: MeasuringSheet, pages: readonly ReactElement[][]): ReactElement {
  const printedAt = new Date(`${sheet.printedOn}T00:00:00Z`);
  return createElement(
    Document,
    {
      title: `${words.title}, ${sheet.machine.name}`,
      author: sheet.shop.name,
      creator: 'Hours and Wear',
      producer: 'Hours and Wear',
      language: 'en',
      creationDate: printedAt,
      modificationDate: printedAt,
    },
    ...pages.map((pieces, i) =>
      createElement(
        Page,
        { size: 'A4', style: { paddingTop: MARGIN_PT, paddingHorizontal: MARGIN_PT }, key: i },
        ...pieces,
        foot(sheet, i + 1, pages.length),
      ),
    ),
  );
}

const foot = (sheet: MeasuringSheet, page: number, pages: number): ReactElement =>
  fixedView(
    { left: MARGIN_PT, right: MARGIN_PT, bottom: MARGIN_PT },
    titleBlock([
      [words.machine, [sheet.machine.name, sheet.machine.serial].filter((part) => part !== '').join(', '), 5],
      [words.customer, customerLine(sheet), 4],
      [words.printedCell, sheet.printedOn, 2.2],
      [words.sheet, words.ofPages(page, pages), 1.4],
    ]),
  );
