import {
  basisText,
  hoursLeftSentence,
  hoursText,
  lengthText,
  type Range,
  type Writing,
} from '#core/words/quantityText.ts';
import { shared } from './english.ts';

/** Words that stand inside the marks, and the sentences that stand for them where they cannot be seen. */

export type ForecastSaid = {
  item?: number | null;
  position: string;
  point?: string;
  hoursLeft: Range;
  ownReadings: number;
  likeParts: number;
  /** the finding that stands in the forecast's place */
  doNotUse?: string | null;
  pastLimitMm?: number | null;
};

/** "Slide strip, bottom rear: 150 to 880 hours left, likely 470; 3 own readings, 14 like parts". */
export function forecastSentence(said: ForecastSaid, writing: Writing = '.'): string {
  const name = [said.item == null ? '' : `${said.item} `, said.position, said.point ? `, ${said.point}` : ''].join('');
  if (said.doNotUse != null) return `${name}: ${doNotUseText(said.doNotUse)}. No forecast while this is open`;
  const basis = basisText(said.ownReadings, said.likeParts);
  if (said.pastLimitMm != null) return `${name}: ${pastLimitText(said.pastLimitMm, writing)} its limit; ${basis}`;
  if (said.hoursLeft.low === null && said.hoursLeft.middle === null) return `${name}: ${shared.noForecast}; ${basis}`;
  return `${name}: ${hoursLeftSentence(said.hoursLeft, 'hours left')}; ${basis}`;
}

export const doNotUseText = (finding: string): string =>
  finding === '' ? shared.doNotUse : `${shared.doNotUse}: ${finding}`;

/** "0.36 mm past". */
export const pastLimitText = (pastMm: number, writing: Writing = '.'): string =>
  `${lengthText(pastMm, 2, writing)} past`;

export const flagText = (hours: number, estimated: boolean): string =>
  estimated ? `${shared.estimated} ${hoursText(hours)}` : hoursText(hours);

export const limitWords = { 'new-size': 'new size', 'renew-at': 'renew at', 'reject-at': 'reject at' } as const;

export const ringWords = {
  now: 'this winter',
  'with-it': 'worth doing with it',
  leave: 'leave',
  stop: 'do not use',
  chosen: 'the one shown',
  none: 'nothing known',
} as const;

export const basisWords = {
  own: 'own readings',
  part: 'part borrowed',
  borrowed: 'all from like parts',
} as const;
