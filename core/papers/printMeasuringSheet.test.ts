import { describe, expect, test } from 'vitest';
import { zSketch } from '#core/contract/shop.ts';
import { pickUpHitch } from '#core/shop/assembly-kinds/pickUpHitch.ts';
import { day } from '#core/units/day.ts';
import { aMeasuringSheet, aSheetPoint } from '#tests/support/aMeasuringSheet.ts';
import { pdfPages } from '#tests/support/pdfText.ts';
import { printMeasuringSheet } from './printMeasuringSheet.ts';

const printed = async (sheet: Parameters<typeof printMeasuringSheet>[0]) => {
  const { pdf, pages } = await printMeasuringSheet(sheet);
  const read = await pdfPages(pdf);
  expect(read).toHaveLength(pages);
  for (const { widthMm, heightMm } of read) {
    // ISO 216: A4 is 210 mm x 297 mm
    expect(widthMm).toBeCloseTo(210, 0);
    expect(heightMm).toBeCloseTo(297, 0);
  }
  // a reader parts lines where it likes: gaps say nothing
  return read.map(({ text }) => text.replace(/\s+/g, ' '));
};

const times = (text: string, words: string) => text.split(words).length - 1;

describe('the blank measuring sheet', () => {
  test('says whose it is, what is measured, with what, last time in the box, and the limits', async () => {
    const [page = ''] = await printed(aMeasuringSheet());
    for (const words of [
      'Fenwater Works',
      'Vessel 118, Hollin Top, Osmere',
      'Harrod V118, serial V118-2207, pick-up hitch H-2207',
      'Day, month, year',
      'Meter, about 6 870 h',
      'Fitter',
      'Vernier calliper ±0.10',
      'As found',
      'As left',
      'last size, up to 12 Dec 2024',
      'Slide strip 3',
      'new 12.0, renew 9.5, reject 8.5',
      'Before you reach in:',
      'not a certificate',
      '1 of 1',
    ]) {
      expect(page).toContain(words);
    }
    expect(times(page, '10.98')).toBe(4);
    // a box as found and one as left for each station
    expect(times(page, 'front')).toBe(8);
    for (const kind of ['crack', 'bent', 'broken', 'seized', 'missing', 'renewed']) expect(page).toContain(kind);
    expect(times(page, 'do not use')).toBeGreaterThan(4); // the lines, and the caution
  });

  test('in inches, which take more figures, no limit is cut and the error of a gauge says its unit', async () => {
    const sheet = aMeasuringSheet();
    const [page = ''] = await printed({ ...sheet, shop: { ...sheet.shop, writing: 'in.' } });
    expect(page).toContain('its error in inches');
    // 12, 9.5 and 8.5 mm
    expect(page).toContain('new 0.4724');
    expect(page).toContain('renew 0.3740, reject 0.3346');
    expect(page).not.toMatch(/renew [^,]*…/);
  });

  test('many points go on over several pages, their heading said again on each', async () => {
    const points = Array.from({ length: 40 }, (_, i) => aSheetPoint(i + 1, { position: `Position ${i + 1} of forty` }));
    const pages = await printed(
      aMeasuringSheet({ assemblies: [{ name: 'Forage header', serial: '', sketch: null, points }] }),
    );
    expect(pages.length).toBe(4);
    for (const [i, page] of pages.entries()) {
      expect(page).toContain(`${i + 1} of 4`);
      expect(page).toContain('Vessel 118');
      if (page.includes('of forty')) expect(page).toContain('Measuring point, mm');
    }
    const all = pages.join(' ');
    for (const { item } of points) expect(times(all, `Position ${item} of forty`)).toBe(1);
    expect(times(all, 'Before you reach in:')).toBe(1);
  });

  test('each assembly has its own name; the first drawing stands in the head', async () => {
    const sketch = zSketch.parse(pickUpHitch.sketch);
    const pages = await printed(
      aMeasuringSheet({
        assemblies: [
          { name: 'Pick-up hitch', serial: '', sketch, points: [aSheetPoint(1), aSheetPoint(2)] },
          {
            name: 'Front loader',
            serial: 'L-9',
            sketch: null,
            points: [aSheetPoint(7, { position: 'Boom foot pin' })],
          },
        ],
      }),
    );
    const all = pages.join(' ');
    expect(all).toContain('Front loader L-9');
    expect(times(all, 'Measuring point, mm')).toBe(2);
    // ring 13 stands on the drawing alone
    expect(times(all, '13')).toBe(1);
  });

  test('twelve stations have twelve boxes as found and as left', async () => {
    const stations = Array.from({ length: 12 }, (_, i) => ({ station: `s${i + 10}`, lastSizeMm: null }));
    const [page = ''] = await printed(
      aMeasuringSheet({
        lastTakenOn: null,
        assemblies: [{ name: 'Slide', serial: '', sketch: null, points: [aSheetPoint(1, { stations })] }],
      }),
    );
    for (const { station } of stations) expect(times(page, station)).toBe(2);
    expect(page).toContain('not measured before');
  });

  test('what must not be used stands at the head, and every open finding among what was seen', async () => {
    const finding = {
      item: 11,
      position: 'Pivot boss, left',
      takenOn: day('2025-03-04'),
      kind: 'crack' as const,
      severity: 'do-not-use' as const,
      note: '34 mm at the weld toe',
    };
    const [page = ''] = await printed(
      aMeasuringSheet({ openFindings: [finding, { ...finding, item: 4, position: 'Slide strip', severity: 'watch' }] }),
    );
    expect(page).toContain('DO NOT USE');
    expect(times(page, '34 mm at the weld toe')).toBe(3); // the banner, and both among what was seen
    expect(times(page, 'still so')).toBe(2);
  });

  test('a machine with nothing laid out still has a sheet, and a comma shop its commas', async () => {
    const empty = await printed(
      aMeasuringSheet({ assemblies: [], dialHours: null, meterDigits: null, customer: { name: '', place: '' } }),
    );
    expect(empty).toHaveLength(1);
    expect(empty[0]).toContain('No measuring points are laid out');
    const sheet = aMeasuringSheet();
    const [comma = ''] = await printed({ ...sheet, shop: { ...sheet.shop, writing: ',' } });
    expect(comma).toContain('10,98');
    expect(comma).toContain('new 12,0');
  });

  test('the same sheet gives the same bytes, another day gives others', async () => {
    const { pdf: one } = await printMeasuringSheet(aMeasuringSheet());
    const { pdf: again } = await printMeasuringSheet(aMeasuringSheet());
    const { pdf: later } = await printMeasuringSheet(aMeasuringSheet({ printedOn: day('2026-11-07') }));
    expect(Buffer.compare(one, again)).toBe(0);
    expect(Buffer.compare(one, later)).not.toBe(0);
  });
});
