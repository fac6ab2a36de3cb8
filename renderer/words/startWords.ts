import type { ImportAccount } from '#core/contract/record.ts';
import { counted } from './english.ts';

const count = (n: number, one: string, many: string): string => `${n} ${counted(n, one, many)}`;

/** Words of the first screen, and of bringing files in. */
export const startWords = {
  title: 'Hours and Wear',
  sub: 'Machine hours, measured wear, and when each part should next come in.',
  titleOpen: 'Record',
  job: 'All of a shop’s machines stand in one record, a single file on this computer. Choose how to begin; nothing here is final, and no choice overwrites a record that is there.',
  waiting: 'Opening',

  demo: 'Open the demo workshop',
  demoWhat:
    'An invented shop with thirty-odd machines and eight winters, in a record of its own. Nothing done in it touches yours.',
  empty: 'Start empty',
  emptyWhat: (path: string) => `Lays down an empty record and opens it: ${path}`,
  emptyWhatBeside: 'Lays down an empty record beside the one open now, which stays as it is, and opens it.',
  emptyWhatBare: 'Lays down an empty record and opens it.',
  bringIn: 'Bring in CSV files',
  bringInWhat:
    'The shop’s own spreadsheets. First they are only read, and every odd row is listed; then all of it comes in, or nothing.',
  bringBack: 'Bring an export back',
  bringBackWhat: 'The zip that Take out saved, as a record of its own: every row and every correction, as it was.',
  bringBackWhatBeside:
    'The zip that Take out saved, as a record of its own, which is then opened. The record open now stays as it is.',
  open: 'Open an existing record',
  openWhat: 'A record file of this program, wherever it lies.',
  restore: 'Restore a backup',
  restoreWhat: 'Puts a backup in place of the record; the record as it stands is set aside first.',
  backUp: 'Make a backup now',
  backUpWhat: 'A checked copy of the record, beside the program’s own files.',
  backedUp: (file: string) => `Backup made: ${file}`,
  toMachines: 'To the machines',

  path: 'Whole path of the file',
  pathHint: 'for example C:\\Shop\\machines.hoursandwear, or /home/shop/machines.hoursandwear',
  browse: 'Look for it',
  openIt: 'Open it',
  restoreIt: 'Put it in place',
  lookInto: 'Look into it',
  recent: 'Opened before',
  backups: 'Backups of this record',
  noBackups: 'No backup of this record yet.',
  backupLine: (day: string, time: string, counts: string) => `${day}, ${time}: ${counts}`,
  restoreAsk: (name: string) => `Put ${name} in place of the record as it stands?`,
  theBackup: (day: string, time: string) => `the backup of ${day}, ${time}`,
  restoreSafe: 'The record as it stands is set aside first, as a file of its own.',
  lostNothing: 'Nothing would be lost: the backup holds all that the record holds.',
  lost: (entries: number, things: string) =>
    `${count(entries, 'entry', 'entries')} made since would go${things === '' ? '' : `: ${things}`}.`,
  lostThings: {
    customers: ['customer', 'customers'],
    machines: ['machine', 'machines'],
    points: ['measuring point', 'measuring points'],
    sizes: ['size', 'sizes'],
    findings: ['finding', 'findings'],
    slips: ['slip', 'slips'],
  },
  otherRecord: 'It is a backup of another record, not of this one.',
  looking: 'Looking into the backup',
  troubleNext: 'Open another record, or restore a backup; the file is left as it is.',
  beforeMigrating: 'as an earlier program left it',
  alsoAt: 'also in the chosen folder',
  leave: 'Leave as it was',
  closeChoice: 'Not this',

  files: 'Files',
  pickFiles: 'Choose the files',
  orDrop: 'or drop them here',
  filesHint:
    'machines.csv, hours.csv, points.csv and sizes.csv; moves.csv, classes.csv and findings.csv where there are any',
  reading: 'Reading the files',
  chosen: (n: number) => count(n, 'file', 'files'),
  bytes: (kB: number) => `${kB} kB`,
  otherFiles: 'Other files',
  bringItIn: 'Bring it in',
  bringingIn: 'Bringing it in',

  faultsHead: (n: number) => `${count(n, 'row cannot', 'rows cannot')} be read. Nothing was brought in.`,
  faultsNext: 'Put these right in the files and choose them again.',
  readyHead: 'All rows can be read. Nothing is brought in yet.',
  doneHead: 'Brought in.',
  nothingNew: 'Nothing new in these files: all of it is in the record already.',
  cautionsHead: (n: number) =>
    `${count(n, 'row is odd', 'rows are odd')}: brought in, and kept out of the forecasts until answered`,
  notesHead: (n: number) => `${count(n, 'thing', 'things')} passed over`,
  faultsTable: 'Rows that cannot be read',
  file: 'File',
  row: 'Row',
  column: 'Column',
  value: 'What stands there',
  expected: 'What was expected',
  wholeFile: 'all',
  more: (n: number) => `and ${n} more like these`,

  block: {
    record: 'Record',
    none: 'none open',
    holds: 'Holds',
    schema: 'Layout of the record',
    version: (n: number) => `version ${n}`,
    demo: 'Invented',
    isDemo: 'the demo workshop',
    safe: 'All or nothing',
    safeIs: 'a file with a fault in it changes nothing',
    day: 'Today',
  },
  holds: (machines: number, sizes: number) =>
    `${count(machines, 'machine', 'machines')}, ${count(sizes, 'size', 'sizes')}`,
} as const;

type Lost = Record<keyof typeof startWords.lostThings, number>;

/** "2 machines, 14 sizes": what a restore would take out of sight. */
export const lostText = (lost: Lost): string =>
  (Object.keys(startWords.lostThings) as (keyof Lost)[])
    .filter((thing) => lost[thing] > 0)
    .map((thing) => count(lost[thing], startWords.lostThings[thing][0] ?? '', startWords.lostThings[thing][1] ?? ''))
    .join(', ');

/** "3 customers, 31 machines, 512 sizes": what came in, or would. */
export function broughtText(brought: ImportAccount['brought']): string {
  const lines: [keyof ImportAccount['brought'], string, string][] = [
    ['customers', 'customer', 'customers'],
    ['machines', 'machine', 'machines'],
    ['dialReadings', 'meter reading', 'meter readings'],
    ['points', 'measuring point', 'measuring points'],
    ['sizes', 'size', 'sizes'],
    ['renewals', 'renewal', 'renewals'],
    ['moves', 'move', 'moves'],
    ['findings', 'finding', 'findings'],
    ['classes', 'part class', 'part classes'],
  ];
  return lines
    .filter(([noun]) => brought[noun] > 0)
    .map(([noun, one, many]) => count(brought[noun], one, many))
    .join(', ');
}
