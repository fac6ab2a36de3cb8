import type { ComeInBy, Contact, RecallStanding } from '#core/contract/recall.ts';
import { type Day, day } from '#core/units/day.ts';
import { dayText, hoursText, NO_BREAK_SPACE, whenText, wholeFigure } from '#core/words/quantityText.ts';
import { counted, shared } from './english.ts';

const WAYS: Record<Contact['way'], string> = {
  slip: 'slip sent',
  email: 'e-mail sent',
  message: 'message sent',
  phone: 'on the telephone',
  'in-person': 'spoken to here',
};

const ANSWERS: Record<NonNullable<Contact['answer']>, string> = {
  booked: 'booked',
  later: 'later',
  declined: 'declined',
  sold: 'sold',
};

/** Words of the recall list, of letters and of the answers to them. */
export const recallWords = {
  tab: 'Recall',
  title: 'Recall',
  loading: 'Looking who is to be contacted',
  learning: 'Figures are from what the trade says: the shop’s own parts are being learned.',
  sub: (farms: number, machines: number): string =>
    `${wholeFigure(farms)} ${counted(farms, 'farm', 'farms')} to contact about ${wholeFigure(machines)} ${counted(machines, 'machine', 'machines')}`,
  groups: { toContact: 'To contact, in this order', waiting: 'Sent, no answer yet', held: 'Off the list for now' },
  farm: 'Farm',
  machine: 'Machine',
  why: 'Why now',
  by: 'In by',
  about: 'About',
  last: 'Last contact',
  never: 'none',
  open: (machine: string): string => `Open ${machine}`,
  none: 'Nobody is to be contacted',
  noneNext: (on: string): string =>
    `No open safety finding, every meter read within the year, and all deciding hours last beyond ${on}. Enter hours and sheets as they come: who falls due appears here.`,
  emptyRecord: 'No machine on record yet',
  emptyRecordNext: 'Take in a machine with its owner: the list then says whom to contact, why and by which hours.',
  takeIn: 'Take in a machine',
  away: (km: number | null, minutes: number | null): string =>
    [km === null ? '' : `${wholeFigure(km)} km`, minutes === null ? '' : `${wholeFigure(minutes)} min`]
      .filter(Boolean)
      .join(', '),
  guessed: 'from like parts alone: to be measured',
  showMore: (left: number): string =>
    `Show more: ${wholeFigure(left)} ${counted(left, 'machine', 'machines')} after these`,
  noContact: (count: number): string =>
    `${wholeFigure(count)} ${counted(count, 'farm asked', 'farms asked')} not to be contacted and ${counted(count, 'is', 'are')} in no list.`,
  nobodys: (names: readonly string[]): string =>
    `Due, and nobody on record to contact: ${names.join(', ')}. Enter the owner on the machine’s page.`,
  block: { winter: 'Winter', lastsTo: 'Must last to', lead: 'Called in before', rule: 'Order' },
  days: (count: number): string => `${wholeFigure(count)} ${counted(count, 'day', 'days')}`,
  ruleIs: 'safety findings, promises to ring, deciding hours by 100 h, then the nearer farm',
  phoneKey: 'Phone',
  calendar: 'Calendar file',
  calendarMade: (name: string, visits: number, due: number): string =>
    `${name} is in the downloads: ${visits} booked ${counted(visits, 'visit', 'visits')}, ${due} due ${counted(due, 'date', 'dates')}. Brought in again later it changes the same entries.`,
  paper: 'Recall list',
  print: 'List on paper',
  bulk: 'Slips for all',
  lead: 'Lead',
  leadFact:
    'How long before its deciding hours a machine is called in: for parts to come, a week to be free, the work to be done.',
  leadLabel: 'Called in before',
  leadUnit: 'days',
  leadWrong: 'whole days, 0 to 365',
  save: 'Save',
  close: 'Close',

  slip: 'Slip PDF',
  email: 'E-mail',
  message: 'Message',
  script: 'Phone words',
  answer: 'Note an answer',
  toMachine: 'Machine',
  copy: 'Copy',
  copied: 'Copied',
  notCopied: 'Mark the text and copy it by hand.',
  openMail: 'Open in the mail program',
  noAddress: 'No e-mail address on record: it opens without one.',
  subject: 'Subject',
  characters: (count: number): string => `${count} of at most 159 characters`,
  readAloud: 'To read aloud',
  wait: 'Writing the letters',
  slipMade: (number: string, file: string): string => `Slip ${number} is made; ${file} is in the downloads.`,
  sentQuestion: 'Was it sent?',
  sentThen: 'Noted as sent, the farm waits two weeks under “Sent, no answer yet”.',
  noteSent: 'Note as sent',
  notSent: 'Not sent',
  noted: 'Noted.',
  putOnPlan: 'Put it on the winter plan',
  onPlan: (on: Day): string => `It stands on the winter plan, agreed, in the week with ${dayText(on)}.`,
  toPlan: 'To the winter plan',
  takeBack: 'Take it back',
  takenBack: 'Taken back: it counts no more, and stays in the record.',
  takenBackWhy: 'taken back',

  way: 'How',
  ways: {
    phone: 'on the telephone',
    'in-person': 'here',
    email: 'by e-mail',
    message: 'by message',
    slip: 'to a slip',
  },
  answers: { none: 'no answer yet', booked: 'booked', later: 'later', declined: 'declined', sold: 'sold' },
  answerHead: 'Answer',
  booked: 'Comes in on',
  later: 'Ask again from',
  dayHint: 'may stay empty',
  callBack: 'Ring back on',
  saidBy: 'Spoken with',
  note: 'Note',
  day: 'Day',
  noteIt: 'Note it',
  soldNext: 'Enter the sale on the machine’s page, so that the new owner is found here.',
  about_: 'About',
  aboutAll: 'the farm as a whole',
  strike: 'Strike',
  strikeLabel: (what: string): string => `Strike: ${what}`,
  strikeWhy: 'Why it never was',
  strikeIt: 'Strike it',

  reach: 'How they are reached',
  reachKey: 'How to reach them',
  noContactLabel: 'Contact',
  may: 'may be contacted',
  mayNot: 'asked not to be contacted',
  wish: 'In their words, or what else to know',
  km: 'By road, one way',
  minutes: 'Drive',
  seasonTo: 'Their season ends',
  seasonHint: 'day and month, like 15.10.; empty: up to the shop’s next winter',
  seasonWrong: 'a day of the year, like 15.10.',
  figureWrong: 'nought or more',
  quiet: 'Quiet periods',
  quietNone: 'None.',
  quietFrom: 'From',
  quietTo: 'To',
  quietWhy: 'Why',
  quietAdd: 'Add a quiet period',
  quietRule: 'In a quiet period only a finding that forbids use stands on the list.',
  noContactIs: 'Asked not to be contacted.',
  noContactRings: 'They ring you: answer, and send nothing.',

  bulkHead: 'Slips for everybody to contact',
  bulkFact: (machines: number, farms: number): string =>
    `${wholeFigure(machines)} ${counted(machines, 'slip', 'slips')} for ${wholeFigure(farms)} ${counted(farms, 'farm', 'farms')}, in the order of the list. All of them are numbered and kept, or none.`,
  bulkNote: 'Note each as sent today',
  bulkBy: 'Made by',
  bulkStart: 'Make the slips',
  bulkSteps: { printing: 'Laying out the slips', writing: 'Keeping the slips' } as Record<string, string>,
  bulkCancel: 'Break off',
  bulkCancelled: 'Broken off: no slip was made.',
  bulkDone: (count: number, leftOut: number): string =>
    `${wholeFigure(count)} ${counted(count, 'slip is', 'slips are')} made.${leftOut > 0 ? ` ${wholeFigure(leftOut)} left out: no owner who may be written to.` : ''}`,
  savePdf: 'Save as one PDF',
  saveZip: 'Save as separate files',
} as const;

