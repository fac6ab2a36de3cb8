import { countWord } from '#core/words/quantityText.ts';
import { counted } from './english.ts';
import type { FaultSaid } from './faultText.ts';

/** Words about photos of findings. */
export const photoWords = {
  take: 'Add photos',
  takeOf: (finding: string): string => `Add photos: ${finding}`,
  takeFact: (finding: string): string =>
    `${finding}: photos are made small (1600 pixels, 300 kB at most) and kept in the record; place and time a camera noted in them are left out.`,
  orDrop: 'or drop them here, or paste one',
  making: (n: number): string => `making ${n} ${counted(n, 'photo', 'photos')} small`,
  unread: (names: readonly string[]): FaultSaid => ({
    what: `This window cannot read ${names.join(', ')} as a picture.`,
    safe: 'What could be read is kept.',
    next: 'Save it as JPEG or PNG in the program that shows it, and add it again. On a phone: camera settings, format “most compatible”.',
  }),
  show: (place: number, count: number, of: string, struck: boolean): string =>
    `${struck ? 'Struck photo' : 'Photo'} ${place} of ${count}, ${of}: show large`,
  of: (place: number, count: number, of: string): string => `Photo ${place} of ${count}: ${of}`,
  showsWhat: (of: string): string => `Photo: ${of}`,
  gone: 'not to be had',
  before: 'Before',
  next: 'Next',
  close: 'Close',
  strike: 'Strike',
  struckFor: (reason: string): string => `Struck: ${reason}.`,
  strikeFact: 'The photo stays in the record and in sight, struck.',
  why: 'Why it does not belong here',
  strikePhoto: 'Strike photo',
  takeOut: 'Take out',
  count: (n: number): string => `${countWord(n)} ${counted(n, 'photo', 'photos')}`,
} as const;
