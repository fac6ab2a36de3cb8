import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readStoredFiles } from './readStoredFiles.ts';
import type { StoredCell, TableShape } from './storedFiles.ts';
import { writeStoredFiles } from './writeStoredFiles.ts';

const table: TableShape = {
  name: 'finding_photos',
  key: ['id'],
  columns: [
    { name: 'id', type: 'INTEGER', mayBeNull: false },
    { name: 'note', type: 'TEXT', mayBeNull: true },
    { name: 'said_by', type: 'TEXT', mayBeNull: false },
    { name: 'size_mm', type: 'REAL', mayBeNull: true },
    { name: 'picture', type: 'BLOB', mayBeNull: true },
  ],
};
const back = (rows: StoredCell[][]) => readStoredFiles(writeStoredFiles([{ table, rows }], [], 7), [table], 7);

describe('a table taken out and read back', () => {
  test('is the same cell by cell, whatever texts and figures it holds, nothing apart from an empty text', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.stringMatching(/^[=+\-@\t\r'",;\n ]{0,5}$/),
      fc.constantFrom('', "'", "''", '\ufeff', '0', ' '),
    );
    const row = fc.tuple(
      fc.integer({ min: 1 }),
      fc.option(text),
      text,
      fc.option(fc.double({ noNaN: true, noDefaultInfinity: true }).map((size) => size + 0)),
      fc.option(fc.uint8Array({ minLength: 1, maxLength: 40 })),
    );
    fc.assert(
      fc.property(fc.uniqueArray(row, { selector: ([id]) => id, maxLength: 6 }), (rows) => {
        // half of a letter pair cannot be in a record: SQLite holds UTF-8
        const stored = rows.map((cells) =>
          cells.map((cell) => (typeof cell === 'string' ? cell.toWellFormed() : cell)),
        );
        const read = back(stored);
        expect(read.faults).toEqual([]);
        expect(read.tables[0]?.rows.map((cells) => cells.map(plain))).toEqual(stored.map((cells) => cells.map(plain)));
      }),
    );
  });

  test('keeps a photo as a file of its own, under a name that tells whose it is', () => {
    const jpeg = Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, 0, 1]);
    const files = writeStoredFiles([{ table, rows: [[12, 'hook', 'Jo', null, jpeg]] }], [], 7);
    expect(files.map(({ name }) => name)).toContain('photos/finding-photos-12-picture.jpg');
    expect(files.find(({ name }) => name.endsWith('.jpg'))?.bytes).toEqual(jpeg);
    const without = files.filter(({ name }) => !name.endsWith('.jpg'));
    expect(readStoredFiles(without, [table], 7).faults[0]).toMatchObject({ row: 2, column: 'picture' });
  });

  test('made by another version of the program is not read', () => {
    const files = writeStoredFiles([{ table, rows: [] }], [], 7);
    expect(readStoredFiles(files, [table], 8).faults).toMatchObject([{ code: 'other-version' }]);
  });
});

const plain = (cell: StoredCell | undefined) => (cell instanceof Uint8Array ? [...cell] : cell === 0 ? 0 : cell);
