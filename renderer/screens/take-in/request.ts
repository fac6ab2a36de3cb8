import type { machineTakeIn } from '#core/contract/machine.ts';
import type { AskOf } from '#core/contract/operation.ts';
import type { kindSave } from '#core/contract/shop.ts';
import { isDay } from '#core/units/day.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { type NumberRead, readLength, readNumber } from '../../words/readNumber.ts';
import { type AssemblyForm, type PointForm, type PositionForm, stationsOf, type TakeInForm } from './form.ts';

export type TakeInRequest = AskOf<typeof machineTakeIn>;
type NewAssembly = TakeInRequest['assemblies'][number];
type NewPosition = NewAssembly['positions'][number];
type NewPoint = NewPosition['points'][number];

/** What keeps a field from being taken in. `path` names the field of the form, "assemblies.0.positions.2.points.0.renewAt". */
export type Remark = { path: string; why: RemarkWhy; facts?: Record<string, string | number> };
export type RemarkWhy =
  | 'missing'
  | 'not-a-number'
  | 'two-decimal-marks'
  | 'thousands-mark'
  | 'out-of-bounds'
  | 'not-a-day'
  | 'twice'
  | 'wrong-side'
  | 'limits-crossed'
  | 'no-position'
  /** a joint takes one pin, one slack, and at least one bore */
  | 'joint-incomplete'
  /** by the record itself; `expected` says what it wanted */
  | 'refused';

/** Collects remarks while a form is read, so that all of them can be shown at once. */
class Reader {
  readonly remarks: Remark[] = [];
  readonly #writing: Writing;

  constructor(writing: Writing) {
    this.#writing = writing;
  }

  #read = (text: string, unit: 'mm' | 'h') =>
    unit === 'mm' ? readLength(text, this.#writing) : readNumber(text, unit);

  note(path: string, why: RemarkWhy, facts?: Remark['facts']): void {
    this.remarks.push(facts ? { path, why, facts } : { path, why });
  }

  /** A figure that may be left out. */
  figure(path: string, text: string, unit: 'mm' | 'h', bounds: { from: number; to: number }): number | null {
    return this.#bounded(path, this.#read(text, unit), bounds);
  }

  /** A figure that must be there. */
  needed(path: string, text: string, unit: 'mm' | 'h', bounds: { from: number; to: number }): number {
    const read = this.#read(text, unit);
    if (!read.ok && read.why === 'empty') this.note(path, 'missing');
    return this.#bounded(path, read, bounds) ?? Number.NaN;
  }

  text(path: string, text: string): string {
    if (text.trim() === '') this.note(path, 'missing');
    return text.trim();
  }

  whole(path: string, text: string, bounds: { from: number; to: number }): number | null {
    const value = this.figure(path, text, 'h', bounds);
    if (value === null || Number.isInteger(value)) return value;
    this.note(path, 'not-a-number');
    return null;
  }

  #bounded(path: string, read: NumberRead, bounds: { from: number; to: number }): number | null {
    if (!read.ok) {
      if (read.why !== 'empty') this.note(path, read.why);
      return null;
    }
    if (read.value >= bounds.from && read.value <= bounds.to) return read.value;
    this.note(path, 'out-of-bounds', bounds);
    return null;
  }
}

const SIZE_MM = { from: 0, to: 10_000 };
const HOURS = { from: 0, to: 10_000_000 };

/**
 * The request the form stands for, or everything that keeps it from being one, in the order of the form.
 * Positions left out are not laid down; their figures are not read.
 */
export function takeInRequest(
  form: TakeInForm,
  writing: Writing,
): { request: TakeInRequest | null; remarks: Remark[] } {
  const reader = new Reader(writing);
  const customer = form.customerId === null ? customerOf(form, reader) : null;
  const machine = machineOf(form, reader);
  const dial = dialOf(form, reader);
  const assemblies = form.assemblies.map((assembly, i) => assemblyOf(assembly, `assemblies.${i}`, reader));
  if (reader.remarks.length > 0) return { request: null, remarks: reader.remarks };
  return { request: { customerId: form.customerId, customer, machine, dial, assemblies }, remarks: [] };
}

function customerOf({ customer }: TakeInForm, reader: Reader): NonNullable<TakeInRequest['customer']> {
  return {
    name: reader.text('customer.name', customer.name),
    place: customer.place.trim(),
    address: customer.address.trim(),
    phone: customer.phone.trim(),
    email: customer.email.trim(),
  };
}

function machineOf(form: TakeInForm, reader: Reader): TakeInRequest['machine'] {
  const { machine } = form;
  const hasMeter = machine.meter === 'meter';
  const share = reader.figure('machine.workShare', machine.workShareText.replace('%', ''), 'h', { from: 1, to: 100 });
  return {
    name: reader.text('machine.name', machine.name),
    make: machine.make.trim(),
    model: machine.model.trim(),
    serial: machine.serial.trim(),
    builtYear: reader.whole('machine.builtYear', machine.builtYearText, { from: 1900, to: 2100 }),
    note: machine.note.trim(),
    meterDigits: hasMeter ? reader.whole('machine.meterDigits', machine.meterDigitsText, { from: 3, to: 8 }) : null,
    hoursBefore: hasMeter ? reader.figure('machine.hoursBefore', machine.hoursBeforeText, 'h', HOURS) : null,
    workShare: (share ?? 100) / 100,
    workType: machine.workType.trim(),
    clock: hasMeter ? clockOf(machine, reader) : null,
    hoursSource: hasMeter ? null : sourceOf(form, reader),
  };
}

