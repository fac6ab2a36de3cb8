import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { type FoundImport, importsOf } from './importsOf.ts';
import { LAYERS, type Layer } from './layerTable.ts';

const top = join(import.meta.dirname, '..', '..');

const { imports: ALIASES, ...declared } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8')) as {
  imports: Record<string, string>;
  dependencies: Record<string, string>;
  devDependencies: Record<string, string>;
};
const PACKAGES = new Set([...Object.keys(declared.dependencies), ...Object.keys(declared.devDependencies)]);

const sourceFiles = (folder: string): string[] =>
  readdirSync(join(top, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(top.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((file) => !file.includes('node_modules/'));

const isUnder = (file: string, at: string): boolean => file === at || file.startsWith(`${at}/`);
const layerOf = (file: string): Layer | undefined => LAYERS.find((layer) => isUnder(file, layer.at));
const isTest = (file: string): boolean => /\.test\.tsx?$/.test(file) || file.startsWith('tests/');

/** The file a name leads to, or the package it belongs to. */
function leadsTo(file: string, name: string): { file: string } | { package: string } {
  if (name.startsWith('.')) return { file: posix.normalize(posix.join(dirname(file), name)) };
  const alias = Object.entries(ALIASES).find(([pattern]) => name.startsWith(pattern.replace('*', '')));
  if (alias) return { file: posix.normalize(alias[1].replace('*', name.slice(alias[0].length - 1))) };
  if (name.startsWith('node:')) return { package: name };
  return {
    package: name
      .split('/')
      .slice(0, name.startsWith('@') ? 2 : 1)
      .join('/'),
  };
}

/** What is wrong with a file's imports, one sentence each. */
function breachesIn(file: string, imports: readonly FoundImport[]): string[] {
  return imports.flatMap(({ name, typeOnly }) => {
    if (name === null) return isTest(file) ? [] : [`${file}: a module named at run time; name it in the import`];
    const target = leadsTo(file, name);
    return 'package' in target
      ? packageBreach(file, target.package, typeOnly)
      : fileBreach(file, target.file, typeOnly);
  });
}

function packageBreach(file: string, name: string, typeOnly: boolean): string[] {
  if (!name.startsWith('node:') && !PACKAGES.has(name)) return [`${file}: ${name} is not declared in package.json`];
  if (isTest(file)) return [];
  const layer = layerOf(file);
  if (!layer) return [`${file} belongs to no layer of the table`];
  const allowed = layer.packages.some(
    (one) => one === name || (one === `type ${name}` && typeOnly) || (one === 'node:' && name.startsWith('node:')),
  );
  return allowed ? [] : [`${file}: ${layer.at} may not use ${name}; it may use ${listed(layer.packages)}`];
}

function fileBreach(file: string, target: string, typeOnly: boolean): string[] {
  if (isTest(file)) return [];
  const layer = layerOf(file);
  const other = layerOf(target);
  if (!layer) return [`${file} belongs to no layer of the table`];
  if (isTest(target)) return [`${file}: the program may not import tests (${target})`];
  if (!other) return [`${file}: ${target} belongs to no layer of the table`];
  if (other === layer) return [];
  const allowed = layer.imports.some((one) => {
    const ofTypes = one.startsWith('type ');
    const at = ofTypes ? one.slice('type '.length) : one;
    return (!ofTypes || typeOnly) && (at === other.at || (isUnder(at, other.at) && target === at));
  });
  return allowed ? [] : [`${file}: ${layer.at} may not import ${target}; it may import ${listed(layer.imports)}`];
}

const listed = (names: readonly string[]): string => (names.length === 0 ? 'nothing' : names.join(', '));

describe('the house keeps its order', () => {
  const files = ['core', 'electron', 'renderer', 'demo-data', 'tests'].flatMap(sourceFiles);
  const imports = new Map<string, FoundImport[]>();
  beforeAll(() => {
    for (const file of files) imports.set(file, importsOf(file, readFileSync(join(top, file), 'utf8')));
  });

  test('every import of every file is one the table allows', () => {
    const breaches = files.flatMap((file) => breachesIn(file, imports.get(file)!));
    expect(breaches).toEqual([]);
    // never green on nothing
    expect(files.filter((file) => !isTest(file)).length).toBeGreaterThan(100);
    expect(files.filter(isTest).length).toBeGreaterThan(20);
  });

  test('every name leads to a file that is there', () => {
    for (const file of files) {
      for (const { name } of imports.get(file)!) {
        const target = name === null ? { package: '' } : leadsTo(file, name);
        if ('file' in target) expect(existsSync(join(top, target.file)), `${file} imports ${name}`).toBe(true);
      }
    }
  });
});

describe('the check can fail: planted breaches are flagged', () => {
  const planted: [string, string, string][] = [
    [
      'core/fit/planted.ts',
      "import { openRecord } from '../record/openRecord.ts';",
      'core/fit may not import core/record/openRecord.ts',
    ],
    [
      'core/fit/planted.ts',
      "import { openRecord } from '#core/record/openRecord.ts';",
      'core/fit may not import core/record/openRecord.ts',
    ],
    [
      'core/fit/planted.ts',
      "const record = await import('../record/openRecord.ts');",
      'core/fit may not import core/record',
    ],
    [
      'core/fit/planted.ts',
      "export * from '../series/../record/schema.ts';",
      'core/fit may not import core/record/schema.ts',
    ],
    [
      'core/fit/planted.ts',
      "export type { Row } from '../record/schema.ts';",
      'core/fit may not import core/record/schema.ts',
    ],
    [
      'core/fit/planted.ts',
      "type Row = import('../record/schema.ts').Row;",
      'core/fit may not import core/record/schema.ts',
    ],
    [
      'core/fit/planted.ts',
      "new Worker(new URL('../use-cases/work.ts', import.meta.url));",
      'core/fit may not import core/use-cases/work.ts',
    ],
    ['core/fit/planted.ts', "const name = '../record/schema.ts'; await import(name);", 'named at run time'],
    ['core/series/planted.ts', "import Database from 'better-sqlite3';", 'core/series may not use better-sqlite3'],
    ['core/use-cases/planted.ts', "import { eq } from 'drizzle-orm';", 'core/use-cases may not use drizzle-orm'],
    ['core/fit/planted.ts', "import { readFileSync } from 'node:fs';", 'core/fit may not use node:fs'],
    ['core/use-cases/planted.ts', "import { z } from 'zod';", 'core/use-cases may not use zod'],
    [
      'core/use-cases/planted.ts',
      "import { answerWith } from '../shells/answer.ts';",
      'core/use-cases may not import core/shells/answer.ts',
    ],
    [
      'core/axis/planted.ts',
      "import { forecastPart } from '../forecast/forecastPart.ts';",
      'core/axis may not import core/forecast/forecastPart.ts',
    ],
    [
      'core/slip/planted.ts',
      "import { normal } from '../maths/normal.ts';",
      'core/slip may not import core/maths/normal.ts',
    ],
    [
      'core/shells/planted.ts',
      "import { schema } from '../record/schema.ts';",
      'core/shells may not import core/record/schema.ts',
    ],
    [
      'core/exchange/planted.ts',
      "import { Document } from '@react-pdf/renderer';",
      'core/exchange may not use @react-pdf/renderer',
    ],
    ['core/fit/planted.ts', "import { aSeries } from '#tests/support/aSeries.ts';", 'the program may not import tests'],
    [
      'renderer/screens/planted.tsx',
      "import { openRecord } from '#core/record/openRecord.ts';",
      'renderer may not import core/record',
    ],
    [
      'renderer/screens/planted.tsx',
      "import { hoursAddHandler } from '#core/use-cases/hours.ts';",
      'renderer may not import core/use-cases',
    ],
    ['renderer/screens/planted.tsx', "import { LineChart } from 'recharts';", 'renderer may not use recharts'],
    ['renderer/screens/planted.tsx', "import { ipcRenderer } from 'electron';", 'renderer may not use electron'],
    [
      'electron/planted.ts',
      "import { openContext } from '#core/use-cases/context.ts';",
      'electron may not import core/use-cases',
    ],
    [
      'electron/preload.ts',
      "import { answerWith } from '#core/shells/answer.ts';",
      'electron/preload.ts may not import core/shells',
    ],
    ['electron/preload.ts', "import { readFileSync } from 'node:fs';", 'electron/preload.ts may not use node:fs'],
    ['core/maths/planted.ts', "import { mean } from 'simple-statistics';", 'simple-statistics is not declared'],
    [
      'tests/way/planted.test.ts',
      "import { mean } from 'simple-statistics/dist/x.js';",
      'simple-statistics is not declared',
    ],
    ['core/stray.ts', "import { ok } from './outcome.ts';", 'belongs to no layer'],
  ];

  test.each(planted)('%s: %s', (file, source, told) => {
    expect(breachesIn(file, importsOf(file, source))).toEqual([expect.stringContaining(told)]);
  });

  test('what is allowed is not flagged', () => {
    const allowed: [string, string][] = [
      ['core/fit/planted.ts', "import { normal } from '../maths/normal.ts';"],
      [
        'core/fit/planted.ts',
        "// import { openRecord } from '../record/openRecord.ts';\nconst text = \"from '../record/x.ts'\";",
      ],
      ['core/axis/planted.ts', "import { type Forecast } from '../forecast/forecastPart.ts';"],
      ['core/record/planted.ts', "import { drizzle } from 'drizzle-orm/better-sqlite3';"],
      ['core/shells/planted.ts', "import { openRecord } from '../record/openRecord.ts';"],
      ['renderer/charts/planted.tsx', "import { LineChart } from 'recharts';"],
      ['electron/planted.ts', "import { app } from 'electron';"],
      ['core/fit/planted.test.ts', "import { openRecord } from '../record/openRecord.ts';"],
    ];
    for (const [file, source] of allowed) expect(breachesIn(file, importsOf(file, source)), source).toEqual([]);
  });
});
