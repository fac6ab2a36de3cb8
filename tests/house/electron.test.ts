import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { top } from '#tests/support/runScript.ts';

const textOf = (file: string): string => readFileSync(join(top, file), 'utf8');
const { devDependencies } = JSON.parse(textOf('package.json')) as { devDependencies: { electron: string } };
const pinned = devDependencies.electron;

test('one Electron is named, to the patch, and it is the one that is locked, installed, packed and held to its checklist', () => {
  expect(pinned).toMatch(/^\d+\.\d+\.\d+$/);
  const { packages } = JSON.parse(textOf('package-lock.json')) as { packages: Record<string, { version?: string }> };
  expect(packages['node_modules/electron']?.version).toBe(pinned);
  expect(JSON.parse(textOf('node_modules/electron/package.json'))).toMatchObject({ version: pinned });
  // electron-builder packs the one installed unless it is told another
  expect(textOf('electron/installers.yml')).not.toMatch(/electronVersion|electronDist|electronDownload/);
  expect(textOf('DEVELOPERS.md')).toContain(`(its documentation, "Security", of version ${pinned.split('.')[0]})`);
});
