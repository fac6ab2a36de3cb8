import {
  copyFileSync,
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
import { machineRead, machinesList, machineTakeIn } from '#core/contract/machine.ts';
import { recordBackUp, recordBackups, recordOpen, recordRestore, recordState } from '#core/contract/record.ts';
import { stripDownSave } from '#core/contract/stripDown.ts';
import { schemaVersion } from '#core/record/openRecord.ts';
import { learningSettled } from '#core/use-cases/learning/shopLearning.ts';
import { aShopWithAHitch, aSize, aTakeIn } from '#tests/support/aHitch.ts';
import { aProgram, aProgramAt, type Program } from '#tests/support/aProgram.ts';
import { caseCount } from '#tests/support/counts.ts';
import { seededDice } from '#tests/support/seededDice.ts';

let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
let recordPath = '';
beforeEach(async () => {
  program = aProgram('2026-11-09');
  shop = await aShopWithAHitch(program);
  recordPath = program.context.record!.path;
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

const aSheet = (n: number) => ({
  ...shop.draft('2026-05-01', 3100 + n),
  note: 'long '.repeat(300),
  sizes: [aSize(shop.strip.pointId, 11 - n * 0.001, 'front'), aSize(shop.pin.pointId, 29.8)],
  dialSure: true,
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
const faultOf = (answer: Awaited<ReturnType<Program['answer']>>) => (answer.ok ? null : answer.fault);
const isSound = (path: string) => {
  const sqlite = new Database(path, { readonly: true });
  try {
    return sqlite.pragma('integrity_check', { simple: true });
  } finally {
    sqlite.close();
  }
};

/** The program started on a record it may not be able to open, and ended after `look`. */
async function startedOn(path: string, look: (started: Program) => Promise<void>): Promise<void> {
  const started = aProgramAt(path, '2026-11-09');
  try {
    await look(started);
    expect(started.defects).toEqual([]);
  } finally {
    started.context.close();
  }
}

describe('a full disk', () => {
  test('refuses the save that does not fit and keeps every one before it; with room again it goes on', async () => {
    const sqlite = program.context.record!.sqlite;
    const pages = sqlite.pragma('page_count', { simple: true }) as number;
    sqlite.pragma(`max_page_count = ${pages + 4}`);
    let saved = 0;
    let fault = null;
    let before = '';
    for (; saved < 500 && !fault; saved++) {
      before = program.rows();
      fault = faultOf(await program.answer(stripDownSave, aSheet(saved)));
    }
    expect(fault).toMatchObject({ code: 'disk-full', facts: { file: recordPath } });
    expect(saved).toBeGreaterThan(1);
    expect(program.rows()).toBe(before);
    // what was learned cannot be kept either; reading goes on all the same
    await learningSettled(program.context);
    expect((await program.ask(machinesList, {})).machines).toHaveLength(1);
    sqlite.pragma('max_page_count = 1000000');
    await program.ask(stripDownSave, aSheet(saved));
    expect(isSound(recordPath)).toBe('ok');
  });
});

describe('a record another program holds', () => {
  test('at the start leaves the program without a record and says so', async () => {
    program.context.close();
    const holder = new Database(recordPath);
    holder.pragma('locking_mode = EXCLUSIVE');
    holder.exec('BEGIN EXCLUSIVE');
    await startedOn(recordPath, async (started) => {
      const state = await started.ask(recordState, {});
      expect(state).toMatchObject({ open: false, trouble: { code: 'record-in-use', facts: { file: recordPath } } });
      expect(faultOf(await started.answer(machinesList, {}))?.code).toBe('record-in-use');
      holder.exec('ROLLBACK');
      holder.close();
      expect(await started.ask(recordOpen, { path: recordPath })).toMatchObject({ open: true, trouble: null });
    });
  });

  test('during a save refuses it; afterwards it goes in', async () => {
    program.context.record!.sqlite.pragma('busy_timeout = 50');
    const holder = new Database(recordPath);
    holder.exec('BEGIN IMMEDIATE');
    const before = program.rows();
    expect(faultOf(await program.answer(stripDownSave, aSheet(1)))).toMatchObject({ code: 'record-in-use' });
    holder.exec('ROLLBACK');
    holder.close();
    expect(program.rows()).toBe(before);
    await program.ask(stripDownSave, aSheet(1));
  });

  test('is not taken from under it by a restoring', async () => {
    const { file } = await program.ask(recordBackUp, {});
    await startedOn(recordPath, async (other) => {
      await other.ask(hoursAdd, aReading(shop.machineId, 3000));
      const before = program.rows();
      expect(faultOf(await program.answer(recordRestore, { file }))).toMatchObject({ code: 'record-in-use' });
      expect(program.rows()).toBe(before);
      await program.ask(hoursAdd, aReading(shop.machineId, 3001));
    });
  });
});

test('two programs on one record: each writes, each sees what the other wrote, nothing is lost', async () => {
  await startedOn(recordPath, async (other) => {
    const there = await other.ask(machineTakeIn, aTakeIn({ name: 'Tractor 2' }));
    expect((await program.ask(machinesList, {})).machines).toHaveLength(2);
    for (let n = 0; n < 5; n++) {
      const [one, two] = n % 2 ? [program, other] : [other, program];
      await one.ask(stripDownSave, aSheet(n));
      await two.ask(hoursAdd, aReading(there.machineId, 2000 + n));
      for (const either of [program, other]) {
        const mine = await either.ask(machineRead, { machineId: shop.machineId });
        const theirs = await either.ask(machineRead, { machineId: there.machineId });
        expect(mine.stripDowns).toHaveLength(n + 1);
        expect(theirs.dialRows).toHaveLength(n + 2);
      }
    }
    await learningSettled(program.context);
    await learningSettled(other.context);
    expect(await other.ask(machineRead, { machineId: shop.machineId })).toEqual(
      await program.ask(machineRead, { machineId: shop.machineId }),
    );
  });
  expect(isSound(recordPath)).toBe('ok');
});

describe('a file that is no sound record', () => {
  const damages: [string, (bytes: Buffer) => Buffer][] = [
    ['cut to nothing', () => Buffer.alloc(0)],
    ['cut within its head', (bytes) => bytes.subarray(0, 60)],
    ['cut after its first page', (bytes) => bytes.subarray(0, 4096)],
    ['cut in the middle', (bytes) => bytes.subarray(0, Math.floor(bytes.length / 2))],
    ['cut by one byte', (bytes) => bytes.subarray(0, bytes.length - 1)],
    ['written over with text', (bytes) => Buffer.concat([Buffer.from('Dear Sir, '.repeat(200)), bytes.subarray(2000)])],
    ['a letter', () => Buffer.from('Dear Sir, the hitch is ready.')],
    ['with its middle zeroed', (bytes) => Buffer.from(bytes).fill(0, 8192, bytes.length - 8192)],
  ];

  test.each(damages)(
    '%s: the program starts without it, says so, leaves it alone, and restores a backup',
    async (_, damage) => {
      const rows = program.rows();
      const { file } = await program.ask(recordBackUp, {});
      program.context.close();
      const damaged = damage(readFileSync(recordPath));
      writeFileSync(recordPath, damaged);

      await startedOn(recordPath, async (started) => {
        const state = await started.ask(recordState, {});
        expect(state).toMatchObject({
          open: false,
          path: null,
          defaultPath: recordPath,
          trouble: { facts: { file: recordPath } },
        });
        expect(['record-damaged', 'not-a-record']).toContain(state.trouble?.code);
        expect(faultOf(await started.answer(machinesList, {}))?.code).toBe(state.trouble?.code);
        expect(readFileSync(recordPath).equals(damaged)).toBe(true);

        // its backups are known though its identity cannot be read any more
        const { backups } = await started.ask(recordBackups, {});
        expect(backups.map((backup) => backup.file)).toEqual([file]);
        expect(await started.ask(recordRestore, { file })).toMatchObject({
          open: true,
          path: recordPath,
          trouble: null,
        });
        expect(started.rows()).toBe(rows);
        const aside = readdirSync(program.folder).filter((name) => /before restoring.*\.hoursandwear$/.test(name));
        expect(aside).toHaveLength(1);
        expect(readFileSync(join(program.folder, aside[0]!)).equals(damaged)).toBe(true);
      });
    },
  );

  /** SQLite keeps no sums of its pages: what is zeroed within one text longer than a page is seen by nobody. */
  const LONG_TEXTS = ['assembly_kinds'];

  test('with any one page zeroed is refused, or nothing of it is lost', async () => {
    for (let n = 0; n < 12; n++) await program.ask(stripDownSave, aSheet(n));
    await learningSettled(program.context);
    const rows = program.rows(LONG_TEXTS);
    program.context.close();
    const sound = readFileSync(recordPath);
    const dice = seededDice(7);
    let refused = 0;
    for (let n = 0; n < caseCount(200); n++) {
      const page = Math.floor(dice.uniform() * (sound.length / 4096));
      writeFileSync(recordPath, Buffer.from(sound).fill(0, page * 4096, (page + 1) * 4096));
      await startedOn(recordPath, async (started) => {
        const { trouble } = await started.ask(recordState, {});
        if (trouble) refused++;
        else expect(started.rows(LONG_TEXTS) === rows, `page ${page}`).toBe(true);
      });
      for (const log of ['-wal', '-shm']) rmSync(`${recordPath}${log}`, { force: true });
    }
    expect(refused).toBeGreaterThan(0);
    writeFileSync(recordPath, sound);
  });

  test('damage that comes while the record is open is a refusal, not a defect', async () => {
    for (let n = 0; n < 12; n++) await program.ask(stripDownSave, aSheet(n));
    await learningSettled(program.context);
    program.context.record!.sqlite.pragma('wal_checkpoint(TRUNCATE)');
    program.context.record!.sqlite.pragma('shrink_memory');
    const bytes = readFileSync(recordPath);
    writeFileSync(recordPath, Buffer.from(bytes).fill(0xff, 4096));
    program.context.kept.values.clear();
    const answer = await program.answer(machineRead, { machineId: shop.machineId });
    expect(faultOf(answer)?.code).toBe('record-damaged');
    writeFileSync(recordPath, bytes);
  });

  test('a folder where the record should be is refused', async () => {
    const folder = join(program.folder, 'folder.hoursandwear');
    mkdirSync(folder);
    await startedOn(folder, async (started) => {
      expect((await started.ask(recordState, {})).trouble?.code).toBe('not-a-record');
    });
  });
});

test('a record of a later program is left as it is, byte by byte, and so are the files beside it', async () => {
  program.context.close();
  const later = new Database(recordPath);
  later.pragma(`user_version = ${schemaVersion() + 1}`);
  later.pragma('journal_mode = DELETE');
  later.close();
  const bytes = readFileSync(recordPath);
  const beside = readdirSync(program.folder).sort();
  await startedOn(recordPath, async (started) => {
    expect((await started.ask(recordState, {})).trouble).toEqual({
      code: 'record-newer',
      facts: { file: recordPath, recordVersion: schemaVersion() + 1, programVersion: schemaVersion() },
    });
  });
  expect(readFileSync(recordPath).equals(bytes)).toBe(true);
  expect(readdirSync(program.folder).sort()).toEqual(beside);
});

describe('a record whose file is moved, deleted or replaced while it is open', () => {
  test('takes no more entries, and takes them again when the file is back', async () => {
    const away = join(program.folder, 'away.hoursandwear');
    renameSync(recordPath, away);
    expect(faultOf(await program.answer(stripDownSave, aSheet(1)))).toMatchObject({ code: 'record-moved' });
    copyFileSync(away, recordPath);
    expect(faultOf(await program.answer(stripDownSave, aSheet(1)))).toMatchObject({ code: 'record-moved' });
    rmSync(recordPath);
    renameSync(away, recordPath);
    await program.ask(stripDownSave, aSheet(1));
  });
});

describe('a restoring broken off', () => {
  test('between its two steps is finished at the next start', async () => {
    const rows = program.rows();
    const { file } = await program.ask(recordBackUp, {});
    program.context.close();
    copyFileSync(file, `${recordPath}.restoring`);
    renameSync(recordPath, join(program.folder, 'shop before restoring.hoursandwear'));
    await startedOn(recordPath, async (started) => {
      expect(await started.ask(recordState, {})).toMatchObject({ open: true, trouble: null });
      expect(started.rows()).toBe(rows);
    });
    expect(existsSync(`${recordPath}.restoring`)).toBe(false);
  });

  test('before its first step changes nothing', async () => {
    const rows = program.rows();
    program.context.close();
    writeFileSync(`${recordPath}.restoring`, 'half');
    await startedOn(recordPath, async (started) => expect(started.rows()).toBe(rows));
  });
});

test('a log left by a record that was not closed is folded in, and one cut short loses only what was not committed', async () => {
  await program.ask(stripDownSave, aSheet(0));
  await learningSettled(program.context);
  const rows = program.rows();
  const copy = join(program.folder, 'copy.hoursandwear');
  for (const end of ['', '-wal']) copyFileSync(`${recordPath}${end}`, `${copy}${end}`);
  const wal = readFileSync(`${copy}-wal`);
  writeFileSync(`${copy}-wal`, Buffer.concat([wal, Buffer.alloc(4096, 7)]));
  await startedOn(copy, async (started) => {
    expect(started.rows()).toBe(rows);
    started.context.close();
    expect(existsSync(`${copy}-wal`)).toBe(false);
  });
  truncateSync(copy, readFileSync(copy).length);
  expect(isSound(copy)).toBe('ok');
});
