import type { Finding, MachineLine } from '#core/contract/machine.ts';
import { day, yearOf } from '#core/units/day.ts';
import {
  basisFigure,
  dayOfYearText,
  dayText,
  hoursText,
  monthYearText,
  type Writing,
  wholeFigure,
} from '#core/words/quantityText.ts';
import { counted, shared } from './english.ts';
import { findingText, seenText } from './findingText.ts';
import { forecastSentence } from './markWords.ts';
import { severityWords } from './stripDownWords.ts';

type Group = MachineLine['group'];

/** Words of the Machines screen. */
export const machinesWords = {
  title: 'Machines, soonest first',
  count: (all: number): string => `${wholeFigure(all)} ${counted(all, 'machine', 'machines')}.`,
  thisWinter: (count: number): string => `${wholeFigure(count)} for this winter.`,
  shown: (shown: number, all: number): string => `${wholeFigure(shown)} of ${wholeFigure(all)} machines shown.`,
  learning: 'From what the trade says; learning from this shop’s own sizes.',
  learningLarge:
    'Learning from this shop’s own sizes; then every machine is forecast. Machines can be opened meanwhile.',
  forecasting: (older: number) =>
    `Forecasting again beside your work: ${wholeFigure(older)} ${counted(older, 'machine has', 'machines have')} an older bar, or none, until then.`,
  cancelForecasting: 'Cancel',
  heldOff: (older: number) =>
    `Forecasting was cancelled: ${wholeFigure(older)} ${counted(older, 'machine has', 'machines have')} an older bar, or none. A machine opened is forecast all the same.`,
  cameToGrief: (older: number) =>
    `Forecasting stopped before its end: ${wholeFigure(older)} ${counted(older, 'machine has', 'machines have')} an older bar, or none. A machine opened is forecast all the same.`,
  forecastAgain: 'Forecast them',
  reading: 'reading …',
  renewing: 'Bars of before stand until the new ones are worked out.',
  working: 'Working out every machine’s forecast',
  takeIn: 'Take in a machine',
  hours: 'Hours',

  axis: 'Hours left before the first limit,',
  axisSecond: 'one scale for all machines',
  machine: 'Machine',
  machineHours: 'machine hours',
  first: 'Reaches its limit first',
  likelyBy: 'likely by',
  list: 'Machines, soonest first',

  groups: {
    'do-not-use': () => 'Do not use',
    'may-be-passed': () => 'Limit may be passed',
    'this-winter': (after: string | null) =>
      after === null
        ? 'Reaches its limit before the winter after this: book for this winter'
        : `Reaches its limit before winter ${after}: book for this winter`,
    later: () => 'Later',
    'no-forecast': () => 'No forecast yet',
  } satisfies Record<Group, (winterAfter: string | null) => string>,

  noMachines: 'No machine on record yet',
  noMachinesNext:
    'Take in the first one: customer, machine, meter and assembly on one form. Its positions and sizes are laid out, and from then on the parts stand here by the hours they have left.',
  nothingFound: 'Nothing of that name',
  nothingFoundNext: 'Names, farms, places, makes and serials were looked through. Escape shows all machines again.',
  showAll: 'Show all',

  shaded: 'Shaded: winters, by its own use',
  blueLine: (winter: string | null): string =>
    winter === null ? 'Blue line: start of the winter after this' : `Blue line: start of winter ${winter}`,
  triangle: 'Triangle: the figure that decides',
  triangleAt: 'low for towing, else middle',
  bars: 'Bars run low to high (1 in 10, 9 in 10)',
  beyond: 'beyond',
  noHours: 'no hours yet',
  nothingLaidOut: 'no assembly yet',
  readFirst: 'read the meter first',
  noLimit: 'no limit set',
} as const;

/** "6 840 h", "est. 6 912 h". */
export const hoursNowText = (hours: MachineLine['hours']): string =>
  hours.machineHours === null
    ? machinesWords.noHours
    : `${hours.estimated ? `${shared.estimated} ` : ''}${hoursText(hours.machineHours)}`;

/** Whose meter it goes by, or when its own was last read: to the day within the year, else to the month. */
export function readText(
  { readOn, dialMachine }: Pick<MachineLine['hours'], 'readOn' | 'dialMachine'>,
  asOf: string,
): string {
  if (dialMachine) return `by ${dialMachine.name}`;
  return readOn === null ? '' : whenRead(readOn, asOf);
}

function whenRead(readOn: string, asOf: string): string {
  const [on, now] = [day(readOn), day(asOf)];
  return `read ${yearOf(on) === yearOf(now) ? dayOfYearText(on) : monthYearText(on)}`;
}

/** "Slide strip, bottom rear" or, where the point's own name says more, "Hook, throat: section". */
export const pointName = ({ position, point }: { position: string; point: string }): string =>
  point === '' ? position : `${position}, ${point}`;

/** Why nothing can be said of a machine yet. */
export const missingText = ({ hours, assemblies }: MachineLine): string =>
  assemblies.length === 0
    ? machinesWords.nothingLaidOut
    : hours.machineHours === null
      ? machinesWords.readFirst
      : machinesWords.noLimit;

/** Second line of a machine: whose it is, and what it carries. */
export const ownerText = ({ customer, place, assemblies }: MachineLine): string =>
  [customer || place, assemblies.join(', ')].filter(Boolean).join(' · ');

/** "3 own + 14", and what else was seen on it. */
export function basisLine(line: MachineLine): string {
  const finding = line.openFindings.find((open) => open.severity === 'repair') ?? line.openFindings[0];
  const seen = finding ? `${seenText(finding)}, ${severityWords[finding.severity]}` : '';
  const basis = line.first ? basisFigure(line.first.ownReadings, line.first.likeParts).replace(' +', ' own +') : '';
  return [basis, seen].filter(Boolean).join(' · ');
}

/** "Pivot boss, left: crack, at weld toe, 34 mm". */
export const stopText = (finding: Finding): string =>
  [finding.position, findingText(finding)].filter(Boolean).join(': ');

export const foundText = (finding: Finding, asOf: string): string => {
  const on = day(finding.takenOn);
  return `found ${yearOf(on) === yearOf(day(asOf)) ? dayOfYearText(on) : dayText(on)}`;
};

/** The sentence that stands for a machine's picture. */
export function lineSentence(line: MachineLine, stop: Finding | null, writing: Writing): string {
  if (stop) return `${shared.doNotUse}: ${stopText(stop)}. No forecast while this is open`;
  if (!line.first) return shared.noForecast;
  return forecastSentence({ ...line.first, item: null, point: line.first.point }, writing);
}
