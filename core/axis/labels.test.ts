import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxesMeet, placeLabels, spreadLabels } from './labels.ts';
import { cutToLines, shortenMiddle, textWidth } from './textWidth.ts';

describe('labels that want a height each', () => {
  it('stay where they are when there is room', () => {
    expect(spreadLabels([10, 60, 120], 16, [0, 200])).toEqual([10, 60, 120]);
  });
  it('move apart about the middle of what they want', () => {
    expect(spreadLabels([100, 104], 16, [0, 200])).toEqual([94, 110]);
    expect(spreadLabels([104, 100, 96], 20, [0, 200])).toEqual([120, 100, 80]);
  });
  it('stay on the sheet', () => {
    expect(spreadLabels([195, 199], 16, [0, 200])).toEqual([184, 200]);
    expect(spreadLabels([1, 2], 16, [8, 200])).toEqual([8, 24]);
  });
  it('never stand nearer than the gap and keep their order', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 400, noNaN: true }), { maxLength: 12 }), (wanted) => {
        const placed = spreadLabels(wanted, 16, [0, 400]);
        const pairs = wanted.map((want, i) => ({ want, at: placed[i] ?? 0 })).sort((a, b) => a.at - b.at);
        for (const [i, pair] of pairs.entries()) {
          const next = pairs[i + 1];
          if (!next) break;
          expect(next.at - pair.at).toBeGreaterThanOrEqual(16 - 1e-6);
          expect(next.want).toBeGreaterThanOrEqual(pair.want);
        }
        for (const at of placed) expect(at >= -1e-6 && at <= 400 + 1e-6).toBe(true);
      }),
    );
  });
});

describe('labels about points', () => {
  const point = (x: number, y: number) => ({
    x,
    y,
    width: 30,
    height: 14,
    sides: ['above-right', 'below-left', 'right', 'left'] as const,
  });
  it('stand at the first side that is free', () => {
    expect(placeLabels([point(50, 50)], [])[0]).toMatchObject({ side: 'above-right', x: 57, y: 29 });
    expect(placeLabels([point(50, 50)], [{ x: 60, y: 30, width: 5, height: 5 }])[0]?.side).toBe('below-left');
  });
  it('of neighbouring points do not cover each other', () => {
    const placed = placeLabels([point(50, 50), point(56, 52), point(60, 48)], []);
    for (const [i, a] of placed.entries()) for (const b of placed.slice(i + 1)) expect(boxesMeet(a, b)).toBe(false);
  });
});

describe('a name too long for its column', () => {
  const name = 'Hook-frame pivot boss of the telescopic carrier beam, left';
  it('is cut in the middle and keeps the end by which it differs', () => {
    const short = shortenMiddle(name, 240, 14);
    expect(textWidth(short, 14)).toBeLessThanOrEqual(240);
    expect(short).toMatch(/^Hook-frame pivot boss.* \.\.\. .*beam, left$/);
  });
  it('stays whole where it fits', () => {
    expect(shortenMiddle(name, 600, 14)).toBe(name);
  });
});

describe('the width of a line of text', () => {
  it('is ten figures of 0.603 of the type size, as the font has it', () => {
    expect(textWidth('0123456789', 100)).toBeCloseTo(603, 6);
    expect(textWidth('1\u2009000', 100)).toBeCloseTo(261.2, 6);
  });
});

describe('a text that is cut to so many lines', () => {
  const room = textWidth('Hook: crack across', 11);
  it('stays whole where it fits, and ends with dots behind a whole word where it does not', () => {
    expect(cutToLines('Hook: crack across', room, 11, 1)).toBe('Hook: crack across');
    expect(cutToLines('Hook: crack across the throat', room, 11, 2)).toBe('Hook: crack across the throat');
    expect(cutToLines('Hook: crack across the throat', room, 11, 1)).toBe('Hook: crack ...');
    expect(cutToLines('Hook: crack across the throat of the hook', room, 11, 2)).toBe(
      'Hook: crack across the throat of ...',
    );
  });
  it('never takes more room than its lines have', () => {
    const words = fc.array(fc.stringMatching(/^[a-z]{1,9}$/), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(words, fc.integer({ min: 1, max: 3 }), (all, lines) => {
        const cut = cutToLines(all.join(' '), 90, 11, lines);
        const laid = [''];
        for (const word of cut.split(' ')) {
          const longer = `${laid.at(-1)} ${word}`.trim();
          if (textWidth(longer, 11) > 90) laid.push(word);
          else laid[laid.length - 1] = longer;
        }
        expect(laid.length).toBeLessThanOrEqual(lines);
        expect(cut === all.join(' ') || cut.endsWith(' ...')).toBe(true);
      }),
    );
  });
});
