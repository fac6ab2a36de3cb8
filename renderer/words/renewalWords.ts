import type { z } from 'zod';
import type { zMeasures, zRenewalKind } from '#core/contract/shapes.ts';

export type RenewalKind = z.infer<typeof zRenewalKind>;
type Measures = z.infer<typeof zMeasures>;

/** What was done to a part that was renewed, as its choice says it. */
export const renewalKindWords = {
  'new-part': 'new part',
  bush: 'new bush',
  'weld-and-bore': 'welded up and re-bored',
  oversize: 'oversize',
  turned: 'turned over',
} as const satisfies Record<RenewalKind, string>;

/** The kinds that make sense where a size is of one sort. */
const KINDS: Record<Measures, readonly RenewalKind[]> = {
  thickness: ['new-part', 'turned'],
  diameter: ['new-part', 'oversize', 'weld-and-bore'],
  bore: ['new-part', 'bush', 'weld-and-bore', 'oversize'],
  slack: ['new-part'],
  section: ['new-part', 'weld-and-bore'],
  depth: ['new-part', 'weld-and-bore'],
};

/** A pin is made oversize, a bore is bored to it. */
export function renewalKindText(kind: RenewalKind, measures: Measures): string {
  if (kind === 'oversize') return measures === 'bore' ? 'bored oversize' : 'oversize pin';
  if (kind === 'weld-and-bore' && measures !== 'bore') return 'welded up to size';
  return renewalKindWords[kind];
}

/** The choices at a row; "not renewed" only while nothing is. A position that must stay standard has no oversize. */
export function kindsFor(
  { measures, mustStayStandard }: { measures: Measures; mustStayStandard: boolean },
  done: boolean,
): { value: RenewalKind | 'nothing'; text: string }[] {
  const kinds = KINDS[measures].filter((kind) => !(kind === 'oversize' && mustStayStandard));
  const choices = kinds.map((value) => ({ value, text: renewalKindText(value, measures) }));
  return done ? choices : [{ value: 'nothing', text: renewalWords.notRenewed }, ...choices];
}

const stampedText = (stamped: boolean | null): string => (stamped === null ? '' : stamped ? 'stamped' : 'not stamped');

export const renewalWords = {
  partAt: (position: string) => `What was done at ${position}`,
  done: 'What was done',
  notRenewed: 'not renewed',
  stations: 'Only at (none ticked: the whole part)',
  size: {
    'new-part': 'Size put in',
    bush: 'Bore of the bush',
    'weld-and-bore': 'Size brought back to',
    oversize: 'Made to',
    turned: 'Thickness it went back in with',
  },
  sizeHint: (kind: RenewalKind) =>
    kind === 'oversize'
      ? 'its size is the standard here from this day'
      : kind === 'turned'
        ? 'empty: as measured on this sheet'
        : 'empty: the new size',
  stamped: 'Size stamped on it',
  stampedChoices: [
    { value: 'yes', text: 'yes' },
    { value: 'no', text: 'no' },
    { value: 'not-said', text: 'not said' },
  ],
  shim: 'Shim put in',
  shimHint: (measures: Measures) =>
    measures === 'slack'
      ? 'takes up slack; less than 0: taken out'
      : 'takes up slack, not wear; less than 0: taken out',
  toBoxes: 'Back to the boxes',
  mustStayStandard: 'Must stay standard: what fits here has to fit elsewhere. No oversize.',
  sizeKeptOut: 'Kept, and left out of the forecast until answered.',
  rightAsRead: 'Right as read',
  /** "Oversize 41.0 mm, drawn 40.0 mm, since 3 May 2024, stamped" */
  oversize: (standard: string, drawn: string, since: string, stamped: boolean | null) =>
    [`Oversize ${standard}, drawn ${drawn}`, `since ${since}`, stampedText(stamped)].filter(Boolean).join(', '),
  oversizeShort: (standard: string, stamped: boolean | null) =>
    [`oversize ${standard}`, stampedText(stamped)].filter(Boolean).join(', '),
  stationRenewed: (station: string, kind: string, day: string) => `${station}: ${kind} ${day}`,
  shimmed: (figure: string, day: string) => `shim ${figure} ${day}`,
} as const;
