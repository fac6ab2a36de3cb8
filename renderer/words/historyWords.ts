import type { Entry, EntryRows } from '#core/contract/entries.ts';
import { day } from '#core/units/day.ts';
import { dayText, wholeFigure } from '#core/words/quantityText.ts';
import { counted } from './english.ts';

/** What each operation is called in the history. */
const whatWords: Record<string, string> = {
  'record/startEmpty': 'Record laid down',
  'record/openDemo': 'Demo workshop laid down',
  'record/bringIn': 'Files brought in',
  'exchange/bringInSheet': 'Sheet brought in',
  'exchange/restoreFolder': 'Folder brought back',
  'machine/takeIn': 'Machine taken in',
  'machine/change': 'Machine’s particulars changed',
  'assembly/add': 'Assembly laid out',
  'assembly/saveJoints': 'Joints of an assembly changed',
  'assembly/move': 'Assembly moved',
  'assembly/moveHalf': 'Half of an assembly moved',
  'point/add': 'Measuring point added',
  'point/limits': 'Limits changed',
  'hours/add': 'Hours entered',
  'hours/putRight': 'Hours put right',
  'hours/meter': 'Meter’s particulars changed',
  'hours/share': 'Share of work said',
  'hours/source': 'Source of hours said',
  'stripDown/save': 'Strip-down',
  'stripDown/swap': 'Sizes changed round',
  'oldSheets/save': 'Old sheet',
  'oldSheets/end': 'Batch of old sheets ended',
  'size/putRight': 'Size put right',
  'size/answer': 'Question about a size answered',
  'renewal/answer': 'Question about a size put in answered',
  'renewal/putRight': 'Renewal put right',
  'finding/add': 'Finding entered',
  'finding/close': 'Finding closed',
  'rebuild/takeIn': 'Job taken in',
  'rebuild/change': 'Job put right',
  'rebuild/lineSave': 'Work put on a job',
  'rebuild/addPhotos': 'Photos put to a job',
  'rebuild/strikePhoto': 'Photo struck at a job',
  'rebuild/takeStraighten': 'Straightening put on a job',
  'rebuild/takeSlide': 'Strips of a slide put on a job',
  'rebuild/takeChosen': 'Chosen repairs put on a job',
  'rebuild/lineStrike': 'Work taken off a job',
  'rebuild/quote': 'Job quoted',
  'rebuild/approve': 'Customer’s word on a job',
  'rebuild/bored': 'Size bored',
  'rebuild/check': 'Hand-over check answered',
  'rebuild/handOver': 'Machine handed over',
  'plan/propose': 'Winter planned',
  'plan/move': 'Visit moved to another week',
  'plan/pin': 'Visit held in its week, or let go',
  'plan/agree': 'Visit agreed with the customer',
  'plan/postpone': 'Visit left out of this winter',
  'plan/atFarm': 'Visit at the farm, or in the shop again',
  'plan/book': 'Day agreed put on the winter plan',
  'plan/done': 'Visit done',
  'plan/split': 'Visit split in two',
  'plan/add': 'Machine put on the winter plan',
  'plan/settingsSave': 'What the plan goes by set',
  'plan/weekSave': 'Hours of a week set',
  'plan/awaySave': 'Days a customer is away entered',
  'plan/awayStrike': 'Days a customer is away struck out',
  'rates/save': 'Shop’s rates',
  'contact/add': 'Contact noted',
  'contact/strike': 'Contact struck',
  'contact/saveTerms': 'How a customer is reached',
  'contact/addQuiet': 'Quiet period said',
  'contact/strikeQuiet': 'Quiet period taken back',
  'recall/saveLead': 'Recall lead said',
  'slips/makeMany': 'Slips of the winter sent',
  'finding/decline': 'Repair refused by the customer',
  'finding/strikeDecline': 'Refusal struck',
  'finding/addPhotos': 'Photos put to a finding',
  'finding/strikePhoto': 'Photo struck',
  'repair/saveFacts': 'Worn hole described',
  'repair/choose': 'Repair chosen',
  'slide/saveFacts': 'Slide’s lengths',
  'shopFigures/save': 'Figures of repair',
  'machine/sellOn': 'Machine sold on',
  'owner/putRight': 'Owner put right',
  'customer/change': 'Customer’s particulars changed',
  'customer/merge': 'Customers merged',
  'customer/part': 'Customers parted again',
  'customer/erase': 'Customer’s personal data erased',
  'class/save': 'Part class changed',
  'entries/undoLast': 'An entry taken back, which was put in again',
  'entries/redoLast': 'The entry taken back put in again',
  'shop/save': 'Shop’s settings changed',
  'forecastSettings/save': 'How the forecast works changed',
};

/** An operation nobody has words for is still named. */
export const whatText = (what: string): string => whatWords[what] ?? what.replace('/', ', ');

