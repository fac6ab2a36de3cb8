import type { SheetNoun } from '#core/contract/exchange.ts';
import { counted } from './english.ts';

const count = (n: number, one: string, many: string): string => `${n} ${counted(n, one, many)}`;

/** Words of bringing a sheet in, and of taking the record out. */
export const exchangeWords = {
  tab: 'In and out',
  title: 'Bring in and take out',
  sub: 'Sheets of your own into the record, and the record out as files anyone can read.',

  in: 'Bring in one sheet',
  inWhat: 'A CSV or XLSX file with one kind of row. It is only looked at first.',
  inInMm:
    'A column of lengths is read in mm unless its head says inches, though this shop writes inches; each can be told otherwise.',
  choose: 'Choose a file',
  other: 'Another file',
  orDrop: 'or drop it here',
  leave: 'Leave it',
  handingOver: 'Handing the file over',
  looking: 'Looking at it',
  fileLine: (name: string, rows: number, wholeFile: boolean) =>
    `${name}: ${wholeFile ? count(rows, 'row', 'rows') : `more than ${count(rows, 'row', 'rows')}`}`,
  sheetOf: 'Sheet of the workbook',

  noun: 'Each row is',
  nouns: {
    machines: 'a machine',
    hours: 'a meter reading',
    points: 'a measuring point',
    sizes: 'a size',
    findings: 'a finding',
  } satisfies Record<SheetNoun, string>,
  dateOrder: 'Days are written',
  dateOrders: { ymd: '2026-10-12', dmy: '12.10.2026', mdy: '10/12/2026' },
  decimalMark: 'Decimals are written',
  decimalMarks: { '.': '12.5', ',': '12,5' },
  asked: 'The sheet does not tell: choose.',
  remembered: 'Read as the last sheet with these heads was.',

  columnsCaption: 'Which column of the sheet is which',
  ours: 'In the record',
  theirs: 'In the sheet',
  unit: 'Unit',
  holds: 'For instance',
  how: 'How it was told',
  needed: 'needed',
  none: 'not in the sheet',
  everyRow: 'the same in every row:',
  everyRowWord: (column: string) => `What every row says for ${column}`,
  columnFor: (column: string) => `Column of the sheet for ${column}`,
  unitFor: (column: string) => `Unit of ${column}`,
  unnamed: (letter: string) => `column ${letter}, no head`,
  howWords: {
    same: 'same name',
    alias: 'another name for it',
    near: 'nearly the same: look closely',
    remembered: 'as last time',
    chosen: 'chosen',
  },
  left: (heads: readonly string[]) => `Not brought in: ${heads.join(', ')}`,
  missing: (columns: readonly string[]) => `Still needed: ${columns.join(', ')}.`,
  stillAsked: 'Say how days and decimals are written.',

  tryIt: 'Try it',
  tryWhat: 'reads every row and keeps nothing',
  bringIn: 'Bring it in',
  breakOff: 'Break off',
  brokenOff: 'Broken off. The record is as it was.',
  steps: {
    reading: 'Reading the rows',
    planning: 'Fitting them to the record',
    writing: 'Writing them down',
  } as Record<string, string>,

  faultsHead: (n: number) =>
    `${count(n, 'row or cell cannot', 'rows or cells cannot')} be read. Nothing was brought in.`,
  faultsNext: 'Put these right in the file, or the columns above, and try again.',
  readyHead: (rows: number) =>
    `${rows === 1 ? 'The one row' : `All ${rows} rows`} can be read. Nothing is brought in yet.`,
  nothingNew: 'Nothing new in this sheet: all of it is in the record already.',
  doneHead: 'Brought in.',
  would: (brought: string) => `New: ${brought}.`,
  faultsTable: 'Rows that cannot be read',
  cautionsHead: (n: number) => `${count(n, 'row is odd', 'rows are odd')}: kept out of the forecasts until answered`,
  notesHead: (n: number) => `${count(n, 'thing', 'things')} to know`,
  firstOf: (shown: number, all: number) => (shown < all ? `The first ${shown} of ${all}:` : ''),
  toMachines: 'To the machines',

  out: 'Take out',
  folder: 'The whole record, as CSV files',
  outInMm:
    'Lengths in these files stay in mm, as the record holds them, though this shop writes inches. 1 in is 25.4 mm; each column says mm in its head.',
  folderWhat:
    'One zip: the shop’s own files in the format that is brought in, and every row of the record as it is kept, corrections too. It can be brought back whole.',
  workbook: 'A workbook for people',
  workbookWhat:
    'One XLSX: machines, hours, points, sizes, findings, and today’s forecast. For reading, not for bringing back.',
  takingOut: 'Gathering it',
  takenOut: (name: string) => `${name} is saved where this window saves downloads.`,

  back: 'Bring an export back',
  backWhat: 'The zip of CSV files, into a record of its own, which is then opened. The record open now stays as it is.',
  chooseZip: 'Choose the zip',
  bringingBack: 'Laying the record down',
  backDone: (path: string, rows: number) =>
    `${path} holds the export again, ${count(rows, 'row', 'rows')}, and is open.`,
  backFaults: 'This is no whole export of this program. No record was laid down.',
  backFaultsNext: 'Take the export once more, or choose the zip as it was saved.',

  block: { safe: 'All or nothing', safeIs: 'a sheet with a fault in it changes nothing', record: 'Record' },

  columns: {
    machine: 'Machine',
    customer: 'Customer',
    make: 'Make',
    model: 'Model',
    serial: 'Serial number',
    built_year: 'Year built',
    meter_digits: 'Digits of the meter',
    hours_before: 'Machine hours before the meter',
    work_share: 'Share of hours worked',
    date: 'Day',
    dial_hours: 'Dial',
    event: 'Event',
    new_dial_hours: 'Dial of the new meter',
    hours_error: 'Error of the hours, 1 sd',
    assembly: 'Assembly',
    position: 'Position',
    point: 'Measuring point',
    part_class: 'Part class',
    safety: 'Towing or lifting',
    wears: 'Wears',
    new_size_mm: 'New size',
    new_size_tol_mm: 'Width of its tolerance',
    renew_at_mm: 'Renew at',
    reject_at_mm: 'Reject at',
    limit_source: 'Limits after',
    gauge_error_mm: 'Gauge error, 1 sd',
    fitted_machine_hours: 'First part fitted at',
    renewal: 'What was done',
    shim_mm: 'Packing put in',
    station: 'Station',
    size_mm: 'Size',
    finding: 'Finding',
    severity: 'Severity',
    note: 'Note',
    closed_date: 'Closed on',
    outcome: 'What became of it',
  } as Record<string, string>,
} as const;

/** "A" for the first column, as spreadsheets letter them. */
export function columnLetter(place: number): string {
  const more = Math.floor(place / 26);
  return (more > 0 ? columnLetter(more - 1) : '') + String.fromCharCode(65 + (place % 26));
}
