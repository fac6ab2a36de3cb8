import type { PointForecast } from '#core/contract/forecast.ts';
import type { Finding, MachineSheet, PointSheet } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import {
  countWord,
  dayText,
  gaugeErrorText,
  hoursFigure,
  hoursText,
  sizeFigure,
  type Writing,
} from '#core/words/quantityText.ts';
import { counted, shared } from './english.ts';
import { findingText } from './findingText.ts';
import { measuresWords } from './stripDownWords.ts';

/** Words of the Machine screen; those of its "why this number" stand in whyWords.ts. */
export const machineWords = {
  loading: 'Fetching the machine',
  hours: 'Hours',
  stripDown: 'Strip-down',
  repair: 'Repair',
  slip: 'Slip',
  why: 'Why',
  toThisMachine: 'To the machine',
  machine: 'Machine',
  noAssembly: 'Nothing that wears on this machine yet',
  noAssemblyNext:
    'Lay out an assembly on it: choose its kind, and its positions, measuring points, new sizes and drawing are there, all to be changed.',
  layOut: 'Lay out an assembly',
  serial: (serial: string): string => `serial ${serial}`,

  panels: 'What stands behind the picture',
  sizes: 'Sizes',
  limits: 'Limits',
  whyTab: 'Why this number',
  hoursHistory: 'Hours',
  findings: 'Findings',
  assemblies: 'Assemblies',
  visits: 'Visits and slips',
  openFindings: (count: number): string => `${count} open`,
  questionedSizes: (count: number): string => `${count} questioned`,
  questionedElsewhere: (count: number): string =>
    `${count} ${counted(count, 'size is', 'sizes are')} questioned and left out of the forecast until answered.`,
  toQuestion: 'Answer',
  nothingMeasured:
    'Nothing measured yet: open bars show what like parts do. Measure one part and this machine’s own forecast begins.',
  noHours: 'The meter has not been read yet; a trailer’s hours may be estimated.',
  readMeter: 'Enter hours',

  machineHoursCell: 'Machine hours',
  hoursRead: (hours: number, readOn: string): string => `${hoursFigure(hours)}, read ${dayText(day(readOn))}`,
  hoursEstimated: (hours: number): string => `${shared.estimated} ${hoursFigure(hours)}`,
  lastRead: (hours: number, readOn: string): string => `${hoursFigure(hours)} read ${dayText(day(readOn))}`,
  goesBy: (name: string): string => `by the meter of ${name}`,
  notRead: 'not read yet',
  use: 'Use',
  useAYear: (hoursPerYear: number, borrowed: boolean): string =>
    `${borrowed ? 'about ' : ''}${hoursText(Math.round(hoursPerYear / 10) * 10)} a year`,
  useBorrowed: 'Use, as the shop’s others',
  restsOn: 'Rests on',
  readings: (own: number, like: number): string =>
    `${hoursFigure(own)} own ${counted(own, 'reading', 'readings')}, ${hoursFigure(like)} like`,
  bars: 'Bars run low to high (1 in 10, 9 in 10), long tick the middle',

  stopWords: (finding: Finding): string =>
    `${[finding.item, finding.position].filter((part) => part !== null).join(' ') || 'Whole assembly'}: ${findingText(finding)}. Found ${dayText(day(finding.takenOn))}.${finding.declined ? ` Repair refused by ${finding.declined.saidBy}, ${dayText(day(finding.declined.saidOn))}.` : ''}`,
} as const;

type Basis = Pick<PointForecast, 'ownReadings' | 'likeParts' | 'likeMachines' | 'cautionFacts' | 'settingsChanged'> & {
  partClass: string;
};

/** "Two readings of its own; the rest from 31 like parts on 14 machines (nylon slide strip)." */
export function basisSentence(basis: Basis): string {
  const { ownReadings, likeParts, likeMachines, partClass, cautionFacts, settingsChanged } = basis;
  const guessed = cautionFacts.some(({ code, facts }) => code === 'from-trade-prior' && facts.from === 'wide');
  const own =
    ownReadings === 0
      ? 'No reading of its own'
      : `${sentenceStart(countWord(ownReadings))} ${counted(ownReadings, 'reading', 'readings')} of its own`;
  const machines = `${hoursFigure(likeMachines)} ${counted(likeMachines, 'machine', 'machines')}`;
  const like =
    likeParts === 0
      ? guessed
        ? 'a wide guess, for the trade has no figure'
        : 'from what the trade says of such parts'
      : `from ${hoursFigure(likeParts)} like ${counted(likeParts, 'part', 'parts')} on ${machines}`;
  const set =
    settingsChanged > 0
      ? ` The shop has set ${countWord(settingsChanged)} ${counted(settingsChanged, 'figure', 'figures')} of the forecast otherwise.`
      : '';
  return `${own}; ${ownReadings === 0 ? 'all' : 'the rest'} ${like} (${partClass}).${set}`;
}

