import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import readExcelFile from 'read-excel-file/node';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenProgram, openProgram } from '#core/shells/openProgram.ts';
import { layLearnedDemo } from '#tests/support/learnedDemo.ts';

const folder = mkdtempSync(join(tmpdir(), 'exchange-'));
const programs: OpenProgram[] = [];
const open = async (name: string): Promise<OpenProgram> => {
  mkdirSync(join(folder, name), { recursive: true });
  if (name === 'demo') await layLearnedDemo(join(folder, name));
  const program = await openProgram({
    recordPath: join(folder, name, 'shop.hoursandwear'),
    dataFolder: join(folder, name),
    asOf: '2026-11-02',
    log: ({ operation, error }) => expect.fail(`${operation}: ${error.stack}`),
  });
  programs.push(program);
  return program;
};
afterAll(async () => {
  for (const program of programs) await program.close();
  rmSync(folder, { recursive: true, force: true });
});

// biome-ignore lint/suspicious/noExplicitAny: a test looks into replies of many shapes
type Any = any;
const value = async (program: OpenProgram, name: string, request: unknown): Promise<Any> => {
  const answer = await program.ask(name, request);
  if (!answer.ok) expect.fail(`${name}: ${JSON.stringify(answer.fault)}`);
  return answer.value;
};

describe('taking the record out', () => {
  let demo: OpenProgram;
  beforeAll(async () => {
    demo = await open('demo');
    await value(demo, 'record/openDemo', {});
  });

  test('into a folder: every file is there, and a folder that holds something is left alone', async () => {
    const toFolder = join(folder, 'taken out');
    const reply = await value(demo, 'exchange/exportFolder', { toFolder });
    expect(reply.zipBase64).toBeNull();
    for (const { name, bytes } of reply.files) expect(readFileSync(join(toFolder, name)).length).toBe(bytes);
    const rows = Object.fromEntries(reply.files.map(({ name, rows }: Any) => [name, rows]));
    // beside the files of the demo stands the pivot of its job that was handed over
    const laidWithTheJob: Record<string, number> = { 'points.csv': 3, 'sizes.csv': 7 };
    for (const name of ['machines.csv', 'hours.csv', 'points.csv', 'sizes.csv']) {
      const demoRows = readFileSync(join(import.meta.dirname, '../../demo-data/workshop', name), 'utf8')
        .trim()
        .split('\n');
      expect(rows[name], name).toBe(demoRows.length - 1 + (laidWithTheJob[name] ?? 0));
    }
    expect(readdirSync(folder).filter((name) => name.includes('unfinished'))).toEqual([]);
    const again = await demo.ask('exchange/exportFolder', { toFolder });
    expect(again).toMatchObject({ ok: false, fault: { code: 'folder-not-empty', path: 'toFolder' } });
  });

  test('as a zip, handed over in pieces to another program, it is the same record again', async () => {
    const { zipBase64 } = await value(demo, 'exchange/exportFolder', { toFolder: null });
    const other = await open('other');
    let fileId: string | null = null;
    const step = Math.ceil(zipBase64.length / 3 / 4) * 4;
    for (let at = 0; at < zipBase64.length; at += step) {
      const base64 = zipBase64.slice(at, at + step);
      fileId = (await value(other, 'exchange/takePiece', { fileId, name: 'export.zip', base64 })).fileId;
    }
    const reply = await value(other, 'exchange/restoreFolder', { from: { path: null, fileId } });
    expect(reply).toMatchObject({ done: true, faults: [], notes: [] });
    expect(existsSync(reply.path)).toBe(true);
    const counts = async (program: OpenProgram) => (await value(program, 'record/state', {})).counts;
    expect(await counts(other)).toEqual(await counts(demo));
    const again = await value(other, 'exchange/exportFolder', { toFolder: null });
    expect(again.zipBase64 === zipBase64).toBe(true);
    expect(await value(other, 'exchange/dropFile', { fileId })).toEqual({ dropped: true });
    expect(await value(other, 'exchange/dropFile', { fileId })).toEqual({ dropped: false });
  });

  test('what is no export, a broken zip or an export in part lays no record down', async () => {
    const none = await open('none');
    const parts = join(folder, 'parts');
    mkdirSync(parts);
    writeFileSync(join(parts, 'machines.csv'), 'machine\nA\n');
    const inPart = await value(none, 'exchange/restoreFolder', { from: { path: parts, fileId: null } });
    expect(inPart).toMatchObject({ done: false, path: null });
    expect(inPart.faults[0]).toMatchObject({ code: 'file-missing', file: 'record/about-this-export.csv' });
    writeFileSync(join(folder, 'broken.zip'), 'PK\u0003\u0004 and then nothing');
    const broken = await none.ask('exchange/restoreFolder', {
      from: { path: join(folder, 'broken.zip'), fileId: null },
    });
    expect(broken).toMatchObject({ ok: false, fault: { code: 'zip-broken' } });
    const away = await none.ask('exchange/restoreFolder', { from: { path: join(folder, 'not there'), fileId: null } });
    expect(away).toMatchObject({ ok: false, fault: { code: 'cannot-read' } });
    expect(readdirSync(join(folder, 'none')).filter((name) => name.includes('hoursandwear'))).toEqual([]);
    expect((await value(none, 'record/state', {})).open).toBe(false);
  });

  test('as a workbook: six sheets, units in the heads, days as days, figures as figures', async () => {
    const { sheets, xlsxBase64 } = await value(demo, 'exchange/exportWorkbook', { toFile: null });
    const bytes = Buffer.from(xlsxBase64, 'base64');
    expect(Object.keys(unzipSync(bytes))).toContain('xl/workbook.xml');
    const read = await readExcelFile(bytes);
    expect(read.map(({ sheet, data }) => [sheet, data.length - 1])).toEqual(
      sheets.map(({ name, rows }: Any) => [name, rows]),
    );
    expect(read.map(({ sheet }) => sheet)).toEqual(['Machines', 'Hours', 'Points', 'Sizes', 'Findings', 'Forecast']);
    const hours = read[1]!.data;
    expect(hours[0]).toEqual([
      'Machine',
      'Date',
      'Dial [h]',
      'Event',
      'Dial of the new meter [h]',
      'Error, 1 sd [h]',
      'Kept out until answered',
    ]);
    expect(hours[1]?.slice(0, 4)).toEqual(['Durvane 412', new Date('2018-11-20T00:00:00Z'), 905, 'reading']);
    const forecast = read[5]!.data;
    const left = forecast[0]!.indexOf('Hours left, middle [h]');
    const { rows } = await value(demo, 'forecast/all', {});
    const middles = rows.map((row: Any) => row.hoursLeft.middle);
    const sorted = (hours: unknown[]) => [...hours].sort((a, b) => Number(a) - Number(b));
    expect(sorted(forecast.slice(1).map((row) => row[left] ?? null))).toEqual(sorted(middles));
    expect(middles.filter((hours: number | null) => hours !== null).length).toBeGreaterThan(300);
  });

  test('as a workbook in a file, which is never written over', async () => {
    const small = await open('small');
    await value(small, 'record/startEmpty', {});
    const file = join(folder, 'for people.xlsx');
    expect((await value(small, 'exchange/exportWorkbook', { toFile: file })).file).toBe(file);
    const bytes = readFileSync(file);
    expect((await small.ask('exchange/exportWorkbook', { toFile: file })).ok).toBe(false);
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });
});

