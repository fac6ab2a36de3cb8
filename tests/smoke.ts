import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron } from 'playwright-core';
import { buildProgram } from '#electron/build.ts';
import { electronProgram, fetchElectron } from '#electron/fetchElectron.ts';
import { top } from './support/runScript.ts';

/**
 * `npm run smoke`: what only Electron's own program can show, on a computer that has it. Starts the built program in
 * Electron on a throwaway record, looks whether the window is shut in, and goes the shortest way to a printed slip.
 */

const electron = electronProgram() ?? (await fetchElectron({ again: true }));
if (electron === undefined) {
  console.error('Electron’s program is not here and could not be fetched: nothing was checked.');
  process.exit(1);
}
await buildProgram();

const home = mkdtempSync(join(tmpdir(), 'smoke-'));
const program = await _electron.launch({
  executablePath: electron,
  args: [top, '--record', join(home, 'shop.hoursandwear'), '--as-of', '2026-11-02'],
  env: { ...(process.env as Record<string, string>), XDG_DATA_HOME: home, APPDATA: home },
});
/** Majors that are still mended. @source Electron's documentation, "Electron Releases": the latest three */
const MENDED_MAJORS = 3;
const done: string[] = [];
const check = async (what: string, look: () => Promise<void>) => {
  await look();
  done.push(what);
  console.log(`ok  ${what}`);
};

try {
  const window = await program.firstWindow();
  await check('the window shows the program’s own page', async () => {
    await window.getByRole('button', { name: /Start empty/ }).waitFor();
    assert.equal(new URL(window.url()).protocol, 'app:');
  });
  await check('the page has no Node and no Electron, only its bridge', async () => {
    const seen = await window.evaluate(() => ({
      node: typeof Reflect.get(globalThis, 'require') + typeof Reflect.get(globalThis, 'process'),
      bridge: Object.keys(Reflect.get(globalThis, 'hoursAndWear') as object).sort(),
    }));
    assert.deepEqual(seen, { node: 'undefinedundefined', bridge: ['ask', 'pathOfFile'] });
  });
  await check('Electron is the one pinned, and one of the majors that are still mended', async () => {
    const running = await program.evaluate(() => process.versions.electron ?? '');
    const { devDependencies } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8'));
    assert.equal(running, devDependencies.electron);
    const asked = spawnSync('npm', ['view', 'electron', 'dist-tags.latest'], { encoding: 'utf8', shell: true });
    const latest = Number.parseInt(asked.stdout, 10);
    assert.ok(latest > 0, 'the registry was not reached: which Electron is the latest is not known');
    assert.ok(
      Number.parseInt(running, 10) > latest - MENDED_MAJORS,
      `${running} is mended no more: the latest is ${latest}`,
    );
  });
  await check('a new window is not opened', async () => {
    await window.evaluate(() => void open('https://standards.example/'));
    assert.equal(program.windows().length, 1);
  });
  await check('the demo workshop opens and its machines are forecast', async () => {
    await window.getByRole('button', { name: /demo/i }).click();
    await window.getByRole('grid').waitFor({ timeout: 120_000 });
  });
  await check('a slip is made over the real bridge', async () => {
    const pdf = await window.evaluate(async () => {
      type Bridge = { ask(name: string, request: unknown): Promise<{ ok: boolean; value?: { pdfBase64: string } }> };
      const bridge = Reflect.get(globalThis, 'hoursAndWear') as Bridge;
      return (await bridge.ask('slip/preview', { machineId: 1 })).value?.pdfBase64.slice(0, 8);
    });
    assert.equal(
      Buffer.from(pdf ?? '', 'base64')
        .toString()
        .slice(0, 5),
      '%PDF-',
    );
  });
} finally {
  await program.close();
  rmSync(home, { recursive: true, force: true });
}
console.log(`\n${done.length} checks held. Go on with the list under "On a computer with Electron" in DEVELOPERS.md.`);