/** "12 Nov 2026, on the telephone with Mrs Holm: later". */
export function contactText(contact: Contact): string {
  const { madeOn, way, slipNumber, saidBy, answer, answerOn, callBackOn } = contact;
  const withWhom = saidBy === '' ? '' : ` with ${saidBy}`;
  const number = slipNumber === null ? '' : ` ${slipNumber}`;
  const said = answer === null ? '' : `: ${ANSWERS[answer]}${answerOn === null ? '' : `, ${dayText(day(answerOn))}`}`;
  const back = callBackOn === null ? '' : `; ring back ${dayText(day(callBackOn))}`;
  return `${dayText(day(madeOn))}, ${WAYS[way]}${number}${withWhom}${said}${back}`;
}

const HELD: Record<Extract<RecallStanding, { code: 'held' }>['why'], string> = {
  booked: 'booked',
  later: 'later',
  declined: 'declined',
  sold: 'sold',
  'call-back': 'to be rung back',
  quiet: 'quiet period',
};

/** "booked, up to 7 Dec 2026"; nothing where it is to be contacted. */
export function standingText(standing: RecallStanding): string {
  if (standing.code === 'to-contact') return '';
  if (standing.code === 'waiting') return `sent ${dayText(day(standing.sentOn))}`;
  const until = standing.until === null ? '' : `, up to ${dayText(day(standing.until))}`;
  return `${HELD[standing.why]}${until}`;
}

/** "8 500 h on the dial of Vessel 118". */
export function comeInText({ dialHours, hoursAre, dialMachine }: ComeInBy): string {
  const hours = hoursText(Math.round(dialHours / 10) * 10);
  if (hoursAre === 'machine') return `${hours} since new`;
  return dialMachine === null ? `${hours} on the dial` : `${hours} on the dial of ${dialMachine}`;
}

/** A month, "passed", or "check next winter" past two seasons. */
export const aboutText = ({ about, decidingHoursLeft }: ComeInBy, asOf: Day): string =>
  decidingHoursLeft < 0 ? shared.passed : whenText(about, asOf);

export const severityWords = { watch: 'watch it', repair: 'needs repair', 'do-not-use': shared.doNotUse } as const;

/** A figure of a letter's plain text is not broken over two lines on the screen. */
export const unbroken = (text: string): string => text.replace(/(\d) (?=\d{3}(\D|$))/g, `$1${NO_BREAK_SPACE}`);

/** Words of the summary when the window opens. */
export const newsWords = {
  head: (became: string, since: Day | string): string => `${became} since ${dayText(day(since))}`,
  label: 'Became due',
  toList: 'To the recall list',
  seen: 'Seen',
} as const;
