import type { AssemblyKind, KindJoint, Sketch } from '#core/contract/shop.ts';
import { decimalFigure, inInches, lengthFigure, limitFigure, type Writing } from '#core/words/quantityText.ts';

/** The take-in form as typed: texts, not yet numbers. `id` keeps a row's identity while rows come and go. */
export type PointForm = {
  id: string;
  name: string;
  measures: KindPoint['measures'];
  wears: KindPoint['wears'];
  partClass: string;
  newSizeText: string;
  /** whole width of the tolerance */
  newSizeTolText: string;
  renewAtText: string;
  rejectAtText: string;
  limitSource: string;
  /** U = 2 sd, as the shop says it */
  gaugeErrorText: string;
  /** "front, middle, rear" */
  stationsText: string;
  /** points of one letter make a joint: a pin, its bores, their slack */
  jointText: string;
};

export type PositionForm = {
  id: string;
  itemText: string;
  name: string;
  safety: boolean;
  /** "carrier": what it goes with when half of the assembly is swapped; empty: with the rest */
  group: string;
  /** it interchanges with others: no oversize here */
  mustStayStandard: boolean;
  /** left out: shown struck, not laid down; nothing is lost by it */
  leftOut: boolean;
  points: PointForm[];
};

export type Fitted = 'as-built' | 'not-known' | 'at-hours';

export type AssemblyForm = {
  id: string;
  /** null: laid out by hand */
  kind: string | null;
  name: string;
  serial: string;
  fitted: Fitted;
  fittedText: string;
  positions: PositionForm[];
  sketch: Sketch | null;
};

export type CustomerForm = { name: string; place: string; address: string; phone: string; email: string };

export type MachineForm = {
  name: string;
  make: string;
  model: string;
  serial: string;
  builtYearText: string;
  note: string;
  meter: 'meter' | 'none';
  meterDigitsText: string;
  hoursBeforeText: string;
  /** per cent of its hours the assemblies work */
  workShareText: string;
  workType: string;
  /** machine hours in one hour of its dial; empty: 1 */
  clockText: string;
  /** how that is known */
  clockReason: string;
  /** where its hours come from without a meter; estimate: from what is entered now and then */
  source: 'estimate' | 'pulled' | 'yearly';
  pullerId: number | null;
  /** per cent of the puller's hours */
  pulledShareText: string;
  hoursPerYearText: string;
};

export type DialForm = { takenOn: string; dialText: string; estimate: boolean; saidBy: string };

export type TakeInForm = {
  /** an existing customer; null: the one typed is new */
  customerId: number | null;
  customer: CustomerForm;
  machine: MachineForm;
  dial: DialForm;
  assemblies: AssemblyForm[];
};

type KindPoint = AssemblyKind['positions'][number]['points'][number];

export const emptyTakeIn = (today: string, saidBy: string): TakeInForm => ({
  customerId: null,
  customer: { name: '', place: '', address: '', phone: '', email: '' },
  machine: {
    name: '',
    make: '',
    model: '',
    serial: '',
    builtYearText: '',
    note: '',
    meter: 'meter',
    meterDigitsText: '',
    hoursBeforeText: '',
    workShareText: '100',
    workType: '',
    clockText: '',
    clockReason: '',
    source: 'estimate',
    pullerId: null,
    pulledShareText: '',
    hoursPerYearText: '',
  },
  dial: { takenOn: today, dialText: '', estimate: false, saidBy },
  assemblies: [],
});

/** Rows are told apart on the screen only; the record gives them their own numbers. */
const newId = (): string => `row-${crypto.randomUUID()}`;

/** A kind laid out in the form: every figure of it may be changed before it is laid down. */
export const assemblyOfKind = (kind: AssemblyKind, writing: Writing): AssemblyForm => ({
  id: newId(),
  kind: kind.name,
  name: kind.name,
  serial: '',
  fitted: 'as-built',
  fittedText: '',
  sketch: kind.sketch,
  positions: kind.positions.map((position) => ({
    id: newId(),
    itemText: String(position.item),
    name: position.name,
    safety: position.safety,
    group: position.group ?? '',
    mustStayStandard: position.mustStayStandard,
    leftOut: false,
    points: position.points.map((point) => ({
      ...pointForm(point, writing),
      jointText: jointLetter(kind.joints, { item: position.item, point: point.name }),
    })),
  })),
});

