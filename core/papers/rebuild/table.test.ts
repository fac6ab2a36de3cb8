import { expect, test } from 'vitest';
import { pdfPages } from '#tests/support/pdfText.ts';
import { printListPaper } from './listPaper.ts';
import { tableSection } from './table.ts';

test('where a table goes on over a page its columns are headed again, and a heading stands with its first row', async () => {
  const columns = [
    { head: 'Bar', share: 2 },
    { head: 'Cut off', share: 1 },
  ];
  const rows = Array.from({ length: 70 }, (_, row) => [`row ${row}`, `${row} mm`]);
  for (const before of [26, 28, 30]) {
    const pdf = await printListPaper({
      title: 'Bars',
      shop: { name: 'A shop', headLines: [], phone: '', email: '' },
      printedOn: '2026-11-02',
      sections: [tableSection('First', columns, rows.slice(0, before)), tableSection('Second', columns, rows)],
      cells: [['Printed', '2026-11-02', 1]],
    });
    const pages = (await pdfPages(Buffer.from(pdf))).map(({ text }) => text);
    expect(pages.length).toBeGreaterThan(2);
    for (const text of pages) expect(text).toContain('Cut off');
    expect(pages.find((text) => text.includes('Second'))).toMatch(/Second[\s\S]*row 0/);
    expect(pages.filter((text) => text.includes('row 69'))).toHaveLength(1);
  }
});
