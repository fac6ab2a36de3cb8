import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenProgram, openProgram } from '#core/shells/openProgram.ts';
import { aWorkbook, rawWorkbook } from '#tests/support/aWorkbook.ts';
import { caseCount } from '#tests/support/counts.ts';
import { seededDice } from '#tests/support/seededDice.ts';

/**
 * Files as they come from a shop's drawer, and worse: whatever is in them, the program answers, its log stays empty, and
 * the record holds all of a file or none of it. Cases are the same each time: a failing one names its number.
 */
const CASES = caseCount(2000);

const folder = mkdtempSync(join(tmpdir(), 'fuzz-exchange-'));
const recordPath = join(folder, 'shop.hoursandwear');
const logged: string[] = [];
let program: OpenProgram;
let recordFile: InstanceType<typeof Database>;

// biome-ignore lint/suspicious/noExplicitAny: a test looks into replies of many shapes
type Any = any;

beforeAll(async () => {
  program = await openProgram({
    recordPath,
    dataFolder: folder,
    asOf: '2026-11-02',
    log: ({ operation, error }) => logged.push(`${operation}: ${error.stack}`),
  });
  const machines = ['machine', ...Array.from({ length: 8 }, (_, n) => `Loader ${n}`)].join('\n');
  const points = [
    'machine,assembly,position,point,part_class,wears,new_size_mm,gauge_error_mm',
    ...Array.from({ length: 8 }, (_, n) => `Loader ${n},Boom,Pivot,Bore,Pivot bush,up,50,0.05`),
  ].join('\n');
  const file = (name: string, text: string) => ({ name, base64: Buffer.from(text).toString('base64') });
  const laid = await program.ask('record/bringIn', {
    files: [file('machines.csv', machines), file('points.csv', points)],
    dryRun: false,
  });
  expect(laid).toMatchObject({ ok: true, value: { faults: [] } });
  recordFile = new Database(recordPath, { readonly: true });
});
afterAll(async () => {
  recordFile.close();
  await program.close();
  rmSync(folder, { recursive: true, force: true });
});

const TABLES = ['customers', 'machines', 'dial_readings', 'measuring_points', 'sizes', 'renewals', 'findings'] as const;
const REST = ['entries', 'strip_downs', 'assemblies', 'positions', 'point_limits', 'import_remarks', 'sheet_mappings'];
const counts = (tables: readonly string[]): Record<string, number> =>
  Object.fromEntries(
    tables.map((table) => [table, recordFile.prepare(`SELECT count(*) FROM ${table}`).pluck().get() as number]),
  );

type Dice = ReturnType<typeof seededDice>;
const below = (dice: Dice, most: number): number => Math.floor(dice.uniform() * most);
const pick = <T>(dice: Dice, list: readonly T[]): T => list[below(dice, list.length)]!;
const chance = (dice: Dice, share: number): boolean => dice.uniform() < share;

const ODD = [
  ...[
    '=HYPERLINK("http://x","y")',
    '+1',
    '-1',
    '@SUM(A1)',
    '\tx',
    "'=1",
    '=',
    '1,5',
    '1.5',
    '1.234',
    '1,234',
    '1.234,5',
  ],
  ...[
    '1e999',
    '-0',
    'NaN',
    'Infinity',
    '0x10',
    '１２',
    '',
    ' ',
    '"',
    '""',
    'null',
    'undefined',
    '__proto__',
    'toString',
  ],
  ...['2026-02-30', '31.12.2026', '12/31/26', '0000-00-00', '9999-12-31', '1 in', '5"', '12 mm', 'Loader 99', '\u0000'],
  ...[
    '\u202emachine',
    'é'.repeat(50),
    'x'.repeat(200),
    '😀',
    '\ud800',
    '\ufeff',
    'a\nb',
    'a\rb',
    '2026-05-05T00:00:00Z',
  ],
];

