import { expect, test } from 'vitest';
import { defaultRecordPath } from '#core/shells/dataFolder.ts';
import { startArguments } from './startArguments.ts';

test('a plain start opens the usual record', () => {
  expect(startArguments([], '/shop')).toEqual({
    recordPath: defaultRecordPath(),
    noOpen: false,
    inBrowser: false,
    fetchElectron: false,
  });
});

test('a record is named by option or by double-click, from where the person stood', () => {
  expect(startArguments(['--record', 'a/winter'], '/shop').recordPath).toBe('/shop/a/winter');
  expect(startArguments(['--allow-file-access', '/shop/b.hoursandwear'], '/').recordPath).toBe('/shop/b.hoursandwear');
});

test('the other options', () => {
  expect(startArguments(['--no-open', '--as-of', '2026-11-02', '--fetch-electron', '--in-browser'], '/')).toMatchObject(
    {
      noOpen: true,
      inBrowser: true,
      asOf: '2026-11-02',
      fetchElectron: true,
    },
  );
});
