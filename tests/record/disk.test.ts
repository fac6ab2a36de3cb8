import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { machinesList } from '#core/contract/machine.ts';
import { aShopWithAHitch } from '#tests/support/aHitch.ts';
import { aProgramAt } from '#tests/support/aProgram.ts';
import { builtScript } from '#tests/support/builtScript.ts';
import { top } from '#tests/support/runScript.ts';

/** Disks and files as a system truly gives them: a disk of three megabytes, a file and a folder that may only be read. */
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'disk-'));
});
afterEach(() => {
  chmodSync(folder, 0o755);
  rmSync(folder, { recursive: true, force: true });
});

const OWN_MOUNTS = ['--map-root-user', '--mount'];
const canMount = spawnSync('unshare', [...OWN_MOUNTS, 'true']).status === 0;

function saidBy(command: string, args: string[]) {
  const run = spawnSync(command, args, { cwd: top, encoding: 'utf8' });
  expect(run.stderr).toBe('');
  return JSON.parse(run.stdout);
}

test.skipIf(!canMount)(
  'on a full disk every entry that was acknowledged is there, and it goes on once there is room',
  async () => {
    const mount = 'mount -t tmpfs -o size=3m tmpfs "$0" && exec "$1" "$2" "$0"';
    const script = join(top, await builtScript('tests/support/onTinyDisk.ts'));
    const said = saidBy('unshare', [...OWN_MOUNTS, 'sh', '-c', mount, folder, process.execPath, script]);
    const recordPath = join(folder, 'shop.hoursandwear');
    expect(said.answer).toMatchObject({ ok: false, fault: { code: 'disk-full', facts: { file: recordPath } } });
    expect(said.saved).toBeGreaterThan(0);
    // with the one reading the machine was taken in with
    expect(said.afterwards).toBe(said.saved + 1);
    expect(said).toMatchObject({ list: true, withRoom: true, integrity: 'ok', defects: [] });
    // a backup is not made where it would fill the disk, and that stands in the state of the record
    expect(said.backUp).toMatchObject({
      ok: false,
      fault: { code: 'backup-would-fill-disk', facts: { neededMb: 201 } },
    });
    expect(said.warnings).toMatchObject([{ code: 'backup-failed', facts: { reason: 'backup-would-fill-disk' } }]);
    // another record that finds no room leaves this one open
    expect(said).toMatchObject({ demo: { ok: false, fault: { code: 'disk-full' } }, stillOpen: true });
  },
);

test.skipIf(process.platform === 'win32')('a record that may only be read is shown and takes no entries', async () => {
  const recordPath = join(folder, 'records', 'shop.hoursandwear');
  mkdirSync(join(folder, 'records'));
  chmodSync(folder, 0o755);
  const program = aProgramAt(recordPath);
  await aShopWithAHitch(program);
  await program.ask(machinesList, {});
  program.end();
  const bytes = readFileSync(recordPath);

  const script = join(top, await builtScript('tests/support/onReadOnlyFile.ts'));
  const said = () => saidBy(process.execPath, [script, recordPath]);
  const refused = { ok: false, fault: { code: 'record-read-only', facts: { file: recordPath } } };
  chmodSync(recordPath, 0o444);
  chmodSync(join(folder, 'records'), 0o777);
  const warnings = [{ code: 'record-read-only', facts: { file: recordPath } }];
  expect(said()).toEqual({ open: true, trouble: null, warnings, list: true, save: refused, defects: [] });
  // without leave to write beside it SQLite cannot read it either
  rmSync(`${recordPath}-wal`, { force: true });
  rmSync(`${recordPath}-shm`, { force: true });
  chmodSync(join(folder, 'records'), 0o555);
  expect(said()).toMatchObject({ open: false, trouble: { code: 'record-read-only' }, save: refused, defects: [] });
  chmodSync(join(folder, 'records'), 0o755);
  expect(readFileSync(recordPath).equals(bytes)).toBe(true);
});