const sentenceStart = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "thickness, worst of front, middle, rear"; nothing where the point's own name says it. */
export function measuredText({
  measures,
  stations,
  point,
}: Pick<PointSheet, 'measures' | 'stations' | 'point'>): string {
  const named = stations.filter((station) => station !== '');
  const measured = point.toLowerCase().includes(measuresWords[measures]) ? '' : measuresWords[measures];
  const worst = named.length > 1 ? `worst of ${named.join(', ')}` : '';
  return [measured, worst].filter(Boolean).join(', ');
}

/** "calliper, error ±0.10; J. Tarn, 12 Oct 2026": what the last look was measured with. */
export function gaugeText(point: Pick<PointSheet, 'visits' | 'gaugeErrorMm'>, writing: Writing): string {
  const last = point.visits.at(-1);
  const error = `error ${gaugeErrorText(last?.errorSdMm ?? point.gaugeErrorMm, writing)}`;
  const by = last ? [last.by, dayText(day(last.takenOn))].filter(Boolean).join(', ') : '';
  return [[last?.gauge, error].filter(Boolean).join(', '), by].filter(Boolean).join('; ');
}

export const limitSourceText = (limits: PointSheet['limits']): string =>
  limits.source ? `limits: ${limits.source}` : 'limits: source not named';

type Owned = Pick<MachineSheet, 'customer' | 'assemblies' | 'serial' | 'make' | 'model' | 'name'>;

/** Beside the machine's name: "High Fold, Ellerdale. Front loader, serial H-2207". */
export function ownerLine({ customer, assemblies, serial, make, model, name }: Owned): string {
  const owner = customer ? [customer.name, customer.place].filter(Boolean).join(', ') : '';
  const makeModel = [make, model].filter(Boolean).join(' ');
  const carries = assemblies.map((its) =>
    its.serial && !its.name.includes(its.serial) ? `${its.name} ${its.serial}` : its.name,
  );
  const machine = [
    name.includes(makeModel) ? '' : makeModel,
    carries.join(' and '),
    serial && machineWords.serial(serial),
  ];
  const carried = machine.filter(Boolean).join(', ');
  return owner === '' ? carried : [owner, sentenceStart(carried)].filter(Boolean).join('. ');
}