/** The letter of the joint a point belongs to: the first joint is A. */
function jointLetter(joints: readonly KindJoint[], { item, point }: KindJoint['pin']): string {
  const isIt = (end: KindJoint['pin']) => end.item === item && end.point === point;
  const at = joints.findIndex(({ slack, pin, bores }) => [slack, pin, ...bores].some(isIt));
  return at < 0 ? '' : at < 26 ? String.fromCharCode(65 + at) : String(at + 1);
}

export const pointForm = (point: KindPoint, writing: Writing): PointForm => ({
  id: newId(),
  name: point.name,
  measures: point.measures,
  wears: point.wears,
  partClass: point.partClass,
  newSizeText: limitFigure(point.newSizeMm, writing),
  newSizeTolText: point.newSizeTolMm === null ? '' : limitFigure(point.newSizeTolMm, writing),
  renewAtText: point.renewAtMm === null ? '' : limitFigure(point.renewAtMm, writing),
  rejectAtText: point.rejectAtMm === null ? '' : limitFigure(point.rejectAtMm, writing),
  limitSource: point.limitSource ?? '',
  gaugeErrorText: errorFigure(point.gaugeErrorMm, writing),
  stationsText: point.stations.join(', '),
  jointText: '',
});

/** A gauge's error as the shop says it: U = 2 sd, two decimals or as many as keep it exact. */
export const errorFigure = (errorSdMm: number, writing: Writing): string => {
  const wide = 2 * errorSdMm;
  if (inInches(writing)) return lengthFigure(wide, 3, writing);
  const places = [2, 3].find((n) => Math.abs(wide * 10 ** n - Math.round(wide * 10 ** n)) < 1e-6) ?? 4;
  return decimalFigure(wide, places, writing);
};

/** An assembly of no kind, with one position to begin with. */
export const assemblyByHand = (writing: Writing): AssemblyForm => ({
  id: newId(),
  kind: null,
  name: '',
  serial: '',
  fitted: 'as-built',
  fittedText: '',
  sketch: null,
  positions: [positionByHand(1, writing)],
});

export const positionByHand = (item: number, writing: Writing): PositionForm => ({
  id: newId(),
  itemText: String(item),
  name: '',
  safety: false,
  group: '',
  mustStayStandard: false,
  leftOut: false,
  points: [pointByHand(writing)],
});

/** A calliper's error until the shop says otherwise (common practice: U 0.1 mm on a worn part). */
const CALLIPER_SD_MM = 0.05;

export const pointByHand = (writing: Writing): PointForm => ({
  id: newId(),
  name: 'thickness',
  measures: 'thickness',
  wears: 'down',
  partClass: '',
  newSizeText: '',
  newSizeTolText: '',
  renewAtText: '',
  rejectAtText: '',
  limitSource: '',
  gaugeErrorText: errorFigure(CALLIPER_SD_MM, writing),
  stationsText: '',
  jointText: '',
});

/** The way each measure goes when parts wear; a depth may go either. */
export const usualWay = (measures: KindPoint['measures']): KindPoint['wears'] =>
  measures === 'bore' || measures === 'slack' || measures === 'depth' ? 'up' : 'down';

/** The item number after the highest one in use. */
export const nextItem = (positions: readonly PositionForm[]): number =>
  positions.reduce((most, { itemText }) => Math.max(most, Number.parseInt(itemText, 10) || 0), 0) + 1;

/** "front, middle, rear" as stations; empty: one reading without a name. */
export const stationsOf = (text: string): string[] =>
  text
    .split(/[,;]/)
    .map((station) => station.trim())
    .filter((station) => station !== '');

/** True when a customer and a machine without a word typed in it would be lost by leaving. */
export const isUntouched = (form: TakeInForm): boolean =>
  form.customerId === null &&
  Object.values(form.customer).every((text) => text.trim() === '') &&
  form.machine.name.trim() === '' &&
  form.assemblies.length === 0 &&
  form.dial.dialText.trim() === '';