describe('through the door', () => {
  test('wrong shapes, unknown files and over-long text are refused with the field named', async () => {
    const program = await open('door');
    const fault = async (name: string, request: unknown) => {
      const answer = await program.ask(name, request);
      return answer.ok ? 'answered' : [answer.fault.code, answer.fault.path];
    };
    expect(await fault('exchange/exportFolder', {})).toEqual(['not-as-expected', 'toFolder']);
    expect(await fault('exchange/exportFolder', { toFolder: 'x'.repeat(1001) })).toEqual([
      'not-as-expected',
      'toFolder',
    ]);
    expect(await fault('exchange/exportFolder', { toFolder: null })).toEqual(['no-record', undefined]);
    expect(await fault('exchange/exportWorkbook', { toFile: 7 })).toEqual(['not-as-expected', 'toFile']);
    expect(await fault('exchange/takePiece', { fileId: 'file-9', name: 'a', base64: '' })).toEqual([
      'unknown-file',
      'fileId',
    ]);
    expect(await fault('exchange/takePiece', { fileId: null, name: '', base64: '' })).toEqual([
      'not-as-expected',
      'name',
    ]);
    expect(await fault('exchange/restoreFolder', { from: { path: null, fileId: null } })).toEqual([
      'not-as-expected',
      'from',
    ]);
    expect(await fault('exchange/restoreFolder', { from: { path: null, fileId: 'file-3' } })).toEqual([
      'unknown-file',
      'fileId',
    ]);
  });
});