/** The pace of its clock goes with how that is known. */
function clockOf({ clockText, clockReason }: TakeInForm['machine'], reader: Reader): TakeInRequest['machine']['clock'] {
  const hoursPerDialHour = reader.figure('machine.clock', clockText, 'h', { from: 0.1, to: 10 });
  if (hoursPerDialHour === null || hoursPerDialHour === 1) return null;
  return { hoursPerDialHour, reason: reader.text('machine.clockReason', clockReason) };
}

/** Where the hours of a machine without a meter come from, from the day of its estimate on. */
function sourceOf({ machine, dial }: TakeInForm, reader: Reader): TakeInRequest['machine']['hoursSource'] {
  const from = dial.takenOn;
  if (machine.source === 'estimate') return null;
  if (!isDay(from)) reader.note('dial.takenOn', 'not-a-day');
  if (machine.source === 'yearly') {
    const hoursPerYear = reader.needed('machine.hoursPerYear', machine.hoursPerYearText, 'h', { from: 1, to: 8760 });
    return { kind: 'yearly', from, hoursPerYear, errorShare: null };
  }
  if (machine.pullerId === null) reader.note('machine.pullerId', 'missing');
  const percent = reader.needed('machine.pulledShare', machine.pulledShareText.replace('%', ''), 'h', {
    from: 1,
    to: 100,
  });
  return { kind: 'pulled', from, pullerId: machine.pullerId ?? 0, share: percent / 100, errorShare: null };
}

/** A machine without a meter takes an estimate; an empty figure means not read yet. */
function dialOf({ dial, machine }: TakeInForm, reader: Reader): TakeInRequest['dial'] {
  if (dial.dialText.trim() === '') return null;
  const dialHours = reader.needed('dial.dialHours', dial.dialText, 'h', HOURS);
  if (!isDay(dial.takenOn)) reader.note('dial.takenOn', 'not-a-day');
  return {
    takenOn: dial.takenOn,
    dialHours,
    estimate: dial.estimate || machine.meter === 'none',
    saidBy: dial.saidBy.trim(),
  };
}

/** An assembly of the form as the record lays it out. */
function assemblyOf(form: AssemblyForm, path: string, reader: Reader): NewAssembly {
  const name = reader.text(`${path}.name`, form.name);
  const fitted = form.fitted === 'at-hours' ? reader.needed(`${path}.fitted`, form.fittedText, 'h', HOURS) : null;
  return {
    kind: form.kind,
    name,
    serial: form.serial.trim(),
    fittedMachineHours: form.fitted === 'as-built' ? 0 : fitted,
    positions: positionsOf(form.positions, path, reader),
    joints: jointsOf(form.positions, path, reader),
  };
}

function positionsOf(forms: readonly PositionForm[], path: string, reader: Reader): NewPosition[] {
  const laidOut = forms.flatMap((form, i) => (form.leftOut ? [] : [{ form, at: `${path}.positions.${i}` }]));
  if (laidOut.length === 0) reader.note(`${path}.positions`, 'no-position');
  const seen = new Set<number>();
  return laidOut.map(({ form, at }) => {
    const item = reader.whole(`${at}.item`, form.itemText, { from: 1, to: 999 });
    if (form.itemText.trim() === '') reader.note(`${at}.item`, 'missing');
    if (item !== null && seen.has(item)) reader.note(`${at}.item`, 'twice', { item });
    if (item !== null) seen.add(item);
    return {
      item: item ?? Number.NaN,
      name: reader.text(`${at}.name`, form.name),
      safety: form.safety,
      mustStayStandard: form.mustStayStandard,
      points: form.points.map((point, j) => pointOf(point, `${at}.points.${j}`, reader)),
    };
  });
}

/** Joints by their letters. One that loses a part with a position left out is no joint here. */
function jointsOf(forms: readonly PositionForm[], path: string, reader: Reader): NewAssembly['joints'] {
  const lettered = forms.flatMap((form, i) =>
    form.points.map((point, j) => ({
      letter: point.jointText.trim().toUpperCase(),
      leftOut: form.leftOut,
      measures: point.measures,
      at: `${path}.positions.${i}.points.${j}.joint`,
      end: { item: Number.parseInt(form.itemText, 10), point: point.name.trim() },
    })),
  );
  const joints = Map.groupBy(
    lettered.filter(({ letter }) => letter !== ''),
    ({ letter }) => letter,
  );
  return [...joints.values()].flatMap((points) => {
    const ends = (measures: PointForm['measures']) => points.filter((one) => one.measures === measures);
    const [slack, ...moreSlack] = ends('slack');
    const [pin, ...morePins] = ends('diameter');
    const bores = ends('bore');
    if (points.some(({ leftOut }) => leftOut)) return [];
    if (!slack || !pin || bores.length === 0 || moreSlack.length + morePins.length > 0) {
      reader.note(points[0]!.at, 'joint-incomplete');
      return [];
    }
    return [{ slack: slack.end, pin: pin.end, bores: bores.map(({ end }) => end) }];
  });
}

