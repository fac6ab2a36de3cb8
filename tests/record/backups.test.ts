import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hoursAdd } from '#core/contract/hours.ts';
import {
  recordBackUp,
  recordBackups,
  recordBringIn,
  recordOpenDemo,
  recordRestore,
  recordStartEmpty,
  recordState,
} from '#core/contract/record.ts';
import { schemaVersion } from '#core/record/openRecord.ts';
import { openProgram } from '#core/shells/openProgram.ts';
import { backUpIfDue } from '#core/use-cases/backUps.ts';
import { openContext } from '#core/use-cases/context.ts';
import { aShopWithAHitch } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

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
});
