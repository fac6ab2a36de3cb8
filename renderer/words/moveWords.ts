import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';

/** Words of moving an assembly, or half of one. */
export const moveWords = {
  assembly: 'Assembly',
  kind: 'Kind',
  serial: 'Serial no.',
  sits: 'Sits',
  here: 'on this machine',
  onShelf: 'on the shelf',
  move: 'Move',
  none: 'No assembly sits on this machine',
  noneNext: 'Lay one out, or move one here from the page of the machine it sits on.',
  what: 'What is moved',
  whole: 'the whole',
  half: (group: string): string => `the ${group} alone`,
  fromShelf: (group: string, last: string, since: string): string =>
    `a ${group} from the shelf (${last}, there since ${dayText(day(since))})`,
  noHalves: 'It moves as one whole. What of a kind goes together is named on the Shop screen.',
  to: 'Where to',
  toMachine: 'To which machine',
  toAssembly: (group: string): string => `To which assembly, for its ${group}`,
  shelf: 'to the shelf',
  another: 'to another machine',
  otherAssembly: 'to another assembly',
  noMachines: 'No other machine is on record: it can only go to the shelf.',
  noOthers: 'No other assembly of this kind is on record: it can only go to the shelf.',
  theirs: (group: string, where: string): string => `The ${group} of ${where}`,
  inExchange: 'comes here in exchange',
  theirsToShelf: 'goes to the shelf',
  on: 'Day of the move',
  offDial: (machine: string): string => `Dial of ${machine}`,
  dialHint: 'left empty: by the date',
  goesWhere: 'What goes where',
  goes: (what: string, from: string | null, to: string | null): string =>
    `${what}: from ${from ?? 'the shelf'} to ${to ?? 'the shelf'}`,
  the: (group: string | null, items: readonly number[]): string =>
    group === null ? 'Everything' : `The ${group}, ${items.length === 1 ? 'item' : 'items'} ${items.join(', ')}`,
  note: 'Parts, sizes, findings and hours go with it; forecasts follow. It can be taken back on the History screen.',
  leave: 'Leave it where it is',
  loading: 'Looking up what can be moved',
} as const;
