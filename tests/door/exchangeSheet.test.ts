import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { type OpenProgram, openProgram } from '#core/shells/openProgram.ts';
import { aWorkbook, rawWorkbook } from '#tests/support/aWorkbook.ts';

const folder = mkdtempSync(join(tmpdir(), 'exchange-sheet-'));
const programs: OpenProgram[] = [];
let shop: OpenProgram;
let count = 0;

/** Machines, points and nothing else: a shop whose sheets still lie on the desk. */
beforeEach(async () => {
  const dataFolder = join(folder, `shop ${++count}`);
  mkdirSync(dataFolder);
  shop = await openProgram({
    recordPath: join(dataFolder, 'shop.hoursandwear'),
    dataFolder,
    asOf: '2026-11-02',
    log: ({ operation, error }) => expect.fail(`${operation}: ${error.stack}`),
  });
  programs.push(shop);
  const csv = (name: string, text: string) => ({ name, base64: Buffer.from(text).toString('base64') });
  const machines = 'machine,customer,meter_digits\nLoader 1,Hill Farm,5\nLoader 2,Brook Farm,5\n';
  const points = [
    'machine,assembly,position,point,part_class,safety,wears,new_size_mm,gauge_error_mm,renew_at_mm,fitted_machine_hours',
    'Loader 1,Front loader,Boom pivot,Bore,Pivot bush,no,up,50,0.05,52,0',
    'Loader 2,Front loader,Boom pivot,Bore,Pivot bush,no,up,50,0.05,52,0',
  ].join('\n');
  const reply = await value('record/bringIn', {
    files: [csv('machines.csv', machines), csv('points.csv', points)],
    dryRun: false,
  });
  expect(reply.faults).toEqual([]);
});
afterAll(async () => {
  for (const program of programs) await program.close();
  rmSync(folder, { recursive: true, force: true });
});

// biome-ignore lint/suspicious/noExplicitAny: a test looks into replies of many shapes
type Any = any;
async function value(name: string, request: unknown): Promise<Any> {
  const answer = await shop.ask(name, request);
  if (!answer.ok) expect.fail(`${name}: ${JSON.stringify(answer.fault)}`);
  return answer.value;
}
async function faultOf(name: string, request: unknown): Promise<Any> {
  const answer = await shop.ask(name, request);
  return answer.ok ? expect.fail(`${name} was answered`) : answer.fault;
}

let files = 0;
function given(bytes: string | Uint8Array, ending = 'csv') {
  const path = join(folder, `sheet ${++files}.${ending}`);
  writeFileSync(path, bytes);
  return { path, fileId: null };
}

const look = (file: Any, more: object = {}) =>
  value('exchange/lookAtSheet', { file, sheet: null, noun: null, headRow: null, ...more });

/** The mapping as looked at, as a person would confirm it unchanged. */
const confirmed = (seen: Any, more: object = {}) => ({
  columns: seen.columns
    .filter(({ place, fixed }: Any) => place !== null || fixed !== '')
    .map(({ column, place, fixed, sheetUnit }: Any) => ({ column, place, fixed, unit: sheetUnit })),
  dateOrder: seen.dateOrder ?? 'dmy',
  decimalMark: seen.decimalMark ?? '.',
  headRow: seen.headRow,
  ...more,
});
const placesOf = (seen: Any) =>
  Object.fromEntries(seen.columns.flatMap(({ column, place, how }: Any) => (how ? [[column, [place, how]]] : [])));

const HOURS = [
  'Betriebsstunden 2026;;',
  'Maschine;Datum;Zählerstand (h)',
  'Loader 1;03.04.2026;1200,5',
  'Loader 2;25.06.2026;310',
  '',
].join('\n');