const NOUNS: Record<keyof EntryRows, [one: string, many: string]> = {
  machines: ['machine', 'machines'],
  assemblies: ['assembly', 'assemblies'],
  points: ['measuring point', 'measuring points'],
  limits: ['set of limits', 'sets of limits'],
  stripDowns: ['strip-down', 'strip-downs'],
  sizes: ['size', 'sizes'],
  sizesPutRight: ['size put right', 'sizes put right'],
  renewals: ['renewal', 'renewals'],
  shims: ['packing', 'packings'],
  joints: ['joint', 'joints'],
  findings: ['finding', 'findings'],
  closings: ['closed finding', 'closed findings'],
  photos: ['photo', 'photos'],
  owners: ['owner', 'owners'],
  customers: ['customer’s particulars', 'customers’ particulars'],
  declines: ['refusal', 'refusals'],
  dialReadings: ['meter reading', 'meter readings'],
  moves: ['place of an assembly', 'places of assemblies'],
  halves: ['position moved by itself', 'positions moved by themselves'],
  meters: ['meter’s particulars', 'meters’ particulars'],
  workShares: ['share of work', 'shares of work'],
  hoursSources: ['source of hours', 'sources of hours'],
  others: ['other row', 'other rows'],
};

/** "28 sizes, 1 finding, 1 meter reading": what an entry brought. Ways of saying the same once are left out. */
export function broughtText(entry: Entry): string {
  const { rows } = entry;
  const told = (Object.keys(NOUNS) as (keyof EntryRows)[]).filter((sort) => {
    if (rows[sort] === 0) return false;
    // said by what the entry is called, or by what hangs on it
    if (sort === 'stripDowns') return rows.stripDowns > 1;
    if (sort === 'machines') return rows.machines > 1;
    if (['moves', 'others', 'meters', 'workShares', 'hoursSources', 'owners'].includes(sort))
      return rows.machines === 0 && rows.assemblies === 0;
    return sort !== 'limits' || rows.points === 0;
  });
  return told.map((sort) => `${wholeFigure(rows[sort])} ${counted(rows[sort], ...NOUNS[sort])}`).join(', ');
}

/** "Tillmere 96-4", "Tillmere 96-4 and 63 more". */
export function machinesText({ machines, machineCount }: Entry): string {
  const [first] = machines;
  if (!first) return '';
  return machineCount === 1 ? first.name : `${first.name} and ${machineCount - 1} more`;
}

/** "12 Oct 2014", "12 Oct 2014 to 3 Mar 2020". */
export function daysText({ fromOn, toOn }: Entry): string {
  if (fromOn === null || toOn === null) return '';
  return fromOn === toOn ? dayText(day(fromOn)) : `${dayText(day(fromOn))} to ${dayText(day(toOn))}`;
}

/** Words of the History screen. */
export const historyWords = {
  title: 'History',
  sub: 'who changed what and when, newest first',
  loading: 'Fetching the history',
  when: 'Entered',
  who: 'By',
  what: 'What',
  machine: 'Machine',
  ofDay: 'Of',
  brought: 'Brought',
  nobody: 'not said',
  erasedCustomer: 'an erased customer',
  openSheet: 'sheet',
  undone: (at: string, by: string): string => (by === '' ? `taken back ${at}` : `taken back ${at} by ${by}`),
  takeBack: 'Take back the last entry',
  ask: (what: string, machine: string, of: string): string =>
    `The last entry would be taken back: ${[what.toLowerCase(), machine, of].filter(Boolean).join(', ')}.`,
  askBrought: (brought: string): string =>
    brought === ''
      ? 'It counts no more. It stays in the record, and stands here as taken back.'
      : `With it ${brought}. They count no more, and every forecast is as before. They stay in the record, and stand here as taken back.`,
  askCustomer: 'The customer stays on the list.',
  askTyped: 'Until something else is entered it can be put in again.',
  putIn: 'Put it in again',
  askRedo: (what: string, machine: string, of: string): string =>
    `What was taken back would be put in again: ${[what.toLowerCase(), machine, of].filter(Boolean).join(', ')}.`,
  askRedoBrought: (brought: string): string =>
    brought === ''
      ? 'It counts again as it did.'
      : `With it ${brought}. They count again, and every forecast is as it was then.`,
  redoBy: 'Put in by',
  leaveOut: 'Leave it out',
  yes: 'Take it back',
  no: 'Leave it',
  by: 'Taken back by',
  nothing: 'Nothing has been entered yet that could be taken back.',
  older: 'Older entries',
  blockLast: 'Last entry',
  blockNothing: 'none',
  blockRule: 'Taken back',
  blockRuleIs: 'the last entry first; nothing is destroyed',
  blockShown: 'Shown',
  shown: (n: number): string => `${wholeFigure(n)} ${counted(n, 'entry', 'entries')}`,
  key: 'History',
} as const;
