import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const top = join(import.meta.dirname, '..', '..');
const FORMULA_FOLDERS = [
  'core/maths',
  'core/fit',
  'core/forecast',
  'core/series',
  'core/reading',
  'core/iso286',
  'core/repair',
];

type Documented = { name: string; doc: string; isFunction: boolean };

/** Every exported function or constant with the docstring that stands right above it (empty: none). */
function exportsOf(source: string): Documented[] {
  const pattern = /(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*\n)?export (?:async )?(function|const|class) (\w+)([^\n]*)/g;
  return [...source.matchAll(pattern)].map(([, doc = '', kind, name = '', rest = '']) => ({
    name,
    doc,
    isFunction: kind === 'function' || / = (\(|\w+ =>)/.test(rest),
  }));
}

/**
 * A docstring states a formula when one of its lines reads as one: a name, an equals sign, and reckoning after it.
 * `hoursAtLimit = partHours + (limitWearMm - wearMm) / rateMmPerHour`
 */
const statesFormula = (doc: string): boolean =>
  doc.split('\n').some((line) => /^\s*\*?\s*[\w().,| ]+ =[^>=].*[-+*/^√∫Σ(]/.test(line) && !line.includes('@example'));

/** The file opens with a docstring of its own, an empty line after it, that names the source of all that follows. */
const sourceAtHead = /^\/\*\*(?:(?!\*\/)[\s\S])*@source\s+\S(?:(?!\*\/)[\s\S])*\*\/\n\n/;

/** Formulas of a file that say nowhere where they come from: in their own docstring, or in one at the file's head. */
const unsourced = (source: string): string[] =>
  sourceAtHead.test(source)
    ? []
    : exportsOf(source)
        .filter(({ doc }) => statesFormula(doc) && !/@source\s+\S/.test(doc))
        .map(({ name }) => name);

describe('every formula says where it comes from', () => {
  const files = FORMULA_FOLDERS.flatMap((folder) =>
    readdirSync(join(top, folder), { recursive: true, encoding: 'utf8' })
      .map((name) => name.replaceAll('\\', '/'))
      .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
      .map((name) => `${folder}/${name}`),
  );

  test('in the folders that reckon', () => {
    const found = files.flatMap((file) =>
      unsourced(readFileSync(join(top, file), 'utf8')).map((name) => `${file}: ${name} has no @source`),
    );
    expect(found).toEqual([]);
    const formulas = files
      .flatMap((file) => exportsOf(readFileSync(join(top, file), 'utf8')))
      .filter(({ doc }) => statesFormula(doc));
    expect(formulas.length).toBeGreaterThan(5);
  });

  test('every exported function of core/maths has a docstring', () => {
    const bare = files
      .filter((file) => file.startsWith('core/maths/'))
      .flatMap((file) =>
        exportsOf(readFileSync(join(top, file), 'utf8'))
          .filter(({ doc, isFunction }) => isFunction && doc.trim() === '')
          .map(({ name }) => `${file}: ${name}`),
      );
    expect(bare).toEqual([]);
  });

  test('the check can fail: a formula without a source is found, a sentence is not taken for a formula', () => {
    const formula =
      '/**\n * Hours at the limit.\n *   hoursAtLimit = partHours + (limitWearMm - wearMm) / rateMmPerHour\n */\n';
    expect(unsourced(`${formula}export function hoursAtLimit() {}`)).toEqual(['hoursAtLimit']);
    expect(
      unsourced(
        `${formula.replace(' */', ' * @source own derivation: a straight line\n */')}export function hoursAtLimit() {}`,
      ),
    ).toEqual([]);
    expect(unsourced(`${formula.replace(' */', ' * @source\n */')}export const hoursAtLimit = () => 1;`)).toEqual([
      'hoursAtLimit',
    ]);
    expect(unsourced('/** True when the part (or its mate) is worn. */\nexport const isWorn = true;')).toEqual([]);
    expect(
      unsourced(
        `/**\n * Small matrices.\n * @source a book, page 9\n */\n\n${formula}export const hoursAtLimit = () => 1;`,
      ),
    ).toEqual([]);
    expect(unsourced(`${formula}const kept = 1;\nexport function other() {}`)).toEqual([]);
  });
});
