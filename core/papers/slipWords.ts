import type { Slip } from '../contract/slip.ts';
import type { Severity } from '../shop/finding.ts';
import { type Day, day, yearOf } from '../units/day.ts';
import { months, shared } from '../words/english.ts';
import { decimalFigure, hoursFigure, limitFigure } from '../words/quantityText.ts';

/** The words of the farmer's page. Facts come in as a {@link Slip}; every sentence on the paper is made here. */

const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** "6 November 2026" */
export const longDay = (of: Day): string => `${Number(of.slice(8))} ${monthName(of)} ${yearOf(of)}`;
/** "12 October", where the year is plain */
export const longDayOfYear = (of: Day): string => `${Number(of.slice(8))} ${monthName(of)}`;
const shortDay = (of: Day): string => `${Number(of.slice(8))} ${months[Number(of.slice(5, 7)) - 1]} ${yearOf(of)}`;
const monthName = (of: Day): string => monthNames[Number(of.slice(5, 7)) - 1] ?? '';

/** Forecast hours are written to ten: nobody knows them closer. */
const toTen = (hours: number): number => Math.round(hours / 10) * 10;

/** What the meter will show at those hours: past its full scale it starts again from nought. */
export function meterFigure(slip: Slip, dialHours: number): string {
  const scale = fullScale(slip);
  return hoursFigure(scale === null ? dialHours : ((dialHours % scale) + scale) % scale);
}

export const forecastFigure = (slip: Slip, dialHours: number): string => meterFigure(slip, toTen(dialHours));

const fullScale = (slip: Slip): number | null =>
  slip.hoursAre === 'dial' && slip.meterDigits !== null ? 10 ** slip.meterDigits : null;

const turnsOver = (slip: Slip, dialHours: number): boolean => {
  const scale = fullScale(slip);
  return (
    scale !== null && slip.dialHours !== null && Math.floor(dialHours / scale) > Math.floor(slip.dialHours / scale)
  );
};

/** "8 500 hours on the meter", "350 hours on the meter after it has started again from 0", "900 hours". */
function hoursPhrase(slip: Slip, dialHours: number): string {
  const figure = `${forecastFigure(slip, dialHours)} hours`;
  if (slip.hoursAre === 'machine') return figure;
  return turnsOver(slip, dialHours)
    ? `${figure} on the meter, once it has started again from 0`
    : `${figure} on the meter`;
}

/** An assembly in the middle of a sentence: "Front loader" is "front loader", "H-2207" stays. */
export const midSentence = (name: string): string =>
  /^[A-ZÀ-Þ][a-zß-ÿ]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

const what = (slip: Slip): string => midSentence(slip.machine.assembly || slip.machine.name);

/** The one sentence that matters. */
export function headlineText(slip: Slip): string {
  const { headline } = slip;
  switch (headline.kind) {
    case 'do-not-use':
      return `${shared.doNotUse} the ${what(slip)}`;
    case 'passed':
      return `Bring the ${what(slip)} in now: it has probably worn past a limit.`;
    case 'no-forecast':
      return `Nothing can be said yet of when the ${what(slip)} should next come in.`;
    case 'come-in': {
      const hours = hoursPhrase(slip, headline.dialHours);
      if (headline.about === null) return `Check the ${what(slip)} next winter, and bring it in by ${hours}.`;
      if (headline.winter === null) return `Bring the ${what(slip)} in by ${hours}.`;
      return `Bring the ${what(slip)} in during winter ${headline.winter}, or at ${hours}, whichever comes first.`;
    }
  }
}

/** Which machine, whose, at how many hours. */
export function machineLine(slip: Slip): string {
  const { machine, customer } = slip;
  const farm = [customer.name, customer.place].filter((part) => part !== '').join(', ');
  const name = [machine.name, midSentence(machine.assembly)].filter((part) => part !== '').join(', ');
  return `${farm === '' ? '' : `${farm}. `}${name}${hoursNow(slip)}.`;
}

/** The machine as its plate says: for the title block. */
export const machineOnPlate = ({ machine }: Slip): string =>
  [machine.name, machine.makeModel === machine.name ? '' : machine.makeModel, machine.serial]
    .filter((part) => part !== '')
    .join(', ');

function hoursNow(slip: Slip): string {
  if (slip.dialHours === null) return '';
  const about = slip.estimated ? 'about ' : '';
  const read = slip.estimated && slip.readOn ? ` (last read ${shortDay(day(slip.readOn))})` : '';
  const aYear = slip.hoursPerYear === null ? '' : `, about ${hoursFigure(toTen(slip.hoursPerYear))} a year`;
  return `, at ${about}${meterFigure(slip, slip.dialHours)} hours${read}${aYear}`;
}

