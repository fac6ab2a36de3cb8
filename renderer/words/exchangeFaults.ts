import type { Fault } from '#core/contract/operation.ts';
import { wholeFigure } from '#core/words/quantityText.ts';

type Facts = Fault['facts'];

/** What is said of files that cannot be read, written or brought back. */
export const exchangeFaults: Record<string, (facts: Facts) => { what: string; safe?: string; next?: string }> = {
  'cannot-read': (f) => ({
    what: `${f.file} cannot be read.`,
    next: 'See that it is there, closed in other programs, and that its path is whole.',
  }),
  'cannot-write': (f) => ({
    what: `${f.file} cannot be written.`,
    next: 'Choose a place this computer lets you write to.',
  }),
  'folder-not-empty': (f) => ({
    what: `The folder ${f.folder} holds something already.`,
    next: 'Name a folder that is not there yet, or an empty one.',
  }),
  'file-empty': () => ({ what: 'There is nothing in this file.', next: 'Choose another.' }),
  'file-too-large': (f) => ({
    what: `This file is larger than ${f.mostMB} MB.`,
    next: 'Give its whole path instead, or part it into several.',
  }),
  'unknown-file': () => ({ what: 'The program no longer has this file in hand.', next: 'Choose it once more.' }),
  'encoding-utf16': () => ({
    what: 'This file is saved as UTF-16, which is not read.',
    next: 'Save it as CSV UTF-8 in the spreadsheet, or as XLSX.',
  }),
  'binary-file': () => ({
    what: 'This is no text file and no XLSX workbook.',
    next: 'Save the sheet as XLSX or as CSV UTF-8 in the program it comes from.',
  }),
  'quote-not-closed': (f) => ({
    what: `A quotation mark in row ${f.row} is not closed, so the rows after it cannot be told apart.`,
    next: 'Put it right in the file and choose it again.',
  }),
  'too-many-rows': (f) => ({ what: `This sheet has more than ${f.mostRows} rows.`, next: 'Part it into several.' }),
  'workbook-too-large': (f) => ({
    what: `This workbook has ${f.MB} MB; up to ${f.mostMB} MB are read.`,
    next: 'Save the one sheet as CSV: a CSV file may be as long as it likes.',
  }),
  'workbook-too-many-rows': (f) => ({
    what: `A sheet of this workbook has more than ${f.mostRows} rows.`,
    next: 'Save it as CSV: a CSV file may be as long as it likes.',
  }),
  'workbook-too-wide': (f) => ({
    what: `A sheet of this workbook has more than ${f.mostColumns} columns.`,
    next: 'Take the columns away that are not needed, or save the sheet as CSV.',
  }),
  'workbook-broken': () => ({
    what: 'This workbook cannot be read: it was cut short, or it is no XLSX file.',
    next: 'Open it in a spreadsheet and save it once more, as XLSX or as CSV. A zip: unpack it and choose the sheet in it.',
  }),
  'zip-broken': () => ({
    what: 'This zip cannot be read: it was cut short, or it is no zip.',
    next: 'Copy it once more.',
  }),
  'zip-too-large': (f) => ({ what: `This file unpacks to more than ${f.mostMB} MB and is not opened.` }),
  'sheet-too-long': (f) => ({
    what: `${f.sheet} would have ${f.rows} rows; a workbook’s sheet holds ${f.mostRows}.`,
    next: 'Take the record out as CSV files.',
  }),
  'rows-do-not-fit': (f) => ({
    what: `Rows of this export do not fit together (${f.table}).`,
    safe: 'No record was laid down.',
    next: 'Take the export once more from the record it came from.',
  }),
  'record-not-empty': () => ({ what: 'An export is brought back only into a record that holds nothing yet.' }),
  'record-changed': () => ({
    what: 'Something was entered while the file was being read.',
    next: 'Bring the file in once more.',
  }),
  'job-running': () => ({ what: 'Other long work is still running.', next: 'Wait for it, or break it off.' }),
  'unknown-job': () => ({ what: 'The program knows nothing of this work any more.', next: 'Start it once more.' }),
  'job-out-of-memory': (f) => ({
    what: `This work needed more memory than it may take${f.mostMb === undefined ? '' : ` (${wholeFigure(Number(f.mostMb))}\u00A0MB)`}.`,
    safe: 'It ended there, and nothing of it is half done.',
    next: `${
      f.kind === 'forecast-shop'
        ? 'Close other programs, then begin it again: it goes on where it was.'
        : 'Ask for less at once, a sheet in two parts for one.'
    } If it ends so again, make a backup and start the program again.`,
  }),
  'job-needs-file': () => ({ what: 'Long work needs a record that is a file.' }),
};
