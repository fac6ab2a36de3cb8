import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { counted } from './english.ts';

/** Words of the Slips screens. What the paper itself says stands in core/papers. */
export const slipsWords = {
  title: 'Slips, newest first',
  count: (count: number): string => `${count} ${counted(count, 'slip', 'slips')} made`,
  loading: 'Fetching the slips',
  slip: 'Slip',
  toSlips: 'To the slips',
  number: 'Number',
  madeOn: 'Made',
  machine: 'Machine',
  customer: 'Customer',
  says: 'What it says',
  noSlips: 'No slip made yet',
  noSlipsNext:
    'A slip tells a farmer when the machine should next come in, by its hours. Open a machine and press P: the page is shown before it is made.',
  toMachines: 'To the machines',

  of: (machine: string): string => `Forecast slip: ${machine}`,
  numbered: (number: string): string => `Forecast slip ${number}`,
  printing: 'Laying out the page',
  drawing: 'Drawing the page',
  cannotDraw: 'The page cannot be shown here.',
  cannotDrawNext: 'It can still be saved, and opened with any reader of PDF files.',
  make: 'Make slip',
  print: 'Print',
  save: 'Save PDF',
  machineKey: 'Machine',
  again: 'Preview of today',
  by: 'Made by',
  preview: 'Preview',
  previewNote:
    'As it would be made today. Nothing is kept until the slip is made: then it has its number and stays as it is.',
  made: (number: string): string => `Slip ${number} made`,
  madeNote: 'Kept with its number. Print it, or save the PDF to send.',
  stoppedSince: 'This slip was made before the following was found, or does not lead with it:',
  oldNote: (on: string): string => `As it was made on ${dayText(day(on))}; later readings do not change it.`,
  others: 'Other slips of this machine',
  page: (page: number, pages: number): string => `Page ${page} of ${pages}`,
  numberCell: 'Number',
  notYet: 'given when made',
  restsOn: 'Rests on',
  measuredBy: 'Measured by',
  readings: (own: number, like: number): string =>
    `${own} own ${counted(own, 'reading', 'readings')}, ${like} like ${counted(like, 'part', 'parts')}`,
} as const;

/** A name every system takes, where a slip is saved again. */
export const slipFileName = (number: string, machine: string): string =>
  `forecast-slip-${number}-${machine
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60)}.pdf`;
