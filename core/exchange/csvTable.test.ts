import { describe, expect, test } from 'vitest';
import { csvTable } from './csvTable.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const cellsOf = (text: string | Uint8Array) => {
  const table = csvTable('x.csv', typeof text === 'string' ? bytes(text) : text);
  return {
    ...table,
    cells: table.lines.map(({ row, cells }) => [row, ...cells]),
    codes: table.faults.map(({ code }) => code),
  };
};

describe('a CSV file', () => {
  test('is parted by what its heading has more of, comma or semicolon', () => {
    expect(cellsOf('a,b\n1,"2,5"\n').cells).toEqual([[2, '1', '2,5']]);
    expect(cellsOf('a;b\r\n1;2,5\r\n')).toMatchObject({ cells: [[2, '1', '2,5']], delimiter: ';' });
    expect(cellsOf('"a;x",b,c\n1,2,3').delimiter).toBe(',');
  });

  test('tells the line of the file, past empty lines and line breaks inside quotes', () => {
    expect(cellsOf('a,b\n\n1,"two\nlines"\n,\n3,4\n').cells).toEqual([
      [3, '1', 'two\nlines'],
      [6, '3', '4'],
    ]);
  });

  test('may begin with a byte order mark, be Windows-1252, and hold quotes', () => {
    expect(cellsOf('\ufeffMachine,b\nx,"say ""so"""').columns.has('machine')).toBe(true);
    expect(cellsOf('\ufeffa,b\nx,"say ""so"""').cells).toEqual([[2, 'x', 'say "so"']]);
    // 0xE5 and 0x80: a ring over an a, and the euro sign of Windows-1252
    expect(cellsOf(Uint8Array.of(0x61, 0x0a, 0xe5, 0x80)).cells).toEqual([[2, '\u00e5\u20ac']]);
    expect(cellsOf(bytes('a\n\u00e5\u20ac')).cells).toEqual([[2, '\u00e5\u20ac']]);
  });

  test.each([
    ['', ['file-empty']],
    ['\n\n', ['file-empty']],
    ['a,b\n1,"2\n3,4', ['quote-not-closed']],
    ['a,b\n1,2,3\n', ['too-many-cells']],
    ['a,A\n1,2\n', ['column-twice']],
  ])('%j has faults %j', (text, codes) => {
    expect(cellsOf(text).codes).toEqual(codes);
  });

  test('in UTF-16 is refused by its name', () => {
    expect(cellsOf(Uint8Array.of(0xff, 0xfe, 0x61, 0)).codes).toContain('encoding-utf16');
  });

  test('empty cells beyond the heading are nothing', () => {
    expect(cellsOf('a,b\n1,2,,\n').cells).toEqual([[2, '1', '2', '', '']]);
  });
});
