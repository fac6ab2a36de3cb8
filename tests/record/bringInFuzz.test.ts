import fc from 'fast-check';
import { expect, test } from 'vitest';
import { aFolder, aRecord, brought, dump } from '#tests/support/aRecord.ts';
import { caseCount } from '#tests/support/counts.ts';

const SOUND: Record<string, string> = {
  'machines.csv':
    'machine,customer,make,model,serial,built_year,meter_digits,hours_before,work_share\nM1,Hill Farm,A,B,1,2015,5,,0.5\nM2,,,,,,,,\n',
  'hours.csv':
    'machine,date,dial_hours,event,new_dial_hours,hours_error\nM1,2024-01-10,1000,reading,,\nM1,2025-01-10,1500.5,new-meter,0,\nM2,2024-01-10,200,estimate,,50\n',
  'points.csv':
    'machine,assembly,position,point,part_class,safety,wears,new_size_mm,new_size_tol_mm,renew_at_mm,reject_at_mm,limit_source,gauge_error_mm,fitted_machine_hours\nM1,Hitch,Strip,thickness,Strip,no,down,12,0.2,9.5,8.5,own rule,0.05,0\nM1,Hitch,Pin,diameter,Pin,yes,down,30,,29,,,0.02,\n',
  'sizes.csv':
    'machine,assembly,position,point,station,date,dial_hours,size_mm,event,gauge_error_mm\nM1,Hitch,Strip,thickness,front,2024-06-10,1200,11.4,as-found,\nM1,Hitch,Strip,thickness,,2024-12-10,1400,,renewed,\nM1,Hitch,Pin,diameter,,2024-06-10,,29.9,as-left,0.01\n',
  'moves.csv': 'machine,assembly,date,dial_hours,to_machine,to_dial_hours\nM1,Hitch,2025-06-10,100,M2,400\n',
  'classes.csv': 'part_class,wear_from_mm,wear_to_mm,hours_from,hours_to\nStrip,2,3,5000,6000\n',
  'findings.csv':
    'machine,assembly,position,date,finding,severity,note,closed_date,outcome\nM1,Hitch,Pin,2024-06-10,crack,do-not-use,"dye, seen",,\n',
};
const files = Object.keys(SOUND);

/** What a spreadsheet, a typist or a bad day may put into a cell. */
const oddCell = fc.oneof(
  fc.constantFrom(
    '',
    ' ',
    '""',
    '"',
    '1.234',
    '1,234',
    '1,5',
    '12,5 mm',
    '0.5 in',
    '1e9',
    '-1',
    'NaN',
    '=1+1',
    '@SUM(A1)',
    '+1',
  ),
  fc.constantFrom(
    '2025-02-30',
    '10.12.2024',
    '45000',
    'yes',
    'renewed',
    'new-meter',
    'M1',
    'M9',
    'null',
    '__proto__',
    'constructor',
  ),
  fc.constantFrom(
    '\u0000',
    '\u00a0',
    '\ufeff',
    '\u{1f69c}',
    '\u202e',
    'x'.repeat(70_000),
    'a\nb',
    'a\r',
    "'",
    ';',
    ',',
  ),
  fc.string({ maxLength: 30 }),
  fc.double({ noNaN: true }).map(String),
);

/** One thing done to a file: a cell, a line, a column, the delimiter, the bytes. */
const damage = fc.oneof(
  fc.record({
    kind: fc.constant('cell' as const),
    row: fc.nat(4),
    column: fc.nat(14),
    cell: oddCell,
    quoted: fc.boolean(),
  }),
  fc.record({
    kind: fc.constantFrom('drop-line' as const, 'twice' as const, 'drop-column' as const),
    row: fc.nat(4),
    column: fc.nat(14),
  }),
  fc.record({
    kind: fc.constantFrom('semicolons' as const, 'tabs' as const, 'cut' as const, 'latin' as const, 'bom' as const),
    at: fc.nat(400),
  }),
  fc.record({
    kind: fc.constant('bytes' as const),
    at: fc.nat(400),
    bytes: fc.uint8Array({ minLength: 1, maxLength: 6 }),
  }),
);
type Damage = typeof damage extends fc.Arbitrary<infer T> ? T : never;

function damaged(text: string, how: Damage): Uint8Array {
  const utf8 = (changed: string) => new TextEncoder().encode(changed);
  const lines = text.split('\n').map((line) => line.split(','));
  switch (how.kind) {
    case 'cell': {
      const line = lines[how.row % lines.length]!;
      line[how.column % line.length] = how.quoted ? `"${how.cell.replaceAll('"', '""')}"` : how.cell;
      break;
    }
    case 'drop-line':
      lines.splice(how.row % lines.length, 1);
      break;
    case 'twice':
      lines.push(lines[how.row % lines.length]!);
      break;
    case 'drop-column':
      for (const line of lines) line.splice(how.column % Math.max(1, line.length), 1);
      break;
    case 'semicolons':
      return utf8(text.replaceAll(',', ';'));
    case 'tabs':
      return utf8(text.replaceAll(',', '\t'));
    case 'cut':
      return utf8(text).slice(0, how.at % text.length);
    case 'latin':
      return Uint8Array.from(`${text}\u00e5\u0080`, (letter) => letter.charCodeAt(0));
    case 'bom':
      return utf8(`\ufeff${text}`);
    case 'bytes': {
      const bytes = utf8(text);
      bytes.set(how.bytes, how.at % (bytes.length - how.bytes.length));
      return bytes;
    }
  }
  return utf8(lines.map((line) => line.join(',')).join('\n'));
}

test('whatever is done to a folder, it comes in whole or not at all, and every fault says where and what', () => {
  const record = aRecord();
  expect(brought(record, aFolder(SOUND))).toMatchObject({ faults: [], done: true });
  let before = dump(record);
  let refused = 0;
  let taken = 0;
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.constantFrom(...files), damage), { minLength: 1, maxLength: 3 }), (damages) => {
      const folder: Record<string, string | Uint8Array> = { ...SOUND };
      for (const [file, how] of damages) folder[file] = damaged(new TextDecoder().decode(bytesOf(folder[file]!)), how);
      const account = brought(record, aFolder(folder));
      for (const remark of [...account.faults, ...account.cautions, ...account.notes]) {
        expect(remark.code).toMatch(/^[a-z0-9-]+$/);
        expect(remark.expected).not.toBe('');
        expect(remark.value.length).toBeLessThanOrEqual(200);
      }
      const after = dump(record);
      if (account.faults.length > 0) {
        refused++;
        expect(account.done).toBe(false);
        expect(after).toBe(before);
      } else {
        taken++;
        expect(account.done).toBe(true);
        // a second time nothing is new
        const again = brought(record, aFolder(folder));
        expect(again.faults).toEqual([]);
        expect(again.brought).toMatchObject({
          machines: 0,
          dialReadings: 0,
          points: 0,
          sizes: 0,
          renewals: 0,
          moves: 0,
        });
        before = dump(record);
      }
    }),
    { numRuns: caseCount(2000), seed: 20261109 },
  );
  // the test is about something: both ends are met often
  expect(refused).toBeGreaterThan(caseCount(2000) / 5);
  expect(taken).toBeGreaterThan(caseCount(2000) / 10);
  expect(record.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(record.sqlite.pragma('foreign_key_check')).toEqual([]);
  record.close();
});

const bytesOf = (text: string | Uint8Array): Uint8Array =>
  typeof text === 'string' ? new TextEncoder().encode(text) : text;