/** Words of the tables and forms under the picture. */
export const panelWords = {
  putInAsked: 'Sizes of parts put in that are questioned, and left out until answered',
  day: 'Day',
  machineHours: 'Machine h',
  partHours: 'Part h',
  size: 'size',
  event: 'Seen',
  events: { 'as-found': 'as found', 'as-left': 'as left' },
  gauge: 'Gauge',
  by: 'By',
  sizesOf: (name: string, unit: string): string => `Sizes of ${name}, ${unit}`,
  noSizes: 'Never measured',
  noSizesNext: (basis: string): string => `The forecast rests wholly on like parts. ${basis}`,
  startStripDown: 'Start a strip-down',
  fitted: (known: boolean, from: string, to: string, at: string): string =>
    known ? `Wear counts from here: part fitted at ${at}` : `Part fitted some time from ${from} to ${to}`,
  fittedAsBuilt: 'Wear counts from here: fitted as the machine was built',
  newSize: (size: string, unit: string): string => `, ${size} ${unit}`,
  struck: (size: string, on: string, to: string | null): string =>
    to === null ? `${size} struck out ${on}` : `${size} typed, put right to ${to} on ${on}`,
  worst: 'Underlined: the worst station, which governs. A size is pressed to put it right.',
  putRightLabel: (size: string, station: string, on: string): string =>
    `Put right ${size}${station ? `, ${station}` : ''}, ${on}`,
  questioned: 'questioned',
  questionFact: (size: string, station: string, before: string | null): string =>
    `${size}${station ? `, ${station}` : ''}, was questioned when it was entered${before ? `; the visit before it read ${before}` : ''}.`,
  questionThen: 'Left out of the forecast until you answer.',
  rightAsRead: 'Right as read',
  wasRenewed: 'Part was renewed before it',
  putRight: 'Put right',
  strikeOut: 'Strike it out',
  rightSize: 'Right size',
  rightDial: 'Right dial',
  why: 'Why',
  whyHint: 'a word for whoever looks later',
  whoBy: 'By',
  putRightFact: (size: string, station: string, on: string): string =>
    `${size} mm${station ? `, ${station}` : ''}, ${on}. The old figure stays in sight, struck.`,

  limitsOf: (name: string): string => `What ${name} is judged by`,
  newSizeName: 'New size',
  tolerance: 'Tolerance, whole width',
  renewAt: 'Renew at',
  rejectAt: 'Reject at',
  source: 'Source',
  sourceHint: 'whose figures these are',
  from: 'From',
  since: 'In force since',
  asBuilt: 'as laid out',
  noLimit: 'none set: nothing to count hours to',
  none: 'none set',
  noSource: 'not named',
  wears: 'Wears',
  wearsWay: { down: 'down: size falls', up: 'up: size rises' },
  decides: 'Decides',
  decidesBy: { low: 'the low figure: a towing or lifting part', middle: 'the middle figure' },
  stations: 'Stations',
  oneStation: 'one',
  change: 'Change limits',
  saveLimits: 'Save limits',
  limitsNote: 'Sizes taken before that day go on being judged by the old ones.',

  dial: 'Dial',
  kinds: { reading: 'read', estimate: 'estimated', 'new-meter': 'new meter', rollover: 'rolled over' },
  newDial: (dial: string): string => `new one shows ${dial}`,
  giveOrTake: 'give or take',
  saidBy: 'Said by',
  dialPutRight: 'put right later',
  dialParked: 'questioned, not counted',
  clock: (figure: string): string => `one hour of it is ${figure} machine h`,
  entered: 'Entered',
  dialsHead: 'What the meters showed',
  noDials: 'Meter never read',
  enterHours: 'Enter hours',
  putDialRight: (dial: string, on: string): string => `Put right ${dial} h, ${on}`,
  putDialFact: (dial: string, on: string): string => `${dial} h on ${on}. The old figure stays in sight, struck.`,

  finding: 'Finding',
  severity: 'How bad',
  found: 'Found',
  state: 'State',
  open: 'open',
  closed: (on: string, outcome: string): string => `closed ${on}: ${outcome}`,
  close: 'Close',
  closeLabel: (finding: string): string => `Close: ${finding}`,
  closeFact: (finding: string): string => `${finding}: what became of it?`,
  outcome: 'What became of it',
  outcomeHint: 'welded, renewed, looked at again and sound ...',
  closedOn: 'Closed on',
  closeFinding: 'Close finding',
  refuse: 'Customer refuses',
  refuseLabel: (finding: string): string => `Customer refuses the repair: ${finding}`,
  refuseFact: (finding: string): string =>
    `${finding}: told of it, the customer does not want it made good. It stays open and as grave as it is; the words are printed on the slip.`,
  refusedBy: 'Who said so',
  refusedOn: 'Said on',
  refusedWords: 'In their own words',
  refusedWordsHint: 'as said, at most 400 letters',
  noteRefusal: 'Note the refusal',
  refused: (by: string, on: string): string => `Repair refused by ${by}, ${on}:`,
  strikeRefusal: 'Strike',
  strikeRefusalLabel: (by: string): string => `Strike what was noted of ${by}’s refusal`,
  strikeRefusalFact: 'What was noted stays in sight, struck.',
  strikeIt: 'Strike it',
  struckFor: (reason: string): string => `struck: ${reason}`,
  noFindings: 'Nothing seen: no crack, bend, break, seizure or loss on record',
  wholeAssembly: 'whole assembly',

  visitsHead: 'Strip-downs',
  slipsHead: 'Slips made',
  noVisits: 'No strip-down on record yet',
  noSlips: 'No slip made yet',
  fitter: 'Fitter',
  number: 'Number',
  makeSlip: 'Make a slip',
} as const;

export const sizeText = (sizeMm: number, writing: Writing): string => sizeFigure(sizeMm, 0.01, writing);
