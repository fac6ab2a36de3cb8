import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hoursAdd } from '#core/contract/hours.ts';
import { machineTakeIn } from '#core/contract/machine.ts';
import {
  recordBackUp,
  recordBackupFolder,
  recordBackups,
  recordBringIn,
  recordConfirmPlace,
  recordOpenDemo,
  recordRestore,
  recordRestorePreview,
  recordStartEmpty,
  recordState,
} from '#core/contract/record.ts';
import { stripDownSave } from '#core/contract/stripDown.ts';
import { schemaVersion } from '#core/record/openRecord.ts';
import { openProgram } from '#core/shells/openProgram.ts';
import { backUpIfDue } from '#core/use-cases/backUps.ts';
import { openContext } from '#core/use-cases/context.ts';
import { aShopWithAHitch, aSize, aTakeIn } from '#tests/support/aHitch.ts';
import { aProgram, aProgramAt, type Program } from '#tests/support/aProgram.ts';

let program: Program;
beforeEach(() => {
  program = aProgram('2026-11-09');
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

const aReading = (machineId: number, dialHours: number) => ({
  machineId,
  takenOn: '2026-10-01',
  kind: 'reading' as const,
  dialHours,
  newDialHours: null,
  errorHours: null,
  saidBy: '',
  sure: true,
});

describe('backups', () => {
  test('hold every row, are one sound file, and are listed newest first', async () => {
    await aShopWithAHitch(program);
    const before = program.rows();
    const backup = await program.ask(recordBackUp, {});
    const sqlite = new Database(backup.file, { readonly: true });
    expect(sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(sqlite.prepare('SELECT count(*) FROM measuring_points').pluck().get()).toBe(2);
    sqlite.close();
    expect(existsSync(`${backup.file}-wal`)).toBe(false);
    const { backups } = await program.ask(recordBackups, {});
    const { notAlso, ...listed } = backup;
    expect(notAlso).toBeNull();
    expect(backups).toEqual([listed]);
    expect(program.rows()).toBe(before);
  });

  test('one a day is made when the program starts', async () => {
    await aShopWithAHitch(program);
    expect(await backUpIfDue(program.context)).not.toBeNull();
    expect(await backUpIfDue(program.context)).toBeNull();
    expect((await program.ask(recordBackups, {})).backups).toHaveLength(1);
  });

  test('restoring brings the rows of then back, and what was there since is in a backup of its own', async () => {
    const { machineId } = await aShopWithAHitch(program);
    const then = program.rows();
    const { file } = await program.ask(recordBackUp, {});
    await program.ask(hoursAdd, aReading(machineId, 3000));
    const since = program.rows();
    expect(since).not.toBe(then);
    const state = await program.ask(recordRestore, { file });
    expect(state.path).toBe(join(program.folder, 'shop.hoursandwear'));
    expect(program.rows()).toBe(then);
    const { backups } = await program.ask(recordBackups, {});
    expect(backups).toHaveLength(2);
    await program.ask(recordRestore, { file: backups[0]!.file });
    expect(program.rows()).toBe(since);
  });

  test('a file that is no backup, or one of a later program, is refused and the record stays open as it was', async () => {
    await aShopWithAHitch(program);
    const before = program.rows();
    const letter = join(program.folder, 'letter.txt');
    writeFileSync(letter, 'Dear Sir');
    expect(await program.answer(recordRestore, { file: letter })).toMatchObject({
      ok: false,
      fault: { code: 'not-a-record' },
    });
    const { file } = await program.ask(recordBackUp, {});
    const later = new Database(file);
    later.pragma(`user_version = ${schemaVersion() + 1}`);
    later.close();
    expect(await program.answer(recordRestore, { file })).toMatchObject({ ok: false, fault: { code: 'record-newer' } });
    expect(program.rows()).toBe(before);
  });

  test('an older record is backed up as it is before it is migrated', async () => {
    await program.ask(recordStartEmpty, {});
    const { path } = await program.ask(recordState, {});
    program.context.close();
    const older = new Database(path!);
    older.pragma('user_version = 1');
    older.close();
    const context = openContext({ recordPath: path, asOf: '2026-11-09' });
    context.close();
    const folders = readdirSync(join(program.folder, 'backups')).filter((name) => name.startsWith('before-migrating-'));
    expect(folders).toHaveLength(1);
    const copy = new Database(
      join(program.folder, 'backups', folders[0]!, readdirSync(join(program.folder, 'backups', folders[0]!))[0]!),
      { readonly: true },
    );
    expect(copy.pragma('user_version', { simple: true })).toBe(1);
    copy.close();
  });
});

describe('a further folder for backups', () => {
  const aStick = () => {
    const stick = join(program.folder, 'stick');
    mkdirSync(stick);
    return stick;
  };

  test('gets every backup from then on, the last one at once, and the room they take is told', async () => {
    await aShopWithAHitch(program);
    const first = await program.ask(recordBackUp, {});
    expect(first.alsoAt).toBeNull();
    const stick = aStick();
    const chosen = await program.ask(recordBackupFolder, { folder: stick });
    expect(chosen.backups.map(({ file }) => file)).toEqual([first.file]);
    const alsoAt = chosen.backups[0]!.alsoAt!;
    expect(alsoAt.startsWith(stick)).toBe(true);
    expect(readFileSync(alsoAt).equals(readFileSync(first.file))).toBe(true);
    const second = await program.ask(recordBackUp, {});
    expect(second).toMatchObject({ notAlso: null, alsoAt: expect.stringContaining(stick) });

    const { folders, backups } = await program.ask(recordBackups, {});
    const bytes = backups.reduce((sum, backup) => sum + backup.bytes, 0);
    expect(folders).toMatchObject([
      { chosen: false, reachable: true, backups: 2, bytes },
      { folder: stick, chosen: true, reachable: true, backups: 2, bytes },
    ]);
    for (const { freeBytes } of folders) expect(freeBytes).toBeGreaterThan(0);
    // the choice is this computer's: nothing of it is in the record
    expect(program.rows()).not.toContain(stick);
  });

  test('that is away is told, leaves the backup as made, and gets it when it is back', async () => {
    await aShopWithAHitch(program);
    const stick = aStick();
    await program.ask(recordBackupFolder, { folder: stick });
    rmSync(stick, { recursive: true });
    const made = await program.ask(recordBackUp, {});
    expect(made).toMatchObject({ alsoAt: null, notAlso: { code: 'folder-not-there', facts: { folder: stick } } });
    expect(existsSync(made.file)).toBe(true);
    expect((await program.ask(recordState, {})).warnings).toEqual([
      { code: 'backup-folder-failed', facts: { reason: 'folder-not-there', folder: stick } },
    ]);
    expect((await program.ask(recordBackups, {})).folders[1]).toMatchObject({ reachable: false, freeBytes: null });
    mkdirSync(stick);
    expect(await backUpIfDue(program.context)).toBeNull();
    expect((await program.ask(recordBackups, {})).backups[0]?.alsoAt).toContain(stick);
    expect((await program.ask(recordState, {})).warnings).toEqual([]);
  });

  test('must be there, must be named whole, and is let go of again', async () => {
    await aShopWithAHitch(program);
    expect(await program.answer(recordBackupFolder, { folder: join(program.folder, 'none') })).toMatchObject({
      ok: false,
      fault: { code: 'folder-not-there', path: 'folder' },
    });
    expect(await program.answer(recordBackupFolder, { folder: 'stick' })).toMatchObject({
      ok: false,
      fault: { code: 'not-as-expected', path: 'folder' },
    });
    await program.ask(recordBackupFolder, { folder: aStick() });
    expect((await program.ask(recordBackupFolder, { folder: null })).folders).toHaveLength(1);
  });

  test('still has the backups when the computer is lost: any of them is a record of its own', async () => {
    await aShopWithAHitch(program);
    const rows = program.rows();
    await program.ask(recordBackupFolder, { folder: aStick() });
    const { alsoAt } = await program.ask(recordBackUp, {});
    const elsewhere = aProgram();
    try {
      await elsewhere.ask(recordRestore, { file: alsoAt! });
      expect(elsewhere.rows()).toBe(rows);
    } finally {
      elsewhere.end();
    }
  });
});

describe('before a backup takes the place of the record', () => {
  test('it is said what would be lost: entries since, of what sort, and the last of them', async () => {
    const { machineId, draft, strip, pin } = await aShopWithAHitch(program);
    const { file } = await program.ask(recordBackUp, {});
    expect(await program.ask(recordRestorePreview, { file })).toMatchObject({ sameRecord: true, lost: { entries: 0 } });
    await program.ask(hoursAdd, aReading(machineId, 3000));
    await program.ask(stripDownSave, {
      ...{ ...draft('2026-10-05', 3010), dialSure: true },
      sizes: [aSize(strip.pointId, 11, 'front'), aSize(pin.pointId, 29.9)],
    });
    await program.ask(machineTakeIn, aTakeIn({ name: 'Tractor 2' }));
    const before = program.rows();
    const { backup, record, sameRecord, lost } = await program.ask(recordRestorePreview, { file });
    expect(sameRecord).toBe(true);
    expect(backup).toMatchObject({ file, counts: { machines: 1, sizes: 0 }, schemaVersion: schemaVersion() });
    expect(record).toMatchObject({ machines: 2, sizes: 2 });
    expect(lost).toMatchObject({
      entries: 3,
      undone: 0,
      machines: 1,
      customers: 1,
      points: 2,
      sizes: 2,
      findings: 0,
      slips: 0,
    });
    expect(lost.last.map(({ what }) => what)).toEqual(['machine/takeIn', 'stripDown/save', 'hours/add']);
    expect(program.rows()).toBe(before);
  });

  test('of another shop, all of the record would be lost', async () => {
    await aShopWithAHitch(program);
    const other = aProgram();
    try {
      await aShopWithAHitch(other);
      const { file } = await other.ask(recordBackUp, {});
      expect(await program.ask(recordRestorePreview, { file })).toMatchObject({
        sameRecord: false,
        lost: { machines: 1, customers: 1, points: 2 },
      });
    } finally {
      other.end();
    }
  });

  test('a backup that was cut short is refused, and the list of the others still stands', async () => {
    await aShopWithAHitch(program);
    const sound = await program.ask(recordBackUp, {});
    const cut = await program.ask(recordBackUp, {});
    truncateSync(cut.file, 9000);
    expect(await program.answer(recordRestorePreview, { file: cut.file })).toMatchObject({
      ok: false,
      fault: { code: 'record-damaged' },
    });
    const { backups } = await program.ask(recordBackups, {});
    expect(backups.map(({ file, counts }) => [file, counts])).toEqual([
      [cut.file, ''],
      [sound.file, sound.counts],
    ]);
  });
});

describe('starting', () => {
  test('empty never writes over a record that is there', async () => {
    const first = await program.ask(recordStartEmpty, {});
    const bytes = readFileSync(first.path!);
    const second = await program.ask(recordStartEmpty, {});
    expect(second.path).toBe(join(program.folder, 'shop 2.hoursandwear'));
    expect(readFileSync(first.path!).subarray(0, 16).equals(bytes.subarray(0, 16))).toBe(true);
    expect(await program.answer(recordStartEmpty, { path: first.path })).toMatchObject({
      ok: false,
      fault: { code: 'file-is-there' },
    });
    expect(second.recent).toEqual([second.path, first.path]);
  });

  test('with the demo keeps it in a record of its own, with what was done in it', async () => {
    const demo = await program.ask(recordOpenDemo, {});
    expect(demo).toMatchObject({ isDemo: true, open: true });
    expect(demo.counts.machines).toBeGreaterThanOrEqual(30);
    expect(existsSync(demo.defaultPath)).toBe(false);
    const made = program.rows();
    await program.ask(recordStartEmpty, {});
    await program.ask(recordOpenDemo, {});
    expect(program.rows()).toBe(made);
  });

  test('with CSV files lays a record down only when they are without fault', async () => {
    const files = (text: string) => [{ name: 'machines.csv', base64: Buffer.from(text).toString('base64') }];
    expect(await program.ask(recordBringIn, { files: files('machine\nM1\n'), dryRun: true })).toMatchObject({
      done: false,
      brought: { machines: 1 },
    });
    expect(
      await program.ask(recordBringIn, { files: files('machine,work_share\nM1,7\n'), dryRun: false }),
    ).toMatchObject({ done: false });
    expect((await program.ask(recordState, {})).open).toBe(false);
    expect(readdirSync(program.folder)).toEqual([]);
    expect(await program.ask(recordBringIn, { files: files('machine\nM1\n'), dryRun: false })).toMatchObject({
      done: true,
    });
    expect(await program.ask(recordState, {})).toMatchObject({ open: true, counts: { machines: 1 } });
  });
});

describe('the program', () => {
  test('backs the record up when it starts, but not a record it only looks into', async () => {
    await program.ask(recordStartEmpty, {});
    const recordPath = program.context.record!.path;
    program.context.close();
    const log = ({ error }: { error: Error }) => program.defects.push(error.message);
    await (await openProgram({ recordPath, log })).close();
    expect(existsSync(join(program.folder, 'backups'))).toBe(false);
    const dataFolder = join(program.folder, 'data');
    await (await openProgram({ recordPath, dataFolder, log })).close();
    const [identity] = readdirSync(join(dataFolder, 'backups'));
    expect(readdirSync(join(dataFolder, 'backups', identity!))).toHaveLength(1);
  });

  test('makes a backup a day while it runs', async () => {
    await program.ask(recordStartEmpty, {});
    const recordPath = program.context.record!.path;
    program.context.close();
    const dataFolder = join(program.folder, 'data');
    const log = ({ error }: { error: Error }) => program.defects.push(error.message);
    const running = await openProgram({ recordPath, dataFolder, lookEveryMs: 20, log });
    const folder = join(dataFolder, 'backups', readdirSync(join(dataFolder, 'backups'))[0]!);
    const [first] = readdirSync(folder);
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(readdirSync(folder)).toEqual([first]);
    // a day goes by
    const yesterday = new Date(Date.now() - 25 * 3_600_000).toISOString().replace(/[:.]/g, '-');
    renameSync(join(folder, first!), join(folder, `${yesterday}.hoursandwear`));
    await expect.poll(() => readdirSync(folder).length, { timeout: 5000 }).toBe(2);
    await running.close();
    const made = readdirSync(folder);
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(readdirSync(folder)).toEqual(made);
  });
});

test('a record that may lie in a copied folder is warned of until a person says that it does not', async () => {
  await aShopWithAHitch(program);
  program.context.close();
  const folder = join(program.folder, 'Cloud');
  mkdirSync(folder);
  const recordPath = join(folder, 'shop.hoursandwear');
  renameSync(join(program.folder, 'shop.hoursandwear'), recordPath);
  const there = aProgramAt(recordPath, '2026-11-09', program.folder);
  const codes = async () => (await there.ask(recordState, {})).warnings;
  expect(await codes()).toEqual([{ code: 'record-may-be-synced', facts: { folder, sign: 'Cloud' } }]);
  expect((await there.ask(recordConfirmPlace, { synced: true })).warnings).toEqual([
    { code: 'record-synced', facts: { folder } },
  ]);
  expect((await there.ask(recordConfirmPlace, { synced: false })).warnings).toEqual([]);
  there.end();
  const again = aProgramAt(recordPath, '2026-11-09', program.folder);
  expect((await again.ask(recordState, {})).warnings).toEqual([]);
  again.end();
});
