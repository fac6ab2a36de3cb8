import type { Slip } from '../contract/slip.ts';
import { type Day, day, yearOf } from '../units/day.ts';
import { shared } from '../words/english.ts';
import { forecastFigure, longDay, longDayOfYear, meterFigure, meterOf } from './slipFigures.ts';

/** The short words of the slip: headings, column heads, the meter card and the title block. */

/** Days to read the meter: before and after the season, the next two to come (common practice, no source). */
export function meterDays(madeOn: Day): [Day, Day] {
  const days = [0, 1, 2].flatMap((years) => ['05-01', '10-01'].map((md) => day(`${yearOf(madeOn) + years}-${md}`)));
  const [first, second] = days.filter((on) => on > madeOn);
  if (!first || !second) throw new Error('Broken invariant: two meter days lie in the next two years');
  return [first, second];
}

/** Figures a meter card has boxes for: those of the meter, five when nobody noted them. */
export const meterBoxes = (slip: Slip): number => Math.min(7, slip.meterDigits ?? 5);

/** The year is left out only where it is this one. */
const visitDay = (slip: Slip, on: string): string =>
  on.slice(0, 4) === slip.madeOn.slice(0, 4) ? longDayOfYear(day(on)) : longDay(day(on));

const yourMeter = (slip: Slip): string => (slip.dialMachine === null ? 'your meter' : meterOf(slip));

export const slipLabels = {
  slip: (slip: Slip) => (slip.number === null ? 'Forecast slip, preview' : `Forecast slip ${slip.number}`),
  slips: (count: number) => `Forecast slips, ${count}`,
  found: (slip: Slip) => (slip.foundOn === null ? 'What we found' : `What we found, ${visitDay(slip, slip.foundOn)}`),
  done: (slip: Slip) => (slip.doneOn === null ? 'What we did' : `What we did, ${visitDay(slip, slip.doneOn)}`),
  nothingFound: 'Nothing has been measured or found yet.',
  nothingDone: 'Nothing renewed on this visit.',
  axis: 'When each part should reach its limit',
  hoursOnMeter: (slip: Slip) => (slip.hoursAre === 'machine' ? 'Hours since new' : `Hours on ${yourMeter(slip)}`),
  winters: 'Winters',
  from: 'from',
  likely: 'likely',
  to: 'to',
  beyond: 'beyond',
  now: (slip: Slip) =>
    slip.estimated ? `est. ${forecastFigure(slip, slip.dialHours ?? 0)}` : meterFigure(slip, slip.dialHours ?? 0),
  comeIn: (slip: Slip, dialHours: number) => `${forecastFigure(slip, dialHours)}, come in`,
  renewed: 'renewed',
  thenDo: 'What we would do then',
  watch: (slip: Slip) => (slip.headline.kind === 'do-not-use' ? 'Grease and watch.' : 'Grease and watch till then.'),
  howToRead: 'How to read the bars.',
  meterCard: (slip: Slip) =>
    slip.hoursAre === 'machine' ? 'Reckon the hours and let us know' : `Read ${yourMeter(slip)} and let us know`,
  meterCardBy: (slip: Slip) => {
    const by = [slip.shop.phone, slip.shop.email].filter((way) => way !== '').join(' or ');
    const who = [slip.machine.name, slip.customer.name].filter((part) => part !== '').join(', ');
    return `${who}. ${by === '' ? 'Text or ring the shop.' : by}`;
  },
  more: (count: number, kind: 'rows' | 'lines') =>
    kind === 'rows' ? `and ${count} more, all later than these` : `and ${count} more, kept in our record`,
  moreSentence: (count: number) => `And ${count} more, kept in our record`,
  machine: 'Machine',
  asOf: shared.asOf,
  restsOn: 'Rests on',
  basis: (slip: Slip) => {
    const { ownReadings, likeParts } = slip.restsOn;
    return `${ownReadings} own reading${ownReadings === 1 ? '' : 's'}, ${likeParts} like part${likeParts === 1 ? '' : 's'}`;
  },
  measuredBy: 'Measured by',
  nobody: 'not said',
  sheet: 'Sheet',
  oneOfOne: '1 of 1',
} as const;