describe('a sheet is looked at first', () => {
  test('heads are told through case, accents, units, other words and a slip of the pen', async () => {
    const seen = await look(given(HOURS));
    expect(seen).toMatchObject({ kind: 'csv', noun: 'hours', headRow: 2, rows: 2, wholeFile: true, remembered: false });
    expect(seen).toMatchObject({ dateOrder: 'dmy', decimalMark: ',' });
    expect(placesOf(seen)).toEqual({ machine: [0, 'alias'], date: [1, 'alias'], dial_hours: [2, 'alias'] });
    expect(seen.heads[2]).toEqual({ place: 2, head: 'Zählerstand (h)', samples: ['1200,5', '310'] });

    const sizes = await look(
      given('TRACTOR\tHitch\tPostion\tPoint\tMeasured on\tSize [in]\tEvent\nA\tB\tC\tD\t2026-01-02\t1.5\tfound\n'),
    );
    expect(sizes).toMatchObject({ noun: 'sizes', dateOrder: 'ymd' });
    expect(placesOf(sizes)).toMatchObject({ position: [2, 'near'], machine: [0, 'alias'], size_mm: [5, 'same'] });
    expect(sizes.columns.find(({ column }: Any) => column === 'size_mm').sheetUnit).toBe('in');
    expect(sizes.columns.find(({ column }: Any) => column === 'event').words).toEqual([
      'as-found',
      'as-left',
      'renewed',
      'shimmed',
    ]);
  });

  test('days and figures that can be read two ways are asked about, not guessed', async () => {
    const seen = await look(given('machine,date,dial_hours\nLoader 1,03.04.2026,"1.200"\nLoader 2,05.06.2026,310\n'));
    expect(seen).toMatchObject({ dateOrder: null, decimalMark: null });
  });

  test('a workbook: its sheets, its days as days', async () => {
    const book = await aWorkbook(
      [
        ['Machine', 'Date', 'Hours'],
        ['Loader 1', new Date('2026-04-03T00:00:00Z'), 1200.5],
      ],
      'Readings',
    );
    const seen = await look(given(book, 'xlsx'));
    expect(seen).toMatchObject({
      kind: 'xlsx',
      sheets: ['Readings'],
      noun: 'hours',
      dateOrder: 'ymd',
      decimalMark: '.',
    });
    expect(seen.heads[1].samples).toEqual(['2026-04-03']);
  });
});

