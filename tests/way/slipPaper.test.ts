import { describe, expect, test } from 'vitest';
import type { Slip } from '#core/contract/slip.ts';
import { printSlip } from '#core/papers/printSlip.ts';
import { day } from '#core/units/day.ts';
import { aSlip, aSlipRow } from '#tests/support/aSlip.ts';
import { pdfPages } from '#tests/support/pdfText.ts';

/** The paper read back by another program's reader; thin gaps and line ends as plain spaces. */
async function paper(its: Partial<Slip> = {}): Promise<string> {
  const pages = await pdfPages(await printSlip(aSlip(its)));
  expect(pages).toHaveLength(1);
  expect([pages[0]!.widthMm, pages[0]!.heightMm].map(Math.round)).toEqual([210, 297]);
  return pages[0]!.text.replace(/[\s\u00A0\u2009]+/g, ' ');
}

const range = (low: number | null, middle: number | null, high: number | null) => ({ low, middle, high });
const comeIn = aSlip().headline as Extract<Slip['headline'], { kind: 'come-in' }>;

describe('the forecast slip on paper', () => {
  test('opens with when to come in, on the meter, and says between which hours and about when', async () => {
    const text = await paper();
    expect(text).toContain(
      'Bring the front loader in during winter 27/28, or at 8 500 hours on the meter, whichever comes first.',
    );
    expect(text).toContain('Hollin Top, Osmere. Vessel 118, front loader, at 6 870 hours, about 780 a year.');
    expect(text).toContain('between 8 050 and 9 560 hours, most likely about 8 500');
    expect(text).toContain('At about 780 hours a year that is about June 2028.');
  });

  test('tells what was found and done, by the item numbers of the drawing', async () => {
    const text = await paper();
    expect(text).toContain('What we found, 12 October');
    expect(text).toMatch(/11 Hook, left: cracked, at weld toe, 34 mm ?do not use/);
    expect(text).toContain('12 Cross-tube bush, right 41.36, past 41.0 mm');
    expect(text).toContain('4 Tilt pin, right 39.72, limit 39.5 mm');
    expect(text).toContain('11 Hook, left: new hook welded on, crack-tested');
    expect(text).toContain('12 Cross-tube bush, right: renewed 40.02 mm');
  });

  test('has the hours axis with its figures, what we would do then, what to watch, and the cautions', async () => {
    const text = await paper();
    expect(text).toContain('10 Hook, right 8 600 9 700 11 300');
    expect(text).toContain('7 Ram pin, rod end 7 900 9 400 beyond');
    expect(text).toContain(
      'Renew or make good 3 boom foot pin, left. With it, since it is open then anyway: 2 cross-tube bush, left; 6 tilt pin, left.',
    );
    expect(text).toContain('Grease every pin each 50 hours.');
    expect(text).toContain('This is a planning aid, not a certificate. Stop and ring us if');
    expect(text).toContain('maker’s instructions and the law where you work come first');
    expect(text).toContain('8 own readings, 31 like parts');
    expect(text).toContain('1 May 2027');
  });

  test('says sizes in inches for a shop that measures in them', async () => {
    const shop = { ...aSlip().shop, decimalMark: 'in.' as const };
    const text = await paper({ shop });
    // 41.36 and 40.02 mm in inches, 25.4 mm each: NIST SP 811, B.8
    expect(text).toContain('12 Cross-tube bush, right 1.6283, past 1.6142 in');
    expect(text).toContain('12 Cross-tube bush, right: renewed 1.5756 in');
  });

  test('past two seasons says to check next winter instead of a month', async () => {
    const text = await paper({ headline: { ...comeIn, about: null } });
    expect(text).toContain('Check the front loader next winter, and bring it in by 8 500 hours on the meter.');
    expect(text).toContain('more than two seasons away: check next winter');
    expect(text).not.toContain('2028.');
  });

  test('with an open do-not-use finding says that first, and shows no axis', async () => {
    const text = await paper({
      headline: {
        kind: 'do-not-use',
        items: [11],
        label: 'Hook, left',
        finding: 'crack',
        foundOn: day('2026-10-12'),
        note: 'At weld toe.',
        declined: null,
      },
      axis: null,
      thenDo: [],
    });
    expect(text).toContain('DO NOT USE the front loader');
    expect(text).toContain('Hook, left: cracked, at weld toe. Found 12 October 2026. Ring us before it works again.');
    expect(text).not.toContain('Hours on your meter');
    expect(text).not.toContain('come in');
  });

  test('with its limit gone by says so, and how long ago', async () => {
    const passed = { ...comeIn, kind: 'passed' as const, dialHours: 6650, range: range(6450, 6650, 6840) };
    const likely = await paper({ headline: passed });
    expect(likely).toContain('Bring the front loader in now: it has probably worn past a limit.');
    expect(likely).toContain('its limit was most likely passed about 220 hours ago (30 to 420)');
    const maybe = await paper({ headline: { ...passed, range: range(6830, 7200, 7900), decides: 'low' } });
    expect(maybe).toContain('it may have worn past a limit');
    const measured = await paper({ headline: { ...passed, range: range(6820, 6820, 6820) } });
    expect(measured).toContain('already past its limit when last measured, 50 hours ago');
  });

  test('never orders a machine in by a guess from like parts: says what to measure, and by when', async () => {
    const { items, label } = comeIn;
    const guess = { kind: 'not-measured' as const, items, label, range: range(6450, 6650, 9840), winter: '26/27' };
    const lifts = await paper({ headline: { ...guess, decides: 'low' } });
    expect(lifts).toContain('Have the front loader measured in winter 26/27 at the latest');
    expect(lifts).toContain('too wide to call it in now. It tows or lifts: look for cracks and play');
    expect(lifts).not.toMatch(/in now:/);
    const rests = await paper({ headline: { ...guess, decides: 'middle', winter: null } });
    expect(rests).toContain('Have the front loader measured at its next visit');
    expect(rests).not.toContain('It tows or lifts');
  });

  test('says plainly when nothing can be said', async () => {
    const text = await paper({ headline: { kind: 'no-forecast' }, axis: null, found: [], done: [], thenDo: [] });
    expect(text).toContain('Nothing can be said yet of when the front loader should next come in.');
  });

  test('writes an estimate as one, and a decimal comma where the shop does', async () => {
    const text = await paper({ estimated: true, shop: { ...aSlip().shop, decimalMark: ',' } });
    expect(text).toContain('at about 6 870 hours');
    expect(text).toContain('est. 6 870');
    expect(text).toContain('The hours now are an estimate, last read 5 Nov 2026.');
    expect(text).toContain('41,36, past 41,0');
  });

  test('turns the meter over where it starts again from 0', async () => {
    const axis = {
      ...aSlip().axis!,
      nowDialHours: 9700,
      comeInDialHours: 10350,
      winters: [],
      rows: [aSlipRow(3, 'Pin', [10100, 10350, 10900])],
    };
    const text = await paper({
      meterDigits: 4,
      dialHours: 9700,
      headline: { ...comeIn, dialHours: 10350, range: range(10100, 10350, 10900), winter: null },
      axis,
    });
    expect(text).toContain('Bring the front loader in by 350 hours on the meter, once it has started again from 0.');
    expect(text).toContain('After 9 999 the meter starts again from 0.');
    expect(text).toContain('3 Pin 100 350 900');
  });

  test('speaks of hours only where there is no meter', async () => {
    const text = await paper({ hoursAre: 'machine' });
    expect(text).toContain('or at 8 500 hours, whichever comes first');
    expect(text).not.toContain('on the meter, whichever');
    expect(text).toContain('Hours are since new; no meter has been read.');
  });

  test('prints names with letters and signs beyond the Latin ones whole', async () => {
    const text = await paper({ customer: { name: 'Łódź Ø ≤ Ą Ğş', place: 'Αθήνα' } });
    expect(text).toContain('Łódź Ø ≤ Ą Ğş, Αθήνα');
  });
});

