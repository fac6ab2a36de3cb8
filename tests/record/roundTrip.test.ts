import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keptInert } from '#core/exchange/inertText.ts';
import type { FileBytes } from '#core/exchange/readFolder.ts';
import { readStoredFiles } from '#core/exchange/readStoredFiles.ts';
import { writeStoredFiles } from '#core/exchange/writeStoredFiles.ts';
import { filesOfZip, zipOf } from '#core/exchange/zipFiles.ts';
import { orRefuse } from '#core/outcome.ts';
import { rowsOfTable, type StoredTable, tablesOnRecord } from '#core/record/allRows.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { openRecord, schemaVersion } from '#core/record/openRecord.ts';
import type { OpenRecord } from '#core/record/recordFile.ts';
import { bringIn } from '#core/use-cases/bring-in/bringIn.ts';
import { exportedFiles } from '#core/use-cases/exportedFiles.ts';
import { layDownShop } from '#core/use-cases/newShop.ts';
import { restoreInto } from '#core/use-cases/restoreFolder.ts';
import { learnedFrom } from '#core/way/learning.ts';
import { settingsOf } from '#core/way/settingsOf.ts';
import { forecastsOfMachine, seriesOfShop } from '#core/way.ts';
import { contentsOf, DEMO_DAY, demoFiles, demoRecord, fillEveryTable } from '#tests/support/aFullRecord.ts';
import { longRun } from '#tests/support/counts.ts';
import { learningOfDemo } from '#tests/support/learnedDemo.ts';

const opened: OpenRecord[] = [];
const emptyRecord = (): OpenRecord => {
  const record = openRecord(':memory:');
  opened.push(record);
  return record;
};
afterAll(() => {
  for (const record of opened) record.close();
});

const text = (files: readonly FileBytes[]) =>
  Object.fromEntries(files.map(({ name, bytes }) => [name, Buffer.from(bytes).toString('latin1')]));

/** The same folder with one column of one file taken out. */
function withoutColumn(files: readonly FileBytes[], name: string, column: string): FileBytes[] {
  return files.map((file) => {
    if (file.name !== name) return file;
    const lines = parsed(file);
    const place = lines[0]?.indexOf(column) ?? -1;
    expect(place, `${name} has a column ${column}`).toBeGreaterThanOrEqual(0);
    const cut = lines.map((cells) =>
      cells
        .filter((_, index) => index !== place)
        .map(quoted)
        .join(','),
    );
    return { name, bytes: Buffer.from(cut.join('\r\n')) };
  });
}
const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;

/** The rows of the machines that ever swapped an assembly, and of some more. */
function ofSomeMachines(files: readonly FileBytes[], count: number): FileBytes[] {
  const cells = (name: string) => parsed(files.find((file) => file.name === name)!);
  const machines = new Set([
    ...cells('moves.csv')
      .slice(1)
      .flatMap((row) => [row[0], row[4]]),
    ...cells('findings.csv')
      .slice(1, 4)
      .map((row) => row[0]),
    ...cells('machines.csv')
      .slice(1, count)
      .map((row) => row[0]),
  ]);
  return files.map((file) => {
    const [heading = [], ...rows] = parsed(file);
    const kept = heading[0] === 'machine' ? rows.filter(([machine]) => machines.has(machine)) : rows;
    return {
      name: file.name,
      bytes: Buffer.from([heading, ...kept].map((row) => row.map(quoted).join(',')).join('\n')),
    };
  });
}

/** A plain reader of RFC 4180, apart from the one the program uses. */
function parsed({ bytes }: FileBytes): string[][] {
  const text = Buffer.from(bytes)
    .toString('utf8')
    .replace(/^\ufeff/, '');
  const lines: string[][] = [[]];
  let cell = '';
  let inQuotes = false;
  const endCell = () => {
    lines.at(-1)!.push(cell);
    cell = '';
  };
  for (let at = 0; at < text.length; at++) {
    const letter = text[at]!;
    if (inQuotes) {
      if (letter !== '"') cell += letter;
      else if (text[at + 1] === '"') cell += text[at++];
      else inQuotes = false;
    } else if (letter === '"') inQuotes = true;
    else if (letter === ',') endCell();
    else if (letter === '\n') {
      endCell();
      lines.push([]);
    } else if (letter !== '\r') cell += letter;
  }
  if (lines.at(-1)!.length === 0) lines.pop();
  else endCell();
  return lines;
}