/** What the headline rests on, in plain words: whose limit, between which hours, about when. */
export function decidingText(slip: Slip): string {
  const { headline } = slip;
  switch (headline.kind) {
    case 'come-in':
      return [firstText(slip, headline), goByText(headline), aboutText(slip)]
        .filter((sentence) => sentence !== '')
        .join(' ');
    case 'passed':
      return `${headline.label}: ${passedText(slip, headline.range)}. Ring us before the next long day's work.`;
    case 'do-not-use':
      return `${headline.label}: ${findingWords[headline.finding]}, found ${longDay(day(headline.foundOn))}.${noteText(headline.note)} Ring us before it works again.`;
    case 'no-forecast':
      return 'No limit is set for its parts, or its hours are not known. Read your meter and let us know.';
  }
}

const noteText = (note: string): string => (note === '' ? '' : ` ${/[.!?]$/.test(note) ? note : `${note}.`}`);

type Range = { low: number | null; middle: number | null; high: number | null };

const firstText = (slip: Slip, { items, label, range }: Extract<Slip['headline'], { kind: 'come-in' }>): string =>
  `First to its limit is ${itemsText(items)}, ${midSentence(label)}: ${rangeText(slip, range)}.`;

function rangeText(slip: Slip, { low, middle, high }: Range): string {
  const f = (hours: number) => forecastFigure(slip, hours);
  if (low === null) return 'further off than can be reckoned';
  const from = high === null ? `from ${f(low)} hours on` : `between ${f(low)} and ${f(high)} hours`;
  return `${from}${middle === null ? '' : `, most likely about ${f(middle)}`}`;
}

function passedText(slip: Slip, { low, middle, high }: Range): string {
  const f = (hours: number) => forecastFigure(slip, hours);
  if (low === null || middle === null) return 'its limit has probably been passed';
  if (low === high) return `already past its limit when last measured, at ${f(middle)} hours`;
  const to = high === null ? '' : ` (between ${f(low)} and ${f(high)})`;
  return `its limit most likely came at about ${f(middle)} hours${to}`;
}

const goByText = (headline: { decides: 'low' | 'middle' }): string =>
  headline.decides === 'low' ? 'It tows or lifts, so we go by the early figure.' : '';

function aboutText(slip: Slip): string {
  const { headline, hoursPerYear } = slip;
  if (headline.kind !== 'come-in' || hoursPerYear === null) return '';
  const use = `At about ${hoursFigure(toTen(hoursPerYear))} hours a year`;
  if (headline.about === null) return `${use} that is more than two seasons away: check next winter.`;
  const about = day(headline.about);
  return `${use} that is about ${monthName(about)} ${yearOf(about)}.`;
}

export const findingWords: Record<Extract<Slip['headline'], { kind: 'do-not-use' }>['finding'], string> = {
  crack: 'cracked',
  bent: 'bent',
  broken: 'broken',
  seized: 'seized',
  missing: 'missing',
  other: 'faulty',
};

const severityWords: Record<Severity, string> = {
  'do-not-use': 'do not use',
  repair: 'needs repair',
  watch: 'watch it',
};

/** A line of a list: item numbers, what it is, and what stands at its right edge. */
export type SlipLine = { items: string; label: string; right: string; strong: boolean };

export const itemsText = (items: readonly number[]): string => items.join(' ');

export function foundLine(slip: Slip, found: Slip['found'][number]): SlipLine {
  const items = itemsText(found.items);
  if (found.finding !== null) {
    const note = found.note === '' ? '' : `, ${midSentence(found.note)}`;
    return {
      items,
      label: `${found.label}: ${findingWords[found.finding]}${note}`,
      right: found.severity ? severityWords[found.severity] : '',
      strong: found.doNotUse,
    };
  }
  return { items, label: found.label, right: sizeText(slip, found), strong: false };
}

function sizeText(slip: Slip, found: Slip['found'][number]): string {
  const mark = slip.shop.decimalMark;
  if (found.sizeMm === null) return '';
  const size = decimalFigure(found.sizeMm, found.decimals, mark);
  if (found.renewAtMm === null) return size;
  const limit = limitFigure(found.renewAtMm, mark);
  return found.pastMm !== null && found.pastMm > 0 ? `${size}, past ${limit}` : `${size}, limit ${limit}`;
}

export function doneLine(slip: Slip, done: Slip['done'][number]): SlipLine {
  const words = {
    renewed: 'renewed',
    'left-at': 'left at',
    closed: done.note === '' ? 'put right' : midSentence(done.note),
  };
  return {
    items: itemsText(done.items),
    label: `${done.label}: ${words[done.what]}`,
    right: done.sizeMm === null ? '' : decimalFigure(done.sizeMm, done.decimals, slip.shop.decimalMark),
    strong: false,
  };
}

/** "3 Slide strip, bottom front. With it, since it is open then anyway: 2 Slide strip, top rear; 5 Side pad, left." */
export function thenDoText(slip: Slip): string {
  const named = (role: 'due' | 'with-it') =>
    slip.thenDo
      .filter((row) => row.role === role)
      .map((row) => `${itemsText(row.items)} ${midSentence(row.label)}`)
      .join('; ');
  const due = named('due');
  const withIt = named('with-it');
  if (due === '' && withIt === '') return '';
  const alongside = withIt === '' ? '' : ` With it, since it is open then anyway: ${withIt}.`;
  return `Renew or make good ${due}.${alongside} Measure the rest.`;
}

