import { expect, test } from 'vitest';
import { findBrowser } from './findBrowser.ts';

const having = (...paths: string[]) => ({ exists: (path: string) => paths.includes(path) });

test('Chromium is preferred wherever it lies on the path, then its relatives', () => {
  const linux = { platform: 'linux', env: { PATH: '/opt/tools:/usr/bin' } } as const;
  expect(findBrowser({ ...linux, ...having('/usr/bin/google-chrome', '/usr/bin/chromium') })).toBe('/usr/bin/chromium');
  expect(findBrowser({ ...linux, ...having('/opt/tools/microsoft-edge') })).toBe('/opt/tools/microsoft-edge');
  expect(findBrowser({ ...linux, ...having() })).toBeUndefined();
});

test('a browser that is named is the one, and when it is not there no other is taken in its place', () => {
  const linux = { platform: 'linux', env: { CHROMIUM: '/opt/own/chrome' } } as const;
  expect(findBrowser({ ...linux, ...having('/opt/own/chrome', '/usr/bin/chromium') })).toBe('/opt/own/chrome');
  expect(findBrowser({ ...linux, ...having('/usr/bin/chromium') })).toBeUndefined();
});

test('the usual places of the other platforms are known', () => {
  const edge = '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge';
  expect(findBrowser({ platform: 'darwin', env: {}, ...having(edge) })).toBe(edge);
  const chrome = 'C:/Programs/Google/Chrome/Application/chrome.exe';
  expect(findBrowser({ platform: 'win32', env: { ProgramFiles: 'C:/Programs' }, ...having(chrome) })).toBe(chrome);
});