describe('a sheet is brought in', () => {
  const dials = async (machineId: number) =>
    (await value('machine/read', { machineId })).dialRows.map(({ takenOn, dialHours }: Any) => [takenOn, dialHours]);

  test('first as a trial that keeps nothing, then whole; again without doubles; the next one is read alike', async () => {
    const file = given(HOURS);
    const seen = await look(file);
    const ask = { file, sheet: null, noun: 'hours', mapping: confirmed(seen) };
    const trial = await value('exchange/bringInSheet', { ...ask, dryRun: true });
    expect(trial).toMatchObject({ done: false, rows: 2, faultCount: 0, brought: { dialReadings: 2 } });
    expect(await dials(1)).toEqual([]);
    expect((await look(file)).remembered).toBe(false);

    const done = await value('exchange/bringInSheet', { ...ask, dryRun: false });
    expect(done).toMatchObject({ done: true, brought: { dialReadings: 2 } });
    expect(await dials(1)).toEqual([['2026-04-03', 1200.5]]);
    const again = await value('exchange/bringInSheet', { ...ask, dryRun: false });
    expect(again).toMatchObject({ brought: { dialReadings: 0 } });
    expect(await dials(1)).toHaveLength(1);

    const next = given(
      HOURS.replace('Loader 1;03.04.2026;1200,5', 'Loader 1;01.10.2026;1500').replace('25.06', '01.06'),
    );
    const nextSeen = await look(next);
    expect(nextSeen).toMatchObject({ remembered: true, noun: 'hours', dateOrder: 'dmy' });
    expect(placesOf(nextSeen).machine).toEqual([0, 'remembered']);
  });

  test('true repeats stay: two readings alike in the sheet are two in the record, and two when it comes again', async () => {
    const file = given('machine,date,dial_hours\nLoader 1,2026-04-03,100\nLoader 1,2026-04-03,100\n');
    const ask = { file, sheet: null, noun: 'hours', mapping: confirmed(await look(file)), dryRun: false };
    await value('exchange/bringInSheet', ask);
    await value('exchange/bringInSheet', ask);
    expect(await dials(1)).toHaveLength(2);
  });

  test('inches become mm, a word stands for every row, words for events are known', async () => {
    const file = given('Machine;Part;Size in;Date;As;Clock\nLoader 1;Boom pivot;2,0000;2026-05-01;found;800\n');
    const seen = await look(file, { noun: 'sizes' });
    const mapping = confirmed(seen, { decimalMark: ',' });
    mapping.columns.push(
      { column: 'assembly', place: null, fixed: 'Front loader', unit: null },
      { column: 'point', place: null, fixed: 'Bore', unit: null },
    );
    const done = await value('exchange/bringInSheet', { file, sheet: null, noun: 'sizes', mapping, dryRun: false });
    expect(done).toMatchObject({ done: true, faults: [], brought: { sizes: 1 } });
    const { points } = await value('machine/read', { machineId: 1 });
    expect(points[0].visits[0]).toMatchObject({ takenOn: '2026-05-01', event: 'as-found', governingSizeMm: 50.8 });
  });

  test('from a workbook: figures as figures whatever the mark, days as days', async () => {
    const book = await aWorkbook([
      ['Hours of 2026', null, null],
      ['Machine', 'Date', 'Hours'],
      ['Loader 1', new Date('2026-04-03T00:00:00Z'), 1200.5],
      ['Loader 2', '25.06.2026', '310,5'],
    ]);
    const file = given(book, 'xlsx');
    const seen = await look(file);
    expect(seen).toMatchObject({ headRow: 2, dateOrder: 'dmy', decimalMark: ',' });
    const ask = { file, sheet: null, noun: 'hours', mapping: confirmed(seen), dryRun: false };
    expect(await value('exchange/bringInSheet', ask)).toMatchObject({ done: true, brought: { dialReadings: 2 } });
    expect([await dials(1), await dials(2)]).toEqual([[['2026-04-03', 1200.5]], [['2026-06-25', 310.5]]]);
  });

  test('any row with a fault: each is told by row, head and value, and nothing comes in', async () => {
    const file = given(
      'Machine;Datum;Stand\nLoader 1;03.04.2026;100\nLoader 9;25.06.2026;200\nLoader 1;31.06.2026;300\nLoader 1;25.07.2026;1.300\nLoader 1;26.07.2026;\n',
    );
    const seen = await look(file, { noun: 'hours' });
    const mapping = confirmed(seen, { decimalMark: ',' });
    if (!mapping.columns.some(({ column }: Any) => column === 'dial_hours'))
      mapping.columns.push({ column: 'dial_hours', place: 2, fixed: '', unit: null });
    const account = await value('exchange/bringInSheet', { file, sheet: null, noun: 'hours', mapping, dryRun: false });
    expect(account.done).toBe(false);
    expect(account.faults.map(({ row, column, code, value: v }: Any) => [row, column, v, code])).toEqual([
      [3, 'Machine', 'Loader 9', 'unknown-machine'],
      [4, 'Datum', '31.06.2026', 'not-a-day'],
      [5, 'Stand', '1.300', 'mixed-decimal-marks'],
      [6, 'Stand', '', 'cell-empty'],
    ]);
    expect([await dials(1), await dials(2)]).toEqual([[], []]);
  });

  test('a column that is needed and not given is asked for by name; so are wrong columns and shapes', async () => {
    const file = given('machine,date,dial_hours\nLoader 1,2026-04-03,100\n');
    const mapping = confirmed(await look(file));
    const ask = { file, sheet: null, noun: 'hours', mapping, dryRun: true };
    const without = { ...mapping, columns: mapping.columns.filter(({ column }: Any) => column !== 'date') };
    expect(await faultOf('exchange/bringInSheet', { ...ask, mapping: without })).toMatchObject({
      path: 'mapping.columns',
    });
    const stray = { ...mapping, columns: [...mapping.columns, { column: 'colour', place: 0, fixed: '', unit: null }] };
    expect(await faultOf('exchange/bringInSheet', { ...ask, mapping: stray })).toMatchObject({
      code: 'not-as-expected',
      path: 'mapping.columns.3.column',
    });
    expect(await faultOf('exchange/bringInSheet', { ...ask, noun: 'moves' })).toMatchObject({ path: 'noun' });
    expect(
      await faultOf('exchange/lookAtSheet', {
        file: { path: 'away', fileId: null },
        sheet: null,
        noun: null,
        headRow: null,
      }),
    ).toMatchObject({ code: 'cannot-read' });
  });
});

