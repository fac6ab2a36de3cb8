import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { allOperations } from '#core/contract/allOperations.ts';
import { hoursAdd } from '#core/contract/hours.ts';
import type { Answer, ReplyOf } from '#core/contract/operation.ts';
import { recordBackUp, recordOpen, recordRestore, recordStartEmpty, recordState } from '#core/contract/record.ts';
import { doorOf } from '#core/shells/openProgram.ts';
import { serveLoopback } from '#core/shells/web.ts';
import { aShopWithAHitch } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

let program: Program;
let machineId: number;
/** as a window asks: saying which record it means */
let asWindow: (name: string, request: unknown, meantFor: string) => Promise<Answer>;
beforeEach(async () => {
  program = aProgram();
  ({ machineId } = await aShopWithAHitch(program));
  asWindow = doorOf(program.context, ({ error }) => program.defects.push(String(error.stack)));
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

const openId = async () => (await program.ask(recordState, {})).recordId;
const hours = () => ({
  ...{ machineId, takenOn: '2026-11-01', dialHours: 3500, saidBy: 'Bo', note: '' },
  ...{ kind: 'reading', estimate: false, sure: true },
});
const faultOf = (answer: Answer) => (answer.ok ? null : answer.fault.code);

describe('a request says which record it is meant for', () => {
  test('the open one is answered; another, an older one and none are refused, whatever is asked, with nothing changed', async () => {
    const first = await openId();
    expect((await asWindow('machine/read', { machineId }, first)).ok).toBe(true);
    await program.ask(recordStartEmpty, {});
    const second = await openId();
    expect(second).not.toBe(first);
    const before = program.rows();
    const bound = allOperations.filter(({ meantFor }) => meantFor === 'the-open-one');
    for (const { name } of bound) {
      for (const said of [first, 'none', '', `${second} `]) {
        const answer = await asWindow(name, name === 'hours/add' ? hours() : {}, said);
        expect([name, answer], said).toEqual([
          name,
          { ok: false, fault: { code: 'another-record', facts: { file: program.context.record!.path } } },
        ]);
      }
    }
    expect(program.rows()).toBe(before);
    // only these are not looked at: they open a record, ask which is open, or go by the number of a job
    expect(allOperations.filter(({ meantFor }) => meantFor !== 'the-open-one').map(({ name }) => name)).toEqual([
      ...['record/state', 'record/startEmpty', 'record/openDemo', 'record/open', 'jobs/state', 'jobs/cancel'],
    ]);
  });

  test('which one is open is told to a window that knows of none yet, and not to one that means another', async () => {
    const first = await openId();
    expect(await asWindow('record/state', {}, '')).toMatchObject({ ok: true, value: { recordId: first } });
    expect(await asWindow('record/state', {}, first)).toMatchObject({ ok: true });
    expect(faultOf(await asWindow('record/state', {}, 'another'))).toBe('another-record');
  });

  test('whoever opens a record is told which it is, and goes on with it; the first one, opened again, is the same', async () => {
    const first = await openId();
    const path = program.context.record!.path;
    const opened = await asWindow('record/startEmpty', {}, first);
    const { recordId } = (opened as { value: ReplyOf<typeof recordStartEmpty> }).value;
    expect(faultOf(await asWindow('machines/names', {}, recordId))).toBeNull();
    await asWindow('record/open', { path }, recordId);
    expect(await openId()).toBe(first);
    expect(faultOf(await asWindow('machines/names', {}, first))).toBeNull();
  });

  test('a copy of the record, and a backup put in its place, are other records: numbers may mean other things in them', async () => {
    const first = await openId();
    const path = program.context.record!.path;
    const backup = await program.ask(recordBackUp, {});
    const copy = join(program.folder, 'copy.hoursandwear');
    copyFileSync(backup.file, copy);
    await program.ask(recordOpen, { path: copy });
    expect(await openId()).not.toBe(first);
    await program.ask(recordOpen, { path });
    expect(await openId()).toBe(first);
    await program.ask(recordRestore, { file: backup.file });
    expect(await openId()).not.toBe(first);
    expect(faultOf(await asWindow(hoursAdd.name, hours(), first))).toBe('another-record');
  });

  test('while none is open, only what is meant for none', async () => {
    const none = aProgram();
    const ask = doorOf(none.context, ({ error }) => program.defects.push(String(error.stack)));
    expect(faultOf(await ask('machines/names', {}, 'none'))).toBe('no-record');
    expect(faultOf(await ask('machines/names', {}, ''))).toBe('another-record');
    none.end();
  });
});

test('the loopback shell hands on what a request says, and takes one that says nothing, or two things, as meant for none', async () => {
  const loopback = await serveLoopback({ ask: doorOf(program.context, () => undefined), pageFolder: program.folder });
  const said = async (meantFor: string | null, name = 'machines/names') => {
    const headers = new Headers({ 'content-type': 'application/json', authorization: `Bearer ${loopback.token}` });
    if (meantFor !== null) headers.set('meant-for', meantFor);
    const address = `http://127.0.0.1:${loopback.port}/op/${name}`;
    const response = await fetch(address, { method: 'POST', headers, body: '{}' });
    return faultOf((await response.json()) as Answer);
  };
  const first = await openId();
  expect(await said(first)).toBeNull();
  expect(await said(null)).toBe('another-record');
  expect(await said('')).toBe('another-record');
  expect(await said(`${first}, ${first}`)).toBe('another-record');
  expect(await said(null, 'record/state')).toBeNull();
  await loopback.close();
});
