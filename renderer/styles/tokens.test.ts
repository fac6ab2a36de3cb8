import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/**
 * Contrast as WCAG 2.2 defines it ("relative luminance" and "contrast ratio", W3C Recommendation of 5 October 2023):
 * at least 4.5 for words, 3 for graphics that carry meaning (success criteria 1.4.3 and 1.4.11).
 */
type Theme = 'light' | 'dark';
const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');

function colour(token: string, theme: Theme): string {
  const found = css.match(new RegExp(`--${token}: light-dark\\((#[0-9a-f]{6}), (#[0-9a-f]{6})\\)`));
  const hex = found?.[theme === 'light' ? 1 : 2];
  if (!hex) throw new Error(`tokens.css has no ${token}`);
  return hex;
}

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [bright = 0, dim = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (bright + 0.05) / (dim + 0.05);
}

/** Which grounds a colour may stand on, and the least contrast it keeps there. */
const papers = ['sheet', 'field', 'desk', 'winter', 'bluewash', 'redwash', 'brasswash'];
const stands: [token: string, least: number, on: string[]][] = [
  ['ink', 7, papers],
  ['ink2', 4.5, papers],
  ['red', 4.5, papers],
  ['blue', 4.5, papers],
  ['brass', 4.5, papers],
  ['line', 3, ['sheet', 'field', 'winter', 'bluewash', 'redwash', 'brasswash']],
  ['wedge', 3, ['sheet', 'winter', 'bluewash']],
];

describe.each<Theme>(['light', 'dark'])('%s', (theme) => {
  it.each(stands)('%s keeps %d on every ground it may stand on', (token, least, grounds) => {
    for (const ground of grounds) {
      const ratio = contrast(colour(token, theme), colour(ground, theme));
      expect(ratio, `${token} on ${ground}: ${ratio.toFixed(2)}`).toBeGreaterThanOrEqual(least);
    }
  });

  it.each(['ink', 'blue', 'red', 'brass'])('sheet-coloured words on a filled %s keep 6.5', (token) => {
    expect(contrast(colour(token, theme), colour('sheet', theme))).toBeGreaterThanOrEqual(6.5);
  });
});

it('the contrast of black on white is 21, of one colour on itself 1', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  expect(contrast('#6c7773', '#6c7773')).toBe(1);
});

it('a pale grey would be caught', () => {
  expect(contrast('#9aa39f', colour('sheet', 'light'))).toBeLessThan(3);
});

it('every colour has a light and a dark, and a system colour for contrast themes', () => {
  const [plain = '', forced = ''] = css.split('@media (forced-colors: active)');
  const tokens = [...plain.matchAll(/--(\w+): light-dark/g)].map((match) => match[1]);
  expect(tokens).toHaveLength(15);
  for (const token of tokens)
    expect(forced).toMatch(new RegExp(`--${token}: (Canvas|CanvasText|Field|ButtonBorder|LinkText);`));
});
