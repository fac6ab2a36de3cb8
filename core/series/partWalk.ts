import { limitsOn } from '../shop/limitsOn.ts';
import { mayBePutIn } from '../shop/mayBePutIn.ts';
import type { PointLife, PointLimits, Renewal, Shim, Size } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import { type ClockAt, clockAtMachineHours, clockOn, type PartClock } from './partClock.ts';
import { type OfStations, renewStations } from './stationRenewal.ts';
import { averageStations, LEAST_ERROR_SD_MM, type StationSize, speaking, worstStation } from './visitSizes.ts';

/** Tolerance width of a new part when neither the point nor its class gives one [mm]. Common practice, no source. */
export const USUAL_NEW_SIZE_TOL_MM = 0.2;

/** A start of wear: certain, or somewhere between two moments. */
export type Start = { from: ClockAt; to: ClockAt };

export type Look = {
  takenOn: Day;
  event: 'as-found' | 'as-left' | 'renewed';
  at: ClockAt | null;
  atZero: boolean;
  /** taken of pieces just put in beside older ones: shown, no reading of the part */
  ofPiece?: boolean;
  stations: StationSize[];
  /** packing put in since the part's own start, by then [mm] */
  shimMm: number;
};

/** A part on its way through the days: its start, and the looks at it. */
export type PartWalk = {
  ordinal: number;
  /** null: the first part on record */
  renewal: Renewal | null;
  /** null: no hours on record */
  start: Start | null;
  newSizeMm: number;
  /** 1 sd of the size it started from, where that was measured and not made: a strip turned over [mm] */
  startMeasuredSdMm: number | null;
  /** the limits in force when it went in */
  startLimits: PointLimits;
  looks: Look[];
  /** stations renewed by themselves since it went in */
  pieces: OfStations;
  /** packing put in since it went in, and when */
  shims: readonly { takenOn: Day; at: ClockAt | null; shimMm: number }[];
};

/** Tolerance width of a new part [mm]: the point's, else its class's, else the usual. A width of 0 is nobody's tolerance. */
export const newSizeTolOf = (
  limits: Pick<PointLimits, 'newSizeTolMm'>,
  classNewSizeTolMm: number | null = null,
): number => limits.newSizeTolMm || classNewSizeTolMm || USUAL_NEW_SIZE_TOL_MM;

/**
 * The size a part's wear is counted from: the nominal one, but the size put in when that is no ordinary new one (an oversize
 * pin, a used part): beyond three sd of tolerance and gauge. Within them it is a reading at 0 h of an ordinary part; one that
 * cannot be ({@link mayBePutIn}) is not used.
 * @returns [mm]
 */
export function newSizeOfPart(
  point: PointLife,
  renewal: Pick<Renewal, 'takenOn' | 'sizeMm' | 'kind' | 'carriesOn'>,
  classNewSizeTolMm: number | null,
): number {
  const { takenOn, sizeMm } = renewal;
  const left = leftWhenTurned(point, renewal);
  if (left) return left.sizeMm;
  const limits = limitsOn(point, takenOn);
  const allowedMm = 3 * Math.hypot(newSizeTolOf(limits, classNewSizeTolMm) / 4, point.gaugeErrorMm);
  const odd = sizeMm !== null && Math.abs(sizeMm - limits.newSizeMm) > allowedMm;
  return odd && mayBePutIn(limits.newSizeMm, sizeMm) ? sizeMm : limits.newSizeMm;
}

/**
 * What a strip turned over, or a slack of which one end was renewed, starts from: its thickness as it went back in, worst station; as it was found, when nobody
 * measured it again. The other face is unworn, the metal lost from the first one stays lost, so its wear counts from here
 * and its limits, which are thicknesses, stay.
 * @returns null for other renewals, and when no size of that day is on record
 */
function leftWhenTurned(
  point: PointLife,
  { kind, takenOn, sizeMm, carriesOn }: Pick<Renewal, 'takenOn' | 'sizeMm' | 'kind' | 'carriesOn'>,
): { sizeMm: number; errorSdMm: number } | null {
  if (kind !== 'turned' && !carriesOn) return null;
  if (sizeMm !== null) return { sizeMm, errorSdMm: Math.max(LEAST_ERROR_SD_MM, point.gaugeErrorMm) };
  const ofDay = point.sizes.filter((size) => size.takenOn === takenOn);
  for (const event of ['as-left', 'as-found'] as const) {
    const stations = averageStations(
      point,
      ofDay.filter((size) => size.event === event),
    );
    const worst = worstStation(point.wears, speaking(stations));
    if (worst) return worst;
    if (carriesOn) break; // slack as found was that of the old part
  }
  return null;
}

/** Goes through the days in order and parts the looks among the parts. */
export function walkParts(point: PointLife, clock: PartClock, classNewSizeTolMm: number | null): PartWalk[] {
  const days = daysAtPoint(point, clock.asOf);
  const parts: PartWalk[] = [firstPart(point, clock, days[0])];
  for (const day of days) walkDay(point, clock, parts, day, classNewSizeTolMm);
  return parts;
}