const HEADS: Record<string, readonly string[]> = {
  hours: ['machine', 'date', 'dial_hours', 'event'],
  sizes: ['machine', 'assembly', 'position', 'point', 'date', 'dial_hours', 'size_mm', 'event'],
  machines: ['machine', 'customer', 'make', 'built_year'],
  points: ['machine', 'assembly', 'position', 'point', 'part_class', 'wears', 'new_size_mm', 'gauge_error_mm'],
  findings: ['machine', 'assembly', 'position', 'date', 'finding', 'severity', 'note'],
};

/** A cell that is right for its column. */
function soundCell(dice: Dice, column: string, n: number): string {
  const day = `20${10 + below(dice, 16)}-0${1 + below(dice, 9)}-1${below(dice, 9)}`;
  const cells: Record<string, () => string> = {
    machine: () => `Loader ${below(dice, 8)}`,
    date: () => day,
    dial_hours: () => (chance(dice, 0.5) ? '' : String(below(dice, 9000))),
    event: () => 'reading',
    assembly: () => 'Boom',
    position: () => 'Pivot',
    point: () => 'Bore',
    size_mm: () => (50 + below(dice, 100) / 50).toFixed(2),
    customer: () => `Farm ${below(dice, 5)}`,
    make: () => 'Durvane',
    built_year: () => String(1990 + below(dice, 30)),
    part_class: () => 'Pivot bush',
    wears: () => 'up',
    new_size_mm: () => '50',
    gauge_error_mm: () => '0.05',
    finding: () => pick(dice, ['crack', 'bent', 'other']),
    severity: () => pick(dice, ['watch', 'repair']),
    note: () => `note ${n}`,
  };
  return cells[column]?.() ?? '';
}

function aTable(dice: Dice, noun: string): string[][] {
  const heads = HEADS[noun]!;
  const odd = pick(dice, [0, 0, 0.02, 0.2]);
  const rows = Array.from({ length: below(dice, 12) }, (_, n) =>
    heads.map((column) => {
      if (chance(dice, odd)) return pick(dice, ODD);
      if (noun === 'machines' && column === 'machine') return `Machine ${below(dice, 1e6)}`;
      if (noun === 'points' && column === 'point') return `Point ${below(dice, 1e6)}`;
      if (noun === 'sizes' && column === 'event') return pick(dice, ['as-found', 'as-left', 'renewed']);
      return soundCell(dice, column, n);
    }),
  );
  const table = [[...heads], ...rows];
  if (chance(dice, 0.1)) table.shift();
  if (chance(dice, 0.1)) table.unshift(['A title', '']);
  if (chance(dice, 0.1)) for (const row of table) row.push(pick(dice, ODD));
  if (chance(dice, 0.1)) for (const row of table) row.splice(below(dice, row.length), 1);
  if (chance(dice, 0.05)) table[below(dice, table.length)]?.push('y'.repeat(below(dice, 300_000)));
  return table;
}

