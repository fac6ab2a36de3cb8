import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Font } from '@react-pdf/renderer';
import { sfntOfWoff } from './sfntOfWoff.ts';

/**
 * Fonts of the papers, from the packages that carry them: nothing is fetched. Each stack ends in a face that knows the
 * letters and signs the first ones lack (Ł and Ą are in the extended set, ≤ in the last face), glyph by glyph.
 */
export const sentenceFont: string[] = ['Sofia Sans', 'Sofia Sans Extended', 'DejaVu Sans Condensed'];
export const tableFont: string[] = [
  'Sofia Sans Semi Condensed',
  'Sofia Sans Semi Condensed Extended',
  'DejaVu Sans Condensed',
];

export const WEIGHT = { text: 400, label: 500, head: 700 } as const;

const packages = join(import.meta.dirname, '../../node_modules');

function registerFamily(family: string, folder: string): void {
  for (const fontWeight of Object.values(WEIGHT)) {
    const bare = (subset: string) => {
      const file = join(packages, '@fontsource', folder, 'files', `${folder}-${subset}-${fontWeight}-normal.woff`);
      return `data:font/ttf;base64,${Buffer.from(sfntOfWoff(readFileSync(file))).toString('base64')}`;
    };
    Font.register({ family, src: bare('latin'), fontWeight });
    Font.register({ family: `${family} Extended`, src: bare('latin-ext'), fontWeight });
  }
}

let registered = false;

/** Registers the fonts, once. */
export function registerPaperFonts(): void {
  if (registered) return;
  registered = true;
  registerFamily('Sofia Sans', 'sofia-sans');
  registerFamily('Sofia Sans Semi Condensed', 'sofia-sans-semi-condensed');
  for (const fontWeight of Object.values(WEIGHT)) {
    const file = fontWeight === WEIGHT.head ? 'DejaVuSansCondensed-Bold.ttf' : 'DejaVuSansCondensed.ttf';
    Font.register({ family: 'DejaVu Sans Condensed', src: join(packages, 'dejavu-fonts-ttf/ttf', file), fontWeight });
  }
}