describe('what is too large or broken is refused before it is read', () => {
  const refusal = async (bytes: Uint8Array, ending = 'xlsx') =>
    (await faultOf('exchange/lookAtSheet', { file: given(bytes, ending), sheet: null, noun: null, headRow: null }))
      .code;
  const rowsXml = (rows: number) =>
    Array.from({ length: rows }, (_, index) => `<row r="${index + 1}"><c r="A${index + 1}"><v>1</v></c></row>`).join(
      '',
    );

  test('a workbook of more than 50 MB, of more than 100 000 rows, or with one cell far out', async () => {
    const large = new Uint8Array(50_000_001);
    large.set([0x50, 0x4b, 3, 4]);
    expect(await refusal(large)).toBe('workbook-too-large');
    expect(await refusal(rawWorkbook(rowsXml(100_002)))).toBe('workbook-too-many-rows');
    expect(await refusal(rawWorkbook('<row/>'.repeat(100_002)))).toBe('workbook-too-many-rows');
    expect(await refusal(rawWorkbook('<row r="1048576"><c r="A1048576"><v>1</v></c></row>'))).toBe(
      'workbook-too-many-rows',
    );
    expect(await refusal(rawWorkbook('<row r="1"><c r="XFD1"><v>1</v></c></row>'))).toBe('workbook-too-wide');
  });

  test('100 000 rows under a heading are read', async () => {
    const seen = await look(given(rawWorkbook(rowsXml(100_001)), 'xlsx'));
    expect(seen.rows).toBe(100_000);
  });

  test('a small file that unpacks to far more', async () => {
    const bomb = rawWorkbook(`<row r="1"><c r="A1" t="inlineStr"><is><t>${'0'.repeat(210_000_000)}</t></is></c></row>`);
    expect(bomb.length).toBeLessThan(1_000_000);
    expect(await refusal(bomb)).toBe('zip-too-large');
  });

  test('a zip cut short, one that is no workbook, a picture, UTF-16, an empty file', async () => {
    const book = await aWorkbook([
      ['machine', 'date'],
      ['A', 'B'],
    ]);
    for (const share of [0.1, 0.5, 0.9, 0.99])
      expect(await refusal(book.subarray(0, Math.floor(book.length * share)))).toBe('workbook-broken');
    expect(await refusal(Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0]), 'csv')).toBe(
      'binary-file',
    );
    const noSheet = Buffer.from('PK and then nothing that a zip would hold');
    for (const ending of ['zip', 'xlsx', 'ZIP']) expect(await refusal(noSheet, ending)).toBe('workbook-broken');
    expect(await refusal(Buffer.from('a,b\x01\n1,2\n'), 'csv')).toBe('binary-file');
    expect(await refusal(Uint8Array.from([0xff, 0xfe, 0x41, 0]), 'csv')).toBe('encoding-utf16');
    expect(await refusal(new Uint8Array(0), 'csv')).toBe('file-empty');
    expect(await refusal(Buffer.from('a,b\n"never closed,1\n2,3\n'), 'csv')).toBe('quote-not-closed');
  });
});
