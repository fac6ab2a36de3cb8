import type { Fault } from '#core/contract/operation.ts';
import { whatText } from './historyWords.ts';

type Facts = Fault['facts'];

/** What is said when a sheet, or the taking back of an entry, is refused. */
export const deskFaults: Record<string, (facts: Facts) => { what: string; safe?: string; next?: string }> = {
  'unknown-entry': () => ({ what: 'That entry is not on record.', next: 'Open the history afresh.' }),
  'already-undone': () => ({ what: 'That entry has been taken back already.', next: 'Open the history afresh.' }),
  'not-taken-back': () => ({ what: 'That entry stands: it was not taken back.', next: 'Open the history afresh.' }),
  'entered-since': () => ({
    what: 'Something was entered since this was taken back: it cannot be put in again.',
    next: 'Enter it again.',
  }),
  'not-the-last-entry': (f) => ({
    what: `Something was entered after it${typeof f.lastWhat === 'string' ? `: ${whatText(f.lastWhat).toLowerCase()}` : ''}.`,
    next: 'Take that back first, or put the sizes right one by one.',
  }),
  'ground-of-the-record': () => ({
    what: 'What the record was laid down with is not taken back.',
    next: 'Start another record instead.',
  }),
  'not-a-sheet': () => ({ what: 'That entry is no sheet of a batch.', next: 'Take it back under History.' }),
  'draft-in-the-way': () => ({
    what: 'Another sheet of that machine is typed and not saved.',
    next: 'Save it or throw it away first.',
  }),
  'measured-meanwhile': () => ({
    what: 'A strip-down of this day was saved on this machine since the sheet was laid out.',
    safe: 'This one is not saved.',
    next: 'Look at the machine’s history first: is it the same one?',
  }),
  'typed-meanwhile': () => ({
    what: 'Another window typed on this strip-down meanwhile.',
    safe: 'What was typed there is kept, what stands here is not.',
    next: 'Say which of the two goes on.',
  }),
  'unknown-strip-down': () => ({ what: 'That sheet is not on record.', next: 'Open the history afresh.' }),
  'place-twice': () => ({
    what: 'One place would change with two others.',
    next: 'Change them round one after another.',
  }),
  'nothing-to-swap': () => ({ what: 'Nothing stands in either place.', next: 'Choose others.' }),
};