type DayAtPoint = { takenOn: Day; sizes: Size[]; renewals: Renewal[]; shims: Shim[] };

/** What is on record of a point, day by day up to the last one looked at. */
function daysAtPoint({ sizes, renewals, shims = [] }: PointLife, asOf: Day): DayAtPoint[] {
  const days = new Map<Day, DayAtPoint>();
  const on = (takenOn: Day): DayAtPoint => {
    const known = days.get(takenOn);
    if (known) return known;
    const made = { takenOn, sizes: [], renewals: [], shims: [] };
    days.set(takenOn, made);
    return made;
  };
  for (const size of sizes) if (size.takenOn <= asOf) on(size.takenOn).sizes.push(size);
  for (const renewal of renewals) if (renewal.takenOn <= asOf) on(renewal.takenOn).renewals.push(renewal);
  for (const shim of shims) if (shim.takenOn <= asOf) on(shim.takenOn).shims.push(shim);
  return [...days.values()].sort((a, b) => (a.takenOn < b.takenOn ? -1 : 1));
}

/** In the order of a day in the shop: what had been done elsewhere, what was found, what was done here, what was left. */
function walkDay(
  point: PointLife,
  clock: PartClock,
  parts: PartWalk[],
  { takenOn, sizes, renewals, shims }: DayAtPoint,
  classNewSizeTolMm: number | null,
): void {
  if (renewals.length === 0 && shims.length === 0) {
    measured(point, clock, parts.at(-1)!, sizes);
    return;
  }
  const whole = renewals.filter(({ station }) => !station);
  const pieces = renewals.filter(({ station }) => station);
  for (const renewal of whole.filter(({ hoursKnown }) => !hoursKnown)) {
    const start = startBetween(clock, renewal, parts.at(-1)!, sizes);
    parts.push(newPart(point, renewal, parts.at(-1)!, start, classNewSizeTolMm));
    lookAtNew(point, parts.at(-1)!, [], renewal);
  }
  const elsewhere = pieces.filter(({ hoursKnown }) => !hoursKnown);
  renewStations(point, parts, elsewhere, (renewal) => startBetween(clock, renewal, parts.at(-1)!, sizes));
  const here = whole.filter(({ hoursKnown }) => hoursKnown);
  const piecesHere = pieces.filter(({ hoursKnown }) => hoursKnown);
  const found = sizes.filter(({ event }) => event === 'as-found');
  const left = sizes.filter(({ event }) => event === 'as-left');
  const isPiece = ({ station }: Size) => piecesHere.some((renewal) => renewal.station === station);
  if (here.length > 0) {
    look(point, clock, parts.at(-1)!, found, 'as-found');
    for (const renewal of here)
      parts.push(newPart(point, renewal, parts.at(-1)!, startOn(clock, renewal, sizes), classNewSizeTolMm));
    lookAtNew(point, parts.at(-1)!, left, here.at(-1)!);
  } else if (shims.length > 0) {
    look(point, clock, parts.at(-1)!, found, 'as-found');
    pack(clock, parts.at(-1)!, shims);
    look(point, clock, parts.at(-1)!, left, 'as-left');
  } else {
    const repeats = [...found, ...left.filter((size) => !isPiece(size))];
    look(point, clock, parts.at(-1)!, repeats, found.length > 0 ? 'as-found' : 'as-left');
    renewStations(point, parts, piecesHere, (renewal) => startOn(clock, renewal, sizes));
    const ofPieces = left.filter(isPiece);
    if (ofPieces.length > 0) {
      const at = clockOn(clock, takenOn, dialOf(sizes));
      const stations = averageStations(point, ofPieces);
      parts.at(-1)!.looks.push({ takenOn, event: 'as-left', at, atZero: false, ofPiece: true, stations, shimMm: 0 });
    }
  }
}

/** A day on which nothing was renewed or packed: as found and as left are repeats of one reading. */
function measured(point: PointLife, clock: PartClock, part: PartWalk, sizes: readonly Size[]): void {
  const found = sizes.filter(({ event }) => event === 'as-found');
  if (found.length === sizes.length) look(point, clock, part, found, 'as-found');
  else
    look(
      point,
      clock,
      part,
      [...found, ...sizes.filter(({ event }) => event === 'as-left')],
      found.length > 0 ? 'as-found' : 'as-left',
    );
}

/** Packing goes in: what is measured from here on is smaller by it. */
function pack(clock: PartClock, part: PartWalk, shims: readonly Shim[]): void {
  const put = shims.map(({ takenOn, dialHours, shimMm }) => ({
    takenOn,
    at: clockOn(clock, takenOn, dialHours),
    shimMm,
  }));
  part.shims = [...part.shims, ...put];
}

/** Packing put in since the part went in [mm]. */
export const packedMm = (part: Pick<PartWalk, 'shims'>): number =>
  part.shims.reduce((sum, { shimMm }) => sum + shimMm, 0);