function pointOf(form: PointForm, path: string, reader: Reader): NewPoint {
  const point = {
    name: reader.text(`${path}.name`, form.name),
    measures: form.measures,
    wears: form.wears,
    partClass: reader.text(`${path}.partClass`, form.partClass),
    newSizeMm: reader.needed(`${path}.newSize`, form.newSizeText, 'mm', SIZE_MM),
    newSizeTolMm: reader.figure(`${path}.newSizeTol`, form.newSizeTolText, 'mm', SIZE_MM),
    renewAtMm: reader.figure(`${path}.renewAt`, form.renewAtText, 'mm', SIZE_MM),
    rejectAtMm: reader.figure(`${path}.rejectAt`, form.rejectAtText, 'mm', SIZE_MM),
    limitSource: form.limitSource.trim() === '' ? null : form.limitSource.trim(),
    // the shop says U = 2 sd, the record holds the sd
    gaugeErrorMm:
      reader.needed(`${path}.gaugeError`, form.gaugeErrorText.replace(/^\s*(±|\+-)/, ''), 'mm', {
        from: 0.002,
        to: 20,
      }) / 2,
    stations: stationsOf(form.stationsText),
  };
  remarkLimits(point, path, reader);
  return point;
}

/** Limits lie on the side the point wears to, and a part is renewed before it must be rejected. */
function remarkLimits(point: NewPoint, path: string, reader: Reader): void {
  const wear = (sizeMm: number) => (point.wears === 'down' ? point.newSizeMm - sizeMm : sizeMm - point.newSizeMm);
  for (const [field, limit] of [
    ['renewAt', point.renewAtMm],
    ['rejectAt', point.rejectAtMm],
  ] as const) {
    if (limit !== null && wear(limit) <= 0) {
      reader.note(`${path}.${field}`, 'wrong-side', { wears: point.wears, newSizeMm: point.newSizeMm });
    }
  }
  if (point.renewAtMm !== null && point.rejectAtMm !== null && wear(point.rejectAtMm) < wear(point.renewAtMm)) {
    reader.note(`${path}.rejectAt`, 'limits-crossed', { renewAtMm: point.renewAtMm });
  }
}

/** An assembly alone, for a machine on record; its remarks' paths begin with "assembly". */
export function assemblyRequest(
  form: AssemblyForm,
  writing: Writing,
): { request: NewAssembly | null; remarks: Remark[] } {
  const reader = new Reader(writing);
  const request = assemblyOf(form, 'assembly', reader);
  return reader.remarks.length > 0 ? { request: null, remarks: reader.remarks } : { request, remarks: [] };
}

/** Positions and joints of an assembly kind's table, or what keeps them from being saved. */
export function kindPositions(
  positions: readonly PositionForm[],
  writing: Writing,
): {
  laidOut: Pick<AskOf<typeof kindSave>['kind'], 'positions' | 'joints'> | null;
  remarks: Remark[];
} {
  const reader = new Reader(writing);
  const left = positions.filter(({ leftOut }) => !leftOut);
  const laidOut = {
    positions: positionsOf(positions, 'kind', reader).map((position, i) => ({
      ...position,
      group: left[i]?.group.trim() || null,
    })),
    joints: jointsOf(positions, 'kind', reader),
  };
  return { laidOut: reader.remarks.length > 0 ? null : laidOut, remarks: reader.remarks };
}

const FORM_FIELD_OF: Record<string, string> = {
  builtYear: 'builtYear',
  newSizeMm: 'newSize',
  newSizeTolMm: 'newSizeTol',
  renewAtMm: 'renewAt',
  rejectAtMm: 'rejectAt',
  gaugeErrorMm: 'gaugeError',
  fittedMachineHours: 'fitted',
};

/**
 * The form's name for a field the record refused: positions left out shift the numbers, and some fields are called
 * otherwise in the request.
 */
export function formPath(requestPath: string, form: TakeInForm): string {
  const steps = requestPath.split('.');
  if (steps[0] === 'assemblies' && steps[2] === 'positions' && steps[3] !== undefined) {
    const laidOut = form.assemblies[Number(steps[1])]?.positions.flatMap((p, i) => (p.leftOut ? [] : [i])) ?? [];
    steps[3] = String(laidOut[Number(steps[3])] ?? steps[3]);
  }
  const last = steps.length - 1;
  steps[last] = FORM_FIELD_OF[steps[last] ?? ''] ?? steps[last] ?? '';
  return steps.join('.');
}
