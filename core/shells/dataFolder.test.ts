import { expect, test } from 'vitest';
import { dataFolder, defaultRecordPath } from './dataFolder.ts';

test('the record lies in the folder each platform keeps for programs', () => {
  const linux = { platform: 'linux', home: '/home/smith' } as const;
  expect(dataFolder({ ...linux, env: {} })).toBe('/home/smith/.local/share/hours-and-wear');
  expect(dataFolder({ ...linux, env: { XDG_DATA_HOME: '/data' } })).toBe('/data/hours-and-wear');
  expect(dataFolder({ ...linux, env: { XDG_DATA_HOME: 'data' } })).toBe('/home/smith/.local/share/hours-and-wear');
  expect(dataFolder({ platform: 'darwin', home: '/Users/smith', env: {} })).toBe(
    '/Users/smith/Library/Application Support/Hours and Wear',
  );
  expect(dataFolder({ platform: 'win32', home: '/u', env: { APPDATA: '/u/roaming' } })).toBe(
    '/u/roaming/Hours and Wear',
  );
  expect(defaultRecordPath('/data')).toBe('/data/shop.hoursandwear');
});
