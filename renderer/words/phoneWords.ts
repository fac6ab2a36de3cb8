import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';

/** Words of the telephone sheet. */
export const phoneWords = {
  title: 'Phone',
  sub: 'who rings, and what to say',
  find: 'Who rings',
  findHint: 'part of a name, farm, serial, telephone, slip or job number',
  nothing: (typed: string): string =>
    `Nobody with “${typed}”. Try another part of the name, or the figures on the machine’s plate.`,
  more: (count: number): string => `${count} more: type a little more of it.`,
  emptyNext: 'Take in a machine with its owner: whoever rings is then found here by part of a name.',
  start: 'Type who rings',
  startNext:
    'Machines, deciding hours, open findings, visits and the last contact then stand here, with one sentence to read aloud.',
  looking: 'Looking the machines up',
  another: 'Another caller',
  readAloud: 'To read aloud',
  dial: 'Enter the dial',
  by: 'In by',
  found: 'Found and open',
  noFindings: 'no open finding',
  visits: 'Visits',
  noVisits: 'none on record',
  noMachines: 'No machine is theirs now. Take one in, or enter the sale on its page.',
  machineKey: 'Machine',
  slipKey: 'Slip',
  contacts: 'What was said before',
  noContacts: 'Nothing yet.',
  say: 'Note the call',
  visit: (on: string, kind: 'strip-down' | 'job' | 'booked', text: string): string =>
    `${dayText(day(on))} ${{ 'strip-down': 'strip-down', job: 'job', booked: 'booked' }[kind]}${text === '' ? '' : `, ${text}`}`,
} as const;
