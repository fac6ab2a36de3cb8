import type { CustomerSheet, Double } from '#core/contract/customer.ts';
import { day } from '#core/units/day.ts';
import { dayText, wholeFigure } from '#core/words/quantityText.ts';
import { counted } from './english.ts';

const ALIKE: Record<Double['alike'][number], string> = {
  name: 'name',
  phone: 'telephone',
  email: 'e-mail',
  place: 'place',
  address: 'address',
};

/** Words of the Customers screen. */
export const customersWords = {
  title: 'Customers',
  count: (n: number): string => `${wholeFigure(n)} ${counted(n, 'customer', 'customers')}`,
  loading: 'Fetching the customers',
  find: 'Find by name, place, telephone or machine',
  none: 'No customer yet',
  noneNext: 'A customer comes on record with the first machine that is taken in.',
  takeIn: 'Take in a machine',
  nothingFound: (typed: string): string => `Nobody with “${typed}” in name, place, telephone or machines.`,
  name: 'Name',
  place: 'Farm or place',
  address: 'Address',
  phone: 'Telephone',
  email: 'E-mail',
  machines: 'Machines',
  slips: 'Slips',
  erasedName: 'erased on request',
  open: (name: string): string => `Open ${name}`,
  formerly: (n: number): string => `${n} formerly`,

  doublesHead: (n: number): string => `${n} ${counted(n, 'pair', 'pairs')} of rows may be one and the same customer`,
  doubleOf: (one: string, other: string): string => `${one} and ${other}`,
  alike: (alike: Double['alike']): string => `same or like ${alike.map((code) => ALIKE[code]).join(', ')}`,
  compare: 'Compare',
  compareLabel: (one: string, other: string): string => `Compare ${one} with ${other}`,

  owned: 'Machines, and when they were theirs',
  noMachines: 'No machine of theirs on record.',
  since: (from: string | null): string => (from === null ? 'from the beginning' : `from ${dayText(day(from))}`),
  until: (until: string | null): string => (until === null ? '' : `, up to ${dayText(day(until))}`),
  slipsMade: (n: number): string => `${wholeFigure(n)} ${counted(n, 'slip', 'slips')} made for them.`,
  mergedHead: 'Merged into this customer',
  merged: (name: string, place: string): string => [name, place].filter(Boolean).join(', '),
  part: 'Part again',
  partLabel: (name: string): string => `Part ${name} again`,
  partFact: (name: string): string =>
    `${name} stands for itself again, with the machines and slips that were its own; what the merge changed here goes back.`,
  partReason: 'Why they are two',
  partIt: 'Part them',
  erasedOn: (when: string, by: string, texts: number): string =>
    `Personal data erased ${when} by ${by}; ${texts} ${counted(texts, 'text', 'texts')} blanked. Machines, sizes and hours stayed.`,

  change: 'Change',
  merge: 'Merge with another',
  giveOut: 'Give out all data',
  reach: 'Contacts and wishes',
  erase: 'Erase personal data',
  by: 'By',
  save: 'Save',
  changeFact: 'Slips made before keep what was printed on them.',

  mergeFact: (name: string): string => `${name} is the same customer as another row, which stays.`,
  mergeInto: 'Who stays',
  mergeIntoHint: 'part of the name',
  mergeGoes: 'What goes where',
  goesMachines: (names: string, into: string): string => `${names}: to ${into}, with the days they were theirs`,
  goesNoMachines: 'no machines',
  goesSlips: (n: number, into: string): string =>
    `${wholeFigure(n)} ${counted(n, 'slip', 'slips')}: found under ${into}, printed as they are`,
  mergeRight: 'What is right of the two',
  take: (text: string): string => `Take “${text}”`,
  mergeIt: 'Merge them',
  mergeUndo: 'Nothing is destroyed: they can be parted again here.',

  given: (name: string): string => `${name} is in the downloads: a first page, tables, and slips as printed.`,

  eraseFact: (name: string): string =>
    `Everything that tells who ${name} is would be blanked for good: name, address, telephone, e-mail, and whatever names them in slips, notes, refusals and sheets being typed.`,
  eraseStays: (machines: number, slips: number): string =>
    `What stays: ${wholeFigure(machines)} ${counted(machines, 'machine', 'machines')} with sizes, hours and findings; ${wholeFigure(slips)} ${counted(slips, 'slip', 'slips')} without the name; photos as they are: look whether anybody is seen on them, and strike those. Who erased, and when.`,
  eraseBackups: (n: number): string =>
    n === 0
      ? 'There is no backup of this record that would still hold it.'
      : `${wholeFigure(n)} ${counted(n, 'backup', 'backups')} made before still ${counted(n, 'holds', 'hold')} it, until newer ones take ${counted(n, 'its', 'their')} place or you take ${counted(n, 'it', 'them')} away; bringing one back brings the name back:`,
  eraseElsewhere: 'Exported folders, printed slips and copies on other disks are not reached from here.',
  eraseTexts: (n: number): string =>
    `${wholeFigure(n)} ${counted(n, 'text', 'texts')} beside their own particulars would change`,
  eraseNoTexts: 'No other text names them as their particulars do.',
  before: 'As it stands',
  after: 'As it would read',
  eraseWords: 'Further words that name them',
  eraseWordsHint: 'a first name, a nickname, with commas between; as written',
  eraseAlone: 'Found in texts by itself:',
  addWord: (word: string): string => `Blank “${word}” too`,
  typeName: (name: string): string => `Type ${name} to erase it`,
  typeNameHint: 'this cannot be taken back',
  eraseWho: 'Erased by',
  eraseIt: 'Erase for good',
  erasedNotAnew:
    'Erased. The record file could not be written anew: make room on the disk, close other programs that have it open, and save a backup as the record.',
  close: 'Close',

  blockMachines: 'Machines',
  blockErased: 'Erased',
  blockRule: 'Kept',
  blockRuleIs: 'changes and merges stay in the record; only erasing destroys, on request',
} as const;

/** "2 now, 1 formerly". */
export function machinesCell({ owned }: Pick<CustomerSheet, 'owned'>): string {
  const now = owned.filter(({ untilOn }) => untilOn === null);
  const before = owned.length - now.length;
  return [now.map(({ machine }) => machine).join(', '), before > 0 ? customersWords.formerly(before) : '']
    .filter(Boolean)
    .join('; ');
}

/** Words of a machine's owners. */
export const ownerWords = {
  tab: 'Owners',
  owner: 'Owner',
  from: 'From',
  fromBeginning: 'the beginning',
  state: 'State',
  now: 'now',
  before: 'before',
  never: (reason: string): string => `struck: ${reason}`,
  erased: 'erased on request',
  sellOn: 'Sold on',
  sellOnFact:
    'From that day on it is theirs. Sizes, hours and findings stay with the machine; slips stay whose they are.',
  buyer: 'To whom',
  buyerHint: 'part of a name, or a new one',
  buyerKnown: 'on record',
  buyerNew: 'a new customer',
  place: 'Farm or place',
  phone: 'Telephone',
  from2: 'From the day',
  sellIt: 'Enter the sale',
  putRight: 'Put right',
  putRightLabel: (name: string): string => `Put right: ${name}`,
  putRightFact: (name: string): string => `${name}: whose it was, or from when. The old entry stays in the record.`,
  why: 'Why',
  savePutRight: 'Put it right',
  strike: 'It never was theirs',
  none: 'Nobody’s on record. Enter a sale to say whose it is.',
} as const;
