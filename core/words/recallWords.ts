import type { Day } from '../units/day.ts';
import { counted } from './english.ts';
import { dayText, hoursLeftFigure, monthYearText, NO_BREAK_SPACE } from './quantityText.ts';

/** Why a machine's owner is to be contacted, as the window and the desktop's own notice say it. */
type Reason =
  | { code: 'safety'; count: number; doNotUse: boolean; since: Day }
  | { code: 'call-back'; on: Day }
  | { code: 'hours'; hoursLeft: number; on: Day | null; passed: boolean }
  | { code: 'no-hours'; since: Day | null };

export function reasonText(reason: Reason): string {
  switch (reason.code) {
    case 'safety':
      return `${reason.count} open safety ${counted(reason.count, 'finding', 'findings')}, since ${dayText(reason.since)}`;
    case 'call-back':
      return `to be rung back, promised for ${dayText(reason.on)}`;
    case 'hours': {
      const hours = `${hoursLeftFigure(Math.abs(reason.hoursLeft))}${NO_BREAK_SPACE}h`;
      if (reason.passed) return `deciding hours passed ${hours} ago`;
      return `deciding hours in ${hours}${reason.on === null ? '' : `, about ${monthYearText(reason.on)}`}`;
    }
    case 'no-hours':
      return reason.since === null
        ? 'its hours were never read'
        : `hours not read for 12 months, last on ${dayText(reason.since)}`;
  }
}

type Became = { machine: string; farm: string; reason: Reason };

/** More are only counted. */
const MOST_NAMED = 3;

export const newsHead = (became: readonly Became[]): string =>
  `${became.length} ${counted(became.length, 'machine', 'machines')} became due`;

/** "Vessel 118 (Hollin Top): deciding hours passed 40 h ago", the gravest first. */
export function newsLines(became: readonly Became[]): string[] {
  const named = became
    .slice(0, MOST_NAMED)
    .map(({ machine, farm, reason }) => `${machine} (${farm}): ${reasonText(reason)}`);
  const more = became.length - named.length;
  return more > 0 ? [...named, `and ${more} more`] : named;
}
