import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const RENDERER = join(import.meta.dirname, '../../renderer');

const sheets = readdirSync(RENDERER, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.css'))
  .map((path) => ({ path, css: readFileSync(join(RENDERER, path), 'utf8') }));

/** Classes that a style sheet gives a look of their own, wherever they stand: ".row {", not ".grid .row {". */
const claimed = (css: string): string[] =>
  [...css.replace(/\/\*[\s\S]*?\*\//g, '').matchAll(/(?:^|[},])\s*\.([\w-]+)(?=\s*[,{])/g)].map(
    ([, name]) => name ?? '',
  );

const claimedTwice = (of: readonly { path: string; css: string }[]): string[] => {
  const owner = new Map<string, string>();
  const twice: string[] = [];
  for (const { path, css } of of) {
    for (const name of new Set(claimed(css))) {
      const other = owner.get(name);
      if (other !== undefined) twice.push(`.${name}: ${other} and ${path}`);
      owner.set(name, path);
    }
  }
  return twice;
};

// styles come with the screen that is opened first and stay: one name in two sheets, and a screen looks by what was open before
test('no class is styled bare in two style sheets', () => {
  expect(sheets.length).toBeGreaterThan(10);
  expect(claimedTwice(sheets)).toEqual([]);
});

test('one that is would be found', () => {
  const one = { path: 'a.css', css: '.row {\n  color: red;\n}\n.grid .cell,\n.shared {\n}' };
  const other = { path: 'b.css', css: '/* .row { } */\n.list .row {\n}\n.shared {\n}' };
  expect(claimedTwice([one, other])).toEqual(['.shared: a.css and b.css']);
  expect(claimedTwice([one, { path: 'c.css', css: '.row,\n.else {\n}' }])).toEqual(['.row: a.css and c.css']);
});