describe('a record taken out whole and brought back', () => {
  let original: OpenRecord;
  let files: FileBytes[];
  beforeAll(() => {
    original = demoRecord();
    opened.push(original);
    fillEveryTable(original);
    files = exportedFiles(original);
  });

  test('holds something in every column of every table, so that none could be lost unseen', () => {
    const empty = tablesOnRecord(original).flatMap((table) => {
      const rows = [...rowsOfTable(original, table)];
      return table.columns.flatMap((column, place) =>
        rows.some((row) => row[place] !== null && row[place] !== '') ? [] : [`${table.name}.${column.name}`],
      );
    });
    expect(empty).toEqual([]);
    expect(files.length).toBeGreaterThan(30);
  });

  test('gives the same bytes, the same rows in every table, and all that forecasts rest on', () => {
    const again = emptyRecord();
    const account = restoreInto(again, files);
    expect(account).toMatchObject({ done: true, faults: [], notes: [] });
    expect(contentsOf(again)).toEqual(contentsOf(original));
    expect(text(exportedFiles(again))).toEqual(text(files));
    const life = loadShopLife(original, { asOf: DEMO_DAY });
    expect(life.points.length).toBeGreaterThan(300);
    expect(loadShopLife(again, { asOf: DEMO_DAY })).toEqual(life);
    expect(again.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(again.sqlite.pragma('foreign_key_check')).toEqual([]);
  });

  test('gives the same through a zip, whose bytes are the same each time too', () => {
    const zip = zipOf(files);
    expect(Buffer.compare(zip, zipOf(files))).toBe(0);
    const again = emptyRecord();
    restoreInto(again, orRefuse(filesOfZip(zip)));
    expect(contentsOf(again)).toEqual(contentsOf(original));
  });

  test('goes on giving out ids where it left off, also past rows that were taken away', () => {
    const again = emptyRecord();
    restoreInto(again, files);
    const insert = "INSERT INTO customers (name, place, address, phone, email) VALUES ('new', '', '', '', '')";
    expect(again.sqlite.prepare(insert).run().lastInsertRowid).toBe(
      original.sqlite.prepare(insert).run().lastInsertRowid,
    );
    original.sqlite.exec("DELETE FROM customers WHERE name = 'new'");
  });

  test('is refused when any column of any table is missing from it', () => {
    let columns = 0;
    const tables = tablesOnRecord(original);
    for (const table of tables) {
      // some of its rows: what is missing stands in the heading
      const rows = [...rowsOfTable(original, table)].slice(0, 20);
      const [about, ids, file] = writeStoredFiles([{ table, rows }], [], schemaVersion());
      expect(files.map(({ name }) => name)).toContain(file!.name);
      for (const column of table.columns) {
        const missing = withoutColumn([file!], file!.name, column.name);
        const { faults } = readStoredFiles([about!, ids!, ...missing], tables, schemaVersion());
        expect(faults.map(({ code, column: which }) => `${code} ${which}`)).toContain(`column-missing ${column.name}`);
        columns++;
      }
    }
    expect(columns).toBeGreaterThan(150);
  });

  test('would show it if the writer and the reader both forgot a column: the check of the rows can fail', () => {
    const unseen: string[] = [];
    for (const table of tablesOnRecord(original)) {
      const stored = [...rowsOfTable(original, table)];
      for (const [place, column] of table.columns.entries()) {
        const shape: StoredTable = {
          ...table,
          columns: table.columns.filter((_, index) => index !== place),
          key: table.key.filter((name) => name !== column.name),
        };
        const rows = stored.map((row) => row.filter((_, index) => index !== place));
        const read = readStoredFiles(writeStoredFiles([{ table: shape, rows }], [], 1), [shape], 1);
        expect(read.faults).toEqual([]);
        const came = read.tables[0]!.rows.map((row) => [...row.slice(0, place), null, ...row.slice(place)]);
        if (JSON.stringify(came) === JSON.stringify(stored)) unseen.push(`${table.name}.${column.name}`);
      }
    }
    expect(unseen).toEqual([]);
  });

  test('lays nothing down when a row refers to what is not there, or a file is missing', () => {
    const strayed = files.map((file) =>
      file.name === 'record/all-machines.csv' ? { ...file, bytes: file.bytes.slice(0, 90) } : file,
    );
    const one = emptyRecord();
    expect(() => restoreInto(one, strayed)).toThrow();
    expect(tablesOnRecord(one).flatMap((table) => [...rowsOfTable(one, table)])).toEqual([]);
    const two = emptyRecord();
    expect(() =>
      restoreInto(
        two,
        files.filter(({ name }) => name !== 'record/all-sizes.csv'),
      ),
    ).toThrow();
    expect(tablesOnRecord(two).flatMap((table) => [...rowsOfTable(two, table)])).toEqual([]);
  });

  test('is not laid over a record that holds something, and says which shop file was changed since', () => {
    expect(() => restoreInto(original, files)).toThrow('record-not-empty');
    const changed = files.map((file) =>
      file.name === 'hours.csv' ? { ...file, bytes: file.bytes.slice(0, -20) } : file,
    );
    const { notes } = restoreInto(emptyRecord(), changed);
    expect(notes.map(({ file, code }) => [file, code])).toEqual([['hours.csv', 'changed-since-export']]);
  });

  test('keeps every cell of text that looks like a formula inert', () => {
    const live = files
      .filter(({ name }) => name.endsWith('.csv'))
      .flatMap((file) =>
        parsed(file).flatMap((cells) =>
          cells.filter((cell) => /^[=+\-@\t\r]/.test(cell) && Number.isNaN(Number(cell))),
        ),
      );
    expect(live).toEqual([]);
    expect(Buffer.concat(files.map(({ bytes }) => bytes)).includes("'=2+5")).toBe(true);
  });
});

describe('the shop files of an export, brought in as any other folder', () => {
  const SHOP_FILES = [
    'machines.csv',
    'hours.csv',
    'points.csv',
    'sizes.csv',
    'moves.csv',
    'classes.csv',
    'findings.csv',
  ];
  const broughtIn = (files: readonly FileBytes[]) => {
    const record = emptyRecord();
    layDownShop(record, '2026-11-01T08:00:00.000Z', { isDemo: false });
    const made = { madeAt: '2026-11-02T08:00:00.000Z', madeBy: 'test', what: 'record/bringIn' };
    const account = bringIn(record, files, made, { asOf: DEMO_DAY, dryRun: false });
    return { record, account };
  };
  const shopFiles = (files: readonly FileBytes[]) => files.filter(({ name }) => SHOP_FILES.includes(name));
  let original: OpenRecord;
  let files: FileBytes[];
  beforeAll(() => {
    original = demoRecord();
    opened.push(original);
    files = shopFiles(exportedFiles(original));
  });

  test('give the demo workshop again: the same files and the same forecasts', async () => {
    const { record, account } = broughtIn(files);
    expect(account.faults).toEqual([]);
    expect(text(shopFiles(exportedFiles(record)))).toEqual(text(files));
    const learning = await learningOfDemo();
    const said = (of: OpenRecord) => {
      const shop = seriesOfShop(loadShopLife(of, { asOf: DEMO_DAY }), DEMO_DAY);
      return {
        // the same parts, priors and hours teach the same
        learnedFrom: learnedFrom(shop, settingsOf(shop.life)).fingerprint,
        points: shop.life.machines
          .filter((_, i) => longRun || i % 3 === 0)
          .flatMap(({ machineId }) => forecastsOfMachine(shop, machineId, learning).points),
      };
    };
    const before = said(original);
    expect(before.points.length).toBeGreaterThan(100);
    expect(said(record)).toEqual(before);
  });

  test('bring back names that look like formulas, unchanged and inert in the files', () => {
    const odd = ['=1+1', '+49 171', '-', '@home', "'=x", "'tis", '"quoted"', 'a,b;c', 'Größe ½'];
    const lines = [
      'machine,customer,serial',
      ...odd.map((name, n) => [`${name} ${n}`, name, name].map((cell) => quoted(keptInert(cell))).join(',')),
    ];
    const first = broughtIn([{ name: 'machines.csv', bytes: Buffer.from(lines.join('\n')) }]);
    expect(first.account.faults).toEqual([]);
    const taken = shopFiles(exportedFiles(first.record));
    expect(
      parsed(taken[0]!)
        .flat()
        .filter((cell) => /^[=+\-@\t\r]/.test(cell)),
    ).toEqual([]);
    const { record, account } = broughtIn(taken);
    expect(account.faults).toEqual([]);
    const names = (one: OpenRecord) =>
      loadShopLife(one).machines.map(({ name, customer, serial }) => [name, customer, serial]);
    expect(names(record)).toEqual(odd.map((name, n) => [`${name} ${n}`, name, name]));
    expect(names(record)).toEqual(names(first.record));
    expect(text(shopFiles(exportedFiles(record)))).toEqual(text(taken));
  });

  test('show any column that was left out: refused, or the files come out different', () => {
    const unseen: string[] = [];
    const few = broughtIn(ofSomeMachines(demoFiles(), 2));
    expect(few.account.faults).toEqual([]);
    const files = shopFiles(exportedFiles(few.record));
    for (const file of files) {
      const [heading = [], ...rows] = parsed(file);
      for (const [place, column] of heading.entries()) {
        if (rows.every((row) => row[place] === '')) continue;
        const { record, account } = broughtIn(withoutColumn(files, file.name, column));
        if (account.faults.length > 0) continue;
        const came = text(shopFiles(exportedFiles(record)));
        if (JSON.stringify(came) === JSON.stringify(text(files))) unseen.push(`${file.name} ${column}`);
      }
    }
    expect(unseen).toEqual([]);
  });
});