/** The dial noted with any of a day's sizes. */
const dialOf = (sizes: readonly Size[]): number | null =>
  sizes.find(({ dialHours }) => dialHours !== null)?.dialHours ?? null;

function firstPart(point: PointLife, clock: PartClock, firstDay: DayAtPoint | undefined): PartWalk {
  const limits = point.limits[0]!;
  const part: PartWalk = {
    ordinal: 0,
    renewal: null,
    start: null,
    newSizeMm: limits.newSizeMm,
    startMeasuredSdMm: null,
    startLimits: limits,
    looks: [],
    pieces: new Map(),
    shims: [],
  };
  const from = clockAtMachineHours(clock, point.fittedMachineHours ?? 0);
  if (!from) return part;
  if (point.fittedMachineHours !== null) return { ...part, start: { from, to: from } };
  const dial = firstDay && (dialOf(firstDay.sizes) ?? firstDay.renewals[0]?.dialHours);
  const to = clockOn(clock, firstDay?.takenOn ?? clock.asOf, dial ?? null);
  return to ? { ...part, start: { from, to } } : part;
}

function startOn(clock: PartClock, renewal: Renewal, ofDay: readonly Size[]): Start | null {
  const at = clockOn(clock, renewal.takenOn, renewal.dialHours ?? dialOf(ofDay));
  return at && { from: at, to: at };
}

/** Some time since the previous size, or since the old part's own start. */
function startBetween(clock: PartClock, renewal: Renewal, old: PartWalk, ofDay: readonly Size[]): Start | null {
  const to = startOn(clock, renewal, ofDay)?.to ?? null;
  const from = old.looks.findLast(({ at }) => at !== null)?.at ?? old.start?.from ?? to;
  return to && from && { from, to };
}

function newPart(
  point: PointLife,
  renewal: Renewal,
  old: PartWalk,
  start: Start | null,
  classNewSizeTolMm: number | null,
): PartWalk {
  return {
    ordinal: old.ordinal + 1,
    renewal,
    start,
    newSizeMm: newSizeOfPart(point, renewal, classNewSizeTolMm),
    startMeasuredSdMm: leftWhenTurned(point, renewal)?.errorSdMm ?? null,
    startLimits: limitsOn(point, renewal.takenOn),
    looks: [],
    pieces: new Map(),
    shims: [],
  };
}

function look(
  point: PointLife,
  clock: PartClock,
  part: PartWalk,
  sizes: readonly Size[],
  event: 'as-found' | 'as-left',
): void {
  if (sizes.length === 0) return;
  const takenOn = sizes[0]!.takenOn;
  const at = clockOn(clock, takenOn, dialOf(sizes));
  const stations = averageStations(point, sizes);
  part.looks.push({ takenOn, event, at, atZero: false, stations, shimMm: packedMm(part) });
}

/** The reading at 0 h: as-left sizes of the day, else the size the renewal gives. */
function lookAtNew(point: PointLife, part: PartWalk, asLeft: readonly Size[], renewal: Renewal): void {
  const at = part.start?.to ?? null;
  if (asLeft.length > 0) {
    const stations = averageStations(point, asLeft);
    part.looks.push({ takenOn: renewal.takenOn, event: 'as-left', at, atZero: true, stations, shimMm: 0 });
  } else if (renewal.sizeMm !== null) {
    const station: StationSize = {
      station: '',
      sizeMm: renewal.sizeMm,
      errorSdMm: Math.max(LEAST_ERROR_SD_MM, point.gaugeErrorMm),
      repeats: 1,
      parked: !mayBePutIn(part.startLimits.newSizeMm, renewal.sizeMm),
      sizeIds: [],
    };
    part.looks.push({ takenOn: renewal.takenOn, event: 'renewed', at, atZero: true, stations: [station], shimMm: 0 });
  }
}

export const middle = ({ from, to }: Start): { runHours: number; workedHours: number } => ({
  runHours: (from.runHours + to.runHours) / 2,
  workedHours: (from.workedHours + to.workedHours) / 2,
});

/** 1 sd of the start itself, in worked hours: even spread, and the doubt about the days it lies between. */
export function startSd({ from, to }: Start): number {
  const width = to.workedHours - from.workedHours;
  const own = from === to ? from.ownVariance : (from.ownVariance + to.ownVariance) / 4;
  return Math.sqrt(width ** 2 / 12 + own * workedShare({ from, to }, to) ** 2);
}

/** Share of the hours between a start and a moment that were worked. */
function workedShare(start: Start, at: ClockAt): number {
  const run = at.runHours - start.from.runHours;
  return run > 0 ? (at.workedHours - start.from.workedHours) / run : 1;
}

/** 1 sd of the worked hours from a start to a moment, beyond the doubt about the start. */
export function sinceStartSd(start: Start, at: ClockAt): number {
  const drift = Math.max(0, at.driftVariance - start.from.driftVariance);
  return workedShare(start, at) * Math.sqrt(at.ownVariance + drift);
}
