import { Document, Page } from '@react-pdf/renderer';
import { createElement, type ReactElement } from 'react';
import type { Slip } from '../contract/slip.ts';
import { A4_WIDTH_PT, MARGIN_PT, view } from './elements.ts';
import { slipAxis } from './slipAxis.ts';
import { footPt, slipFoot } from './slipFoot.ts';
import { headline, shopHead } from './slipHead.ts';
import { slipLabels } from './slipLabels.ts';
import { barsExplained, foundAndDone, sectionHead, thenAndWatch } from './slipLists.ts';
import { headlineText } from './slipWords.ts';

/** How much of each list is shown: what is left out is counted on the paper. */
export type SlipRoom = {
  axisRows: number;
  listLines: number;
  watchLines: number;
  drawing: boolean;
  /** last resort, for names of a length nobody foresaw: texts are cut, and the headline is set smaller */
  cut: boolean;
};

/** A slip and the room its lists are shown in. */
export type SlipInRoom = { slip: Slip; room: SlipRoom };

/**
 * Slips as one document, a page each. Its dates are those of the first, so that the same slips give the same bytes.
 */
export function forecastSlipPaper(first: SlipInRoom, ...others: readonly SlipInRoom[]): ReactElement {
  const { slip } = first;
  const madeAt = new Date(`${slip.madeOn}T00:00:00Z`);
  const title = `${slipLabels.slip(slip)}, ${slip.machine.name}`;
  return createElement(
    Document,
    {
      title: others.length === 0 ? title : slipLabels.slips(1 + others.length),
      subject: others.length === 0 ? headlineText(slip) : title,
      author: slip.shop.name,
      creator: 'Hours and Wear',
      producer: 'Hours and Wear',
      language: 'en',
      creationDate: madeAt,
      modificationDate: madeAt,
    },
    ...[first, ...others].map(slipPage),
  );
}

/** The farmer's page, drawn: head, headline, found and done, the axis, what then, how to read it; the foot is fixed. */
function slipPage({ slip, room }: SlipInRoom): ReactElement {
  const widthPt = A4_WIDTH_PT - 2 * MARGIN_PT;
  return createElement(
    Page,
    {
      size: 'A4',
      style: { paddingTop: MARGIN_PT, paddingHorizontal: MARGIN_PT, paddingBottom: MARGIN_PT + footPt(slip) },
    },
    shopHead(slip),
    headline(slip, room.cut),
    foundAndDone(slip, room.listLines),
    ...(slip.axis === null || slip.axis.rows.length === 0
      ? []
      : [axisHead(), slipAxis(slip, slip.axis, room.axisRows, widthPt)]),
    thenAndWatch(slip, room),
    barsExplained(slip),
    slipFoot(slip),
  );
}

const axisHead = (): ReactElement => view({ marginTop: 8, marginBottom: 3 }, sectionHead(slipLabels.axis));