/** Lines to watch till then: the shop's own, and open findings. */
export function watchLines(slip: Slip): string[] {
  const found = slip.watch.map(
    (row) =>
      `${itemsText(row.items)} ${row.label}: ${findingWords[row.finding]}, found ${shortDay(day(row.foundOn))}, ${severityWords[row.severity]}.${noteText(row.note)}`,
  );
  return [...found.map((line) => line.trim()), ...slip.greaseAndWatch];
}

export const howToRead =
  'One in ten such parts is at its limit by the left end of its bar, nine in ten by the right; the long tick is as likely as not. ' +
  'Solid: measured on yours three times or more. Hatched: partly judged from like parts. Open: wholly. ' +
  'The triangle is the figure we go by; for what tows or lifts it is the early one.';

/** What a caution's code means to a farmer; codes without a sentence are for the shop alone. */
const cautionSentences: Record<string, string> = {
  'hours-estimated': 'The hours now are an estimate: read your meter and let us know.',
  'dates-not-reliable': 'Too few meter readings to say when; go by the hours.',
  'long-extrapolation': 'Some figures reach far beyond what has been measured.',
  'from-trade-prior': 'Some figures rest on trade experience, not yet on parts we have measured.',
  'sizes-questioned': 'A size is being queried and is left out here.',
  'other-assembly-stopped': 'Another part of the machine must not be used.',
};

export const cautionCodesSaid = Object.keys(cautionSentences);

export const planningAidHead = 'This is a planning aid, not a certificate.';

export function cautionText(slip: Slip): string {
  const thing = what(slip);
  const own = slip.cautions.map((code) => cautionSentences[code]).filter((sentence) => sentence !== undefined);
  const hours =
    slip.hoursAre === 'dial' ? 'Hours are those of the present meter.' : 'Hours are since new; no meter has been read.';
  return [
    `Stop and ring us if the ${thing} knocks or will not lock, or if you see a crack or a bend.`,
    "The maker's instructions and the law where you work come first.",
    hours,
    ...own,
  ].join(' ');
}

/** Days to read the meter: before and after the season, the next two to come (common practice, no source). */
export function meterDays(madeOn: Day): [Day, Day] {
  const days = [0, 1, 2].flatMap((years) => ['05-01', '10-01'].map((md) => day(`${yearOf(madeOn) + years}-${md}`)));
  const [first, second] = days.filter((on) => on > madeOn);
  if (!first || !second) throw new Error('Broken invariant: two meter days lie in the next two years');
  return [first, second];
}

/** Figures a meter card has boxes for: those of the meter, five when nobody noted them. */
export const meterBoxes = (slip: Slip): number => Math.min(7, slip.meterDigits ?? 5);

export const slipLabels = {
  slip: (slip: Slip) => (slip.number === null ? 'Forecast slip, preview' : `Forecast slip ${slip.number}`),
  found: (slip: Slip) =>
    slip.foundOn === null ? 'What we found' : `What we found, ${longDayOfYear(day(slip.foundOn))}`,
  done: (slip: Slip) => (slip.doneOn === null ? 'What we did' : `What we did, ${longDayOfYear(day(slip.doneOn))}`),
  nothingFound: 'Nothing has been measured or found yet.',
  nothingDone: 'Nothing renewed on this visit.',
  axis: 'When each part should reach its limit',
  hoursOnMeter: (slip: Slip) => (slip.hoursAre === 'dial' ? 'Hours on your meter' : 'Hours since new'),
  winters: 'Winters',
  from: 'from',
  likely: 'likely',
  to: 'to',
  beyond: 'beyond',
  now: (slip: Slip) =>
    slip.estimated ? `est. ${meterFigure(slip, slip.dialHours ?? 0)}` : meterFigure(slip, slip.dialHours ?? 0),
  comeIn: (slip: Slip, dialHours: number) => `${forecastFigure(slip, dialHours)}, come in`,
  renewed: 'renewed',
  thenDo: 'What we would do then',
  watch: 'Grease and watch till then',
  howToRead: 'How to read the bars.',
  meterCard: 'Read your meter and let us know',
  meterCardBy: (slip: Slip) => {
    const by = [slip.shop.phone, slip.shop.email].filter((way) => way !== '').join(' or ');
    const who = [slip.machine.name, slip.customer.name].filter((part) => part !== '').join(', ');
    return `${who}. ${by === '' ? 'Text or ring the shop.' : by}`;
  },
  more: (count: number, kind: 'rows' | 'lines') =>
    kind === 'rows' ? `and ${count} more, all later than these` : `and ${count} more, kept in our record`,
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