/** The table as bytes of a CSV file: some delimiter, line end, quoting and encoding, then perhaps damaged. */
function csvBytes(dice: Dice, table: readonly string[][]): Uint8Array {
  const delimiter = pick(dice, [',', ',', ';', '\t', '|', ':']);
  const quoting = pick(dice, ['all', 'needed', 'needed', 'none']);
  const quoted = (cell: string) => {
    const needs = quoting === 'all' || (quoting === 'needed' && /["\r\n,;\t|]/.test(cell));
    return needs ? `"${cell.replaceAll('"', '""')}"` : cell;
  };
  const text = table.map((row) => row.map(quoted).join(delimiter)).join(pick(dice, ['\n', '\r\n', '\r']));
  const encoding = pick(dice, ['utf8', 'utf8', 'latin1', 'utf16le'] as const);
  const mark = pick(dice, ['', '', '\ufeff']);
  return damaged(dice, new Uint8Array(Buffer.from(mark + text, encoding)));
}

function damaged(dice: Dice, bytes: Uint8Array): Uint8Array {
  if (chance(dice, 0.6) || bytes.length === 0) return bytes;
  if (chance(dice, 0.4)) return bytes.subarray(0, below(dice, bytes.length));
  const copy = Uint8Array.from(bytes);
  for (let n = 1 + below(dice, 4); n > 0; n--) copy[below(dice, copy.length)] = below(dice, 256);
  return copy;
}

async function workbookBytes(dice: Dice, table: readonly string[][]): Promise<Uint8Array> {
  if (chance(dice, 0.3)) {
    const cell = () =>
      `<c r="${pick(dice, ['A', 'B', 'ZZ', ''])}${below(dice, 20)}" t="${pick(dice, ['n', 's', 'str', 'd', 'b', 'e', 'inlineStr', 'q'])}" s="${below(dice, 3)}"><v>${pick(dice, ['1', 'x', '', '1e400', '-1', '&lt;', '99999999999'])}</v></c>`;
    const rows = Array.from(
      { length: below(dice, 6) },
      () => `<row>${Array.from({ length: below(dice, 4) }, cell).join('')}</row>`,
    );
    return damaged(dice, rawWorkbook(rows.join(pick(dice, ['', '', '<row', '</c>', '&']))));
  }
  const cells = table.map((row) =>
    row.map((cell): string | number | Date | null => {
      const xml = cell.replace(/[^\t\n\r -\ud7ff\ue000-\ufffd]/g, ' ').slice(0, 30_000);
      if (/^\d{4}-\d\d-\d\d$/.test(xml) && !Number.isNaN(Date.parse(xml)) && chance(dice, 0.7)) return new Date(xml);
      if (/^\d+(\.\d+)?$/.test(xml) && chance(dice, 0.7)) return Number(xml);
      return xml === '' ? null : xml;
    }),
  );
  return damaged(dice, await aWorkbook(cells));
}

/** Asks, and holds what comes back to what was promised. @returns how it ended */
async function asked(name: string, request: Any): Promise<string> {
  const before = { ...counts(TABLES), ...counts(REST) };
  const answer = (await program.ask(name, request)) as Any;
  expect(logged).toEqual([]);
  const after = { ...counts(TABLES), ...counts(REST) };
  if (!answer.ok) {
    expect(answer.fault.code).not.toBe('failed');
    expect(after).toEqual(before);
    return answer.fault.code;
  }
  const account = answer.value;
  if (account.faults.length > 0 || request.dryRun) {
    expect(account.done).toBe(false);
    expect(after).toEqual(before);
    return account.faults.length > 0 ? 'faults' : 'trial';
  }
  const { brought } = account;
  const came = TABLES.map((table) => after[table]! - before[table]!);
  const said = [
    ...[brought.customers, brought.machines, brought.dialReadings, brought.points, brought.sizes],
    ...[brought.renewals, brought.findings],
  ];
  expect(came).toEqual(said);
  return said.some((count) => count > 0) ? 'came in' : 'nothing new';
}

async function handedOver(bytes: Uint8Array, name: string): Promise<{ path: null; fileId: string }> {
  const reply = (await program.ask('exchange/takePiece', {
    fileId: null,
    name,
    base64: Buffer.from(bytes).toString('base64'),
  })) as Any;
  return { path: null, fileId: reply.value.fileId };
}

async function sheetCase(dice: Dice, bytes: Uint8Array, name: string): Promise<string> {
  const file = await handedOver(bytes, name);
  const noun = chance(dice, 0.8) ? null : pick(dice, Object.keys(HEADS));
  const seen = (await program.ask('exchange/lookAtSheet', { file, sheet: null, noun, headRow: null })) as Any;
  expect(logged).toEqual([]);
  let ended = seen.ok ? '' : `not read: ${seen.fault.code}`;
  if (seen.ok) {
    const columns = seen.value.columns.flatMap(({ column, place, needed, words }: Any) =>
      place === null && !needed ? [] : [{ column, place, fixed: words[0] ?? 'Loader 1', unit: null }],
    );
    const mapping = {
      columns,
      dateOrder: seen.value.dateOrder ?? pick(dice, ['ymd', 'dmy', 'mdy']),
      decimalMark: seen.value.decimalMark ?? pick(dice, ['.', ',']),
      headRow: seen.value.headRow,
    };
    const ask = { file, sheet: null, noun: seen.value.noun, mapping };
    ended = await asked('exchange/bringInSheet', { ...ask, dryRun: chance(dice, 0.2) });
  } else expect(seen.fault.code).not.toBe('failed');
  await program.ask('exchange/dropFile', { fileId: file.fileId });
  return ended;
}

describe(`${CASES} files that nobody would hand over on purpose`, () => {
  const endings = new Map<string, number>();
  const ended = (how: string) => endings.set(how, (endings.get(how) ?? 0) + 1);

  test('a folder, a sheet or a workbook: answered, and in the record whole or not at all', async () => {
    for (let number = 0; number < CASES; number++) {
      const dice = seededDice(number + 1);
      const noun = pick(dice, Object.keys(HEADS));
      const table = aTable(dice, noun);
      try {
        const kind = number % 4;
        if (kind === 0) {
          const bytes = csvBytes(dice, table);
          const files = [{ name: `${noun}.csv`, base64: Buffer.from(bytes).toString('base64') }];
          ended(await asked('record/bringIn', { files, dryRun: chance(dice, 0.2) }));
        } else if (kind === 3) ended(await sheetCase(dice, await workbookBytes(dice, table), 'book.xlsx'));
        else ended(await sheetCase(dice, csvBytes(dice, table), 'sheet.csv'));
      } catch (thrown) {
        throw new Error(`case ${number} (${noun})`, { cause: thrown });
      }
    }
    // never green on nothing: some came in, some were refused row by row, some could not be read at all
    for (const how of ['came in', 'faults', 'trial']) expect(endings.get(how) ?? 0, how).toBeGreaterThan(CASES / 100);
    expect([...endings.keys()].filter((how) => how.startsWith('not read')).length).toBeGreaterThan(2);
    expect(recordFile.pragma('integrity_check', { simple: true })).toBe('ok');
  }, 900_000);

  test('an export damaged on the way back lays down the same record, or none', async () => {
    const { value } = (await program.ask('exchange/exportFolder', { toFolder: null })) as Any;
    const zip = new Uint8Array(Buffer.from(value.zipBase64, 'base64'));
    const before = counts(TABLES);
    const restored = { whole: 0, none: 0 };
    for (let number = 0; number < CASES / 10; number++) {
      const dice = seededDice(9000 + number);
      const other = mkdtempSync(join(folder, 'other-'));
      const path = join(other, 'shop.hoursandwear');
      const into = await openProgram({
        recordPath: path,
        dataFolder: other,
        log: ({ error }) => logged.push(`${error.stack}`),
      });
      const bytes = damaged(dice, zip);
      const piece = { fileId: null, name: 'export.zip', base64: Buffer.from(bytes).toString('base64') };
      const { value: handed } = (await into.ask('exchange/takePiece', piece)) as Any;
      const answer = (await into.ask('exchange/restoreFolder', { from: { path: null, fileId: handed.fileId } })) as Any;
      await into.close();
      expect(logged, `case ${number}`).toEqual([]);
      const files = readdirSync(other).filter((name) => name.includes('hoursandwear'));
      if (answer.ok && answer.value.done) {
        const file = new Database(path, { readonly: true });
        for (const table of TABLES)
          expect(file.prepare(`SELECT count(*) FROM ${table}`).pluck().get(), table).toBe(before[table]);
        file.close();
        restored.whole++;
      } else {
        expect(files, `case ${number}`).toEqual([]);
        restored.none++;
      }
      rmSync(other, { recursive: true });
    }
    expect(restored.whole).toBeGreaterThan(0);
    expect(restored.none).toBeGreaterThan(0);
  }, 900_000);
});
