import { Document, Page, renderToBuffer, Text } from '@react-pdf/renderer';
import { createElement as element } from 'react';
import { expect, test } from 'vitest';
import { pdfPages } from './pdfText.ts';

test('a paper of two pages is read back page by page, with its size', async () => {
  const page = (text: string) => element(Page, { size: 'A4' }, element(Text, {}, text));
  const bytes = await renderToBuffer(element(Document, {}, page('come in at 4,120 h'), page('second sheet')));
  const pages = await pdfPages(bytes);
  expect(pages.map(({ text }) => text.trim())).toEqual(['come in at 4,120 h', 'second sheet']);
  // ISO 216: A4 is 210 mm x 297 mm
  expect(pages[0]?.widthMm).toBeCloseTo(210, 0);
  expect(pages[0]?.heightMm).toBeCloseTo(297, 0);
});