describe('one page, whatever is on it', () => {
  const many = Array.from({ length: 30 }, (_, i) =>
    aSlipRow(i + 1, `Pin ${i + 1}`, [7000 + 40 * i, 7400 + 60 * i, 8000 + 90 * i]),
  );
  const manyFound = Array.from({ length: 30 }, (_, i) => ({
    ...aSlip().found[2]!,
    items: [i + 1],
    label: `Pin ${i + 1}`,
  }));
  const manyDone = Array.from({ length: 30 }, (_, i) => ({
    ...aSlip().done[1]!,
    items: [i + 1],
    label: `Pin ${i + 1}`,
  }));

  test('thirty rows: the soonest are shown, and the paper counts the rest', async () => {
    const text = await paper({ axis: { ...aSlip().axis!, rows: many }, found: manyFound, done: manyDone });
    expect(text).toContain('1 Pin 1 7 000 7 400 8 000');
    const left = Number(/and (\d+) more, all later than these/.exec(text)![1]);
    const shown = many.filter((_, i) =>
      text.includes(`${i + 1} Pin ${i + 1} ${(7000 + 40 * i).toLocaleString('en').replace(',', ' ')}`),
    );
    expect(shown.length + left).toBe(30);
    expect(shown.length).toBeGreaterThanOrEqual(6);
    expect(text).toMatch(/and \d+ more, kept in our record/);
  });

  test('names several times as long, and words without a break', async () => {
    const long = 'The Upper and Lower Fenwater Combined Grassland and Contracting Partnership of Osmere';
    const text = await paper({
      customer: { name: long, place: long },
      machine: { name: long, makeModel: long, serial: 'X'.repeat(100), assembly: `${long} front loader` },
      shop: {
        ...aSlip().shop,
        name: long,
        headLines: [long, long, long, long],
        email: `${'x'.repeat(80)}@fenwater.example`,
      },
      headline: { ...comeIn, label: long },
      axis: { ...aSlip().axis!, rows: many.map((row) => ({ ...row, label: long })) },
      found: manyFound.map((row) => ({ ...row, label: `${long} ${'y'.repeat(60)}` })),
      done: manyDone.map((row) => ({ ...row, label: long })),
      thenDo: many.map(({ items }) => ({ items, label: long, role: 'due' as const })),
      greaseAndWatch: Array.from({ length: 8 }, () => `${long}, ${long}`),
      watch: Array.from({ length: 20 }, (_, i) => ({
        items: [i],
        label: long,
        finding: 'bent' as const,
        severity: 'watch' as const,
        foundOn: day('2026-10-12'),
        note: long,
        declined: { saidOn: day('2026-10-13'), saidBy: long, words: 'x y '.repeat(100) },
      })),
      measuredBy: long,
      cautions: ['dates-not-reliable', 'long-extrapolation', 'from-trade-prior', 'sizes-questioned'],
      sketch: {
        width: 100,
        height: 60,
        shapes: [{ d: 'M0 0H100V60H0Z', style: 'outline' }],
        items: [{ item: 3, at: { x: 20, y: 20 }, ring: { x: 80, y: 20 } }],
      },
    });
    expect(text).toContain('8 500 hours on the meter');
  });

  test('a single part, and none', async () => {
    const [row] = many;
    expect(
      await paper({ axis: { ...aSlip().axis!, rows: [row!] }, found: [], done: [], thenDo: [], greaseAndWatch: [] }),
    ).toContain('1 Pin 1 7 000');
    await paper({ axis: { ...aSlip().axis!, rows: [], comeInDialHours: null }, headline: { kind: 'no-forecast' } });
  });

  test('the same slip gives the same bytes', async () => {
    const [first, second] = [await printSlip(aSlip()), await printSlip(aSlip())];
    expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true);
  });
});
