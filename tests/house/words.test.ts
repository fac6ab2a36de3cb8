import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const top = join(import.meta.dirname, '..', '..');

/** Files under version control, and new ones that would be. */
const tracked = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
  cwd: top,
  encoding: 'utf8',
})
  .split('\n')
  .filter((file) => file !== '' && existsSync(join(top, file)));

const isText = (file: string): boolean => !/\.(png|jpg|ico|woff2?|ttf|pdf|hoursandwear|sqlite)$/.test(file);
const read = (file: string): string => readFileSync(join(top, file), 'utf8');

/** Each line of a text in which one of the patterns is found. */
const linesWith = (text: string, patterns: readonly RegExp[]): string[] =>
  text.split('\n').filter((line) => patterns.some((pattern) => pattern.test(line)));

describe('nothing in the files speaks of one computer', () => {
  // put together here, so that this file does not hold what it looks for
  const folders = ['work', 'home', 'root', 'Users'];
  const MACHINE_PATHS = [
    new RegExp(`(^|[\\s'"\`(=])/(${folders.join('|')})/[\\w.-]+/[\\w.-]+`),
    new RegExp(['[A-Z]:', 'Users', ''].join('\\\\\\\\?')),
  ];
  const REGISTRIES = [
    new RegExp(['registry', '(npmjs|yarnpkg)', '(org|com)'].join('\\.')),
    /https?:\/\/[\w.-]+\/(artifactory|nexus|repository)\//,
  ];

  test('no file names a path of the computer it was written on', () => {
    // invented folders, in examples for people and in tests
    const invented = /\/(home|Users)\/(smith|shop)\b/;
    const found = tracked
      .filter((file) => isText(file) && file !== 'package-lock.json')
      .flatMap((file) =>
        linesWith(read(file), MACHINE_PATHS)
          .filter((line) => !invented.test(line))
          .map((line) => `${file}: ${line.trim()}`),
      );
    expect(found).toEqual([]);
    expect(tracked.length).toBeGreaterThan(150);
  });

  test('no file names the place packages were fetched from', () => {
    const found = tracked.filter(isText).filter((file) => linesWith(read(file), REGISTRIES).length > 0);
    expect(found).toEqual([]);
  });

  test('the lock file holds sums of packages and no addresses of them', () => {
    const lock = JSON.parse(read('package-lock.json')) as {
      packages: Record<string, { resolved?: string; integrity?: string }>;
    };
    const entries = Object.entries(lock.packages).filter(([name]) => name !== '');
    expect(entries.filter(([, entry]) => entry.resolved !== undefined)).toEqual([]);
    expect(entries.filter(([, entry]) => entry.integrity === undefined).map(([name]) => name)).toEqual([]);
    expect(entries.length).toBeGreaterThan(100);
  });

  test('the check can fail: planted lines are found', () => {
    const path = `const record = '/${folders[1]}/anna/winter/record';`;
    expect(linesWith(path, MACHINE_PATHS)).toHaveLength(1);
    expect(linesWith(`see ${['https://registry', 'npmjs', 'org'].join('.')}/zod`, REGISTRIES)).toHaveLength(1);
    expect(linesWith(`readFileSync('./${folders[0]}/record')`, MACHINE_PATHS)).toHaveLength(0);
  });
});

test('only packages pinned to one version are declared', () => {
  const declared = JSON.parse(read('package.json')) as Record<string, Record<string, string>>;
  const versions = ['dependencies', 'devDependencies', 'optionalDependencies'].flatMap((kind) =>
    Object.entries(declared[kind] ?? {}),
  );
  expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
});
