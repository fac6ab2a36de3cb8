import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

/** Every sentence a screen says stands in renderer/words or core/words, so that another language is another set of files. */
const RENDERER = join(import.meta.dirname, '..', '..', 'renderer');
/** Invented parts that tests and the page of marks are drawn with: names, no sentences. */
const SAMPLES = /^(a[A-Z]|sample)/;
const files = readdirSync(RENDERER, { recursive: true, withFileTypes: true })
  .filter(
    ({ name, parentPath }) =>
      /\.tsx?$/.test(name) && !name.includes('.test.') && !parentPath.endsWith('words') && !SAMPLES.test(name),
  )
  .map(({ name, parentPath }) => join(parentPath, name));

/** Attributes that are read out or shown. */
const SAID = /\b(?:label|aria-label|title|placeholder|alt|hint|head|sub)="([^"]*[A-Za-z]{3}[^"]*)"/g;
/** Text between tags on one line. */
const BETWEEN = /<\/?[A-Za-z][\w.]*(?:\s[^<>]*)?>([^<>{}()=;&|:?]*[A-Za-z]{3}[^<>{}()=;&|]*)<\/?[A-Za-z]/g;
/** A line that is nothing but text, as formatted between tags that stand on lines of their own. */
const ALONE = /^\s*([A-Z][a-z]+(?: [A-Za-z’,-]+)+[.:!?]?)\s*$/;
/** A text of several words in the code. */
const SENTENCE = /['"`]([A-Z][a-z]+(?: [a-z’,-]{2,}){1,}[^'"`]*)['"`]/g;

export function sentencesIn(source: string): string[] {
  const lines = source
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .split('\n')
    .map((line) => line.replace(/(^|\s)\/\/.*$/, ''));
  const found = lines.flatMap((line) => [
    ...[SAID, BETWEEN, SENTENCE].flatMap((pattern) => [...line.matchAll(pattern)].map(([, text = '']) => text.trim())),
    ...(ALONE.exec(line)?.slice(1) ?? []),
  ]);
  return [...new Set(found)];
}

test('no screen keeps a sentence of its own', () => {
  // told to whoever writes the program, never shown
  const toDevelopers = /^Broken invariant/;
  const found = files.flatMap((file) =>
    sentencesIn(readFileSync(file, 'utf8'))
      .filter((text) => !toDevelopers.test(text))
      .map((text) => `${file.slice(RENDERER.length + 1)}: ${text}`),
  );
  expect(found).toEqual([]);
  expect(files.length).toBeGreaterThan(250);
});

test('the check can fail: planted sentences are found', () => {
  expect(sentencesIn('<TextField label="Who said so" />')).toEqual(['Who said so']);
  expect(sentencesIn('  <p>Nothing here yet</p>')).toEqual(['Nothing here yet']);
  expect(sentencesIn('    Press the key\n')).toEqual(['Press the key']);
  expect(sentencesIn("  const said = 'Nothing was lost';")).toEqual(['Nothing was lost']);
  expect(sentencesIn('<p className="second">{words.none}</p> // Nothing of it')).toEqual([]);
});

test('no sentence stands that nothing says', () => {
  const top = join(RENDERER, '..');
  const sources = ['renderer', 'core', 'electron'].flatMap((folder) =>
    readdirSync(join(top, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name) && !name.includes('.test.'))
      .map((name) => join(folder, name)),
  );
  const all = sources.map((file) => readFileSync(join(top, file), 'utf8')).join('\n');
  const used = new Map<string, number>();
  for (const [word] of all.matchAll(/\b\w+\b/g)) used.set(word, (used.get(word) ?? 0) + 1);
  const named = sources
    .filter((file) => /[Ww]ords\.ts$/.test(file))
    .flatMap((file) => [...readFileSync(join(top, file), 'utf8').matchAll(/^ +(\w+): *(?:\(|'|`|$)/gm)])
    .map(([, name = '']) => name);
  expect(named.length).toBeGreaterThan(1000);
  expect(named.filter((name) => used.get(name) === 1)).toEqual([]);
});
