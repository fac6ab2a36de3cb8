import { type AssemblyKind, builtInAssemblyKinds, type KindPoint } from '#core/shop/assemblyKinds.ts';
import type { MachineLife } from './make.ts';
import { type Random, random } from './random.ts';
import { type AssemblyPlan, LAST_DAY, type MachinePlan, type PointKey, type VisitPlan } from './scenario.ts';
import { MACHINE_HARSHNESS_SD, PART_SPREAD_SD, TRUE_CLASSES, type TrueClass, type TruePart, wearPath } from './wear.ts';

type Cell = string | number;
export type SizeRow = {
  machine: string;
  assembly: string;
  position: string;
  point: string;
  station: string;
  date: string;
  dial_hours: Cell;
  size_mm: Cell;
  event: 'as-found' | 'as-left' | 'renewed';
  gauge_error_mm: Cell;
};
export type TruthRow = Record<string, Cell>;

type Move = { on: string; toPlan: MachinePlan; toLife: MachineLife };
type Context = { move: Move | null; visitsAfterMove: VisitPlan[] };

/** One measuring point, its present part and what is to be drawn of it. */
type Point = {
  key: PointKey;
  position: string;
  safety: boolean;
  kind: KindPoint;
  trueClass: TrueClass;
  limitWearMm: number | null;
  rateFactor: number;
  seriesCount: number;
  fittedWorkedHours: number;
  part: TruePart;
  /** where this shop reads it, and the share of the worst station's wear seen there */
  stations: { name: string; share: number }[];
  /** of the present part, as last read; null: no size on its card */
  lastRead: { shareOfLimit: number } | null;
};

/** The assembly is open, and nobody opens it twice: what is this far gone is renewed, */
const RENEW_FROM_SHARE_OF_LIMIT = 0.85;
/** and so is what would not last to the next strip-down at the rate it has worn so far; what holds a load needs longer. */
const RENEW_AHEAD_YEARS = { safety: 2.6, other: 2 };
/** its mate at the same position goes with it from here on */
const RENEW_MATE_FROM_SHARE_OF_LIMIT = 0.45;

/** How likely a point is measured at a strip-down, when there is a reason to; `look` for the others. */
const LOOK_AT = { safety: 0.9, noSizeYet: 0.88, halfGone: 0.92 };
const NO_SIZE_YET_FROM_WORKED_HOURS = 1500;
/** below this a visit is a call-out: only what is asked for is opened */
const STRIP_DOWN_FROM_LOOK = 0.3;
/** How likely a point is read at every station its kind offers, and not at the ends of its wear alone. */
const ALL_STATIONS = 0.3;

/** All that happened to the points of one assembly: rows of points.csv and sizes.csv, and the truth behind them. */
export function pointHistory(
  seed: number,
  plan: MachinePlan,
  assembly: AssemblyPlan,
  life: MachineLife,
  { move, visitsAfterMove }: Context,
) {
  const name = `${plan.machine}/${assembly.name}`;
  const workedOn = workedHours(seed, name, plan, assembly, life, move);
  const points = layOut(seed, name, plan, assembly);
  const sizes: SizeRow[] = [];
  const visits = [
    ...plan.visits.filter((visit) => (visit.assembly ?? assembly.name) === assembly.name),
    ...visitsAfterMove,
  ];
  const elsewhere = (plan.renewedElsewhere ?? []).filter((at) => at.assembly === assembly.name);
  const happenings = [
    ...visits.map((visit) => ({ on: visit.on, visit })),
    ...[...new Set(elsewhere.map((at) => at.toldOn))].map((on) => ({ on, visit: null })),
  ].sort((a, b) => (a.on < b.on ? -1 : 1));
  const renew = (point: Point, atWorkedHours: number) => {
    point.seriesCount++;
    point.fittedWorkedHours = atWorkedHours;
    point.part = newPart(seed, name, point);
    point.lastRead = null;
  };
  const sitsWith = (on: string) => (move && on >= move.on ? move.toPlan : plan);
  const base = (point: Point) => ({
    machine: plan.machine,
    assembly: assembly.name,
    position: point.position,
    point: point.kind.name,
  });
  for (const { on, visit } of happenings) {
    if (visit) {
      sizes.push(...stripDown(seed, name, plan, sitsWith(on), life, workedOn(on), visit, points, base, renew));
      continue;
    }
    for (const told of elsewhere.filter((at) => at.toldOn === on)) {
      const point = points.find((at) => at.key === told.point)!;
      renew(point, workedOn(told.trulyOn));
      sizes.push({
        ...base(point),
        station: '',
        date: on,
        dial_hours: '',
        size_mm: '',
        event: 'renewed',
        gauge_error_mm: '',
      });
    }
  }
  const truth = points.map((point) => truthRow(plan, assembly, life, move, workedOn(LAST_DAY), point));
  return { points: points.map((point) => pointRow(plan, assembly, point)), sizes, truth };
}

/** Worked hours of the assembly by day, through its move; 0 when its first parts were fitted. */
function workedHours(
  seed: number,
  name: string,
  plan: MachinePlan,
  assembly: AssemblyPlan,
  life: MachineLife,
  move: Move | null,
): (day: string) => number {
  // Where the shop does not know when the parts were fitted, neither does the record: somewhere in the later half.
  const fitted =
    assembly.fittedMachineHours ?? plan.machineHoursAtFirst * (0.35 + 0.6 * random(seed, `${name}/fitted`).uniform());
  return (day) => {
    const until = move && day > move.on ? move.on : day;
    const before = Math.max(0, life.hoursAt(until) - fitted) * plan.workShare;
    if (!move || day <= move.on) return before;
    return before + (move.toLife.hoursAt(day) - move.toLife.hoursAt(move.on)) * move.toPlan.workShare;
  };
}

/** The slack of a joint is what its pin and bores have worn together, not a third wear beside them: this shop never felt for it. */
const isWearOfItsOwn =
  (kind: AssemblyKind, item: number) =>
  ({ name }: KindPoint): boolean =>
    !(kind.joints ?? []).some(({ slack }) => slack.item === item && slack.point === name);

function layOut(seed: number, name: string, plan: MachinePlan, assembly: AssemblyPlan): Point[] {
  const kind = builtInAssemblyKinds.find((at) => at.name === assembly.kind)!;
  const harshness = plan.harshness ?? Math.exp(MACHINE_HARSHNESS_SD * random(seed, plan.machine).normal());
  return kind.positions.flatMap((position) =>
    position.points.filter(isWearOfItsOwn(kind, position.item)).map((kindPoint) => {
      const key = `${position.name}/${kindPoint.name}`;
      const limits = assembly.limits?.[key];
      const kindAndLimits = limits
        ? { ...kindPoint, renewAtMm: limits.renewAtMm, rejectAtMm: limits.rejectAtMm, limitSource: limits.source }
        : kindPoint;
      const draw = random(seed, `${name}/${key}`);
      const point: Point = {
        key,
        position: position.name,
        safety: position.safety,
        kind: kindAndLimits,
        trueClass: TRUE_CLASSES[kindPoint.partClass]!,
        limitWearMm: kindAndLimits.renewAtMm === null ? null : Math.abs(kindAndLimits.renewAtMm - kindPoint.newSizeMm),
        rateFactor:
          assembly.rateFactor?.[key] ??
          harshness * placeFactor(position.name) * Math.exp(PART_SPREAD_SD * draw.normal()),
        seriesCount: 0,
        fittedWorkedHours: 0,
        part: undefined as never,
        stations: stationsRead(position.name, kindPoint, draw),
        lastRead: null,
      };
      point.part = newPart(seed, name, point);
      return point;
    }),
  );
}

/** Front top and rear bottom strips take the moment of the drawbar load. */
const placeFactor = (position: string): number => (/top front|bottom rear/.test(position) ? 1.15 : 1);

/** Ends wear more than the middle, the outer end most; a bore wears along its load and less across. */
function stationsRead(position: string, kind: KindPoint, draw: Random): { name: string; share: number }[] {
  if (kind.stations.length === 0) return [{ name: '', share: 1 }];
  const worst = position.endsWith('rear') ? 'rear' : 'front';
  const worn = kind.stations.map((name, i) => {
    if (name === 'middle') return { name, share: 0.62 + 0.1 * draw.uniform() };
    if (kind.measures === 'thickness') return { name, share: name === worst ? 1 : 0.8 + 0.1 * draw.uniform() };
    return { name, share: i === 0 ? 1 : 0.5 + 0.25 * draw.uniform() };
  });
  if (draw.uniform() < ALL_STATIONS) return worn;
  // A strip is known by its two ends, a bore or a section by its worst way.
  return kind.measures === 'thickness' ? worn.filter(({ name }) => name !== 'middle') : worn.slice(0, 1);
}

/** A new part of the same sort, with a rate of its own about the position's. */
function newPart(seed: number, name: string, point: Point): TruePart {
  const draw = random(seed, `${name}/${point.key}/part ${point.seriesCount}`);
  const ownRate = point.seriesCount === 0 ? 1 : Math.exp(0.12 * draw.normal());
  const departureMm = ((point.kind.newSizeTolMm ?? 0.1) / 4) * draw.normal();
  return wearPath(draw, point.trueClass, point.rateFactor * ownRate, departureMm);
}

function stripDown(
  seed: number,
  name: string,
  plan: MachinePlan,
  sits: MachinePlan,
  life: MachineLife,
  workedNow: number,
  visit: VisitPlan,
  points: Point[],
  base: (point: Point) => Pick<SizeRow, 'machine' | 'assembly' | 'position' | 'point'>,
  renew: (point: Point, atWorkedHours: number) => void,
): SizeRow[] {
  const rows: SizeRow[] = [];
  const dial = visit.noDial ? null : life.dialOn(visit.on);
  // A machine without a meter has no dial to write beside a size; a renewal takes the estimate of the day.
  const sizeDial: Cell = dial === null || plan.meterDigits === null ? '' : dial;
  const worn = new Map<Point, number>();
  for (const point of points) {
    const draw = random(seed, `${name}/${point.key}/${visit.on}`);
    const look = draw.uniform();
    const gone = visit.renewUnmeasured?.includes(point.key) || plan.neverMeasured?.includes(point.key);
    const partHours = workedNow - point.fittedWorkedHours;
    // Badly worn is seen without a gauge, and then measured.
    const seen =
      visit.look >= STRIP_DOWN_FROM_LOOK &&
      point.part.wearMmAt(partHours) > (point.limitWearMm ?? Number.POSITIVE_INFINITY);
    const asked = visit.must?.includes(point.key) || look < chanceOfLook(point, visit, partHours);
    if (gone || visit.leaveOut?.includes(point.key) || (!asked && !seen)) continue;
    const sharedMm =
      point.trueClass.visitErrorMm * random(seed, `${name}/${point.kind.partClass}/${visit.on}`).normal();
    // A vernier in place of the micrometer now and then: coarser, and said so.
    const vernier = point.kind.measures === 'diameter' && draw.uniform() < 0.15;
    const gaugeErrorMm = vernier ? 0.03 : point.kind.gaugeErrorMm;
    const stepMm = vernier ? 0.05 : point.trueClass.stepMm;
    let worstMm = Number.NEGATIVE_INFINITY;
    for (const { name: station, share } of point.stations) {
      const wearMm = point.part.wearMmAt(partHours) * share;
      const readMm = Math.max(0, sizeAt(point.kind, wearMm + sharedMm + gaugeErrorMm * draw.normal()));
      const asRead = plan.sizeAsRead?.find(
        (at) => at.on === visit.on && at.point === point.key && at.station === station,
      );
      const sizeMm = asRead ? asRead.sizeMm : toStep(readMm, stepMm);
      worstMm = Math.max(worstMm, wearOf(point.kind, sizeMm));
      rows.push({
        ...base(point),
        station,
        date: visit.on,
        dial_hours: sizeDial,
        size_mm: sizeMm,
        event: 'as-found',
        gauge_error_mm: vernier ? gaugeErrorMm : '',
      });
    }
    worn.set(point, worstMm);
    point.lastRead = { shareOfLimit: point.limitWearMm === null ? 0 : worstMm / point.limitWearMm };
  }
  if (dial === null) return rows;
  const outlook = { worn, workedNow, workedHoursPerYear: sits.hoursPerYear * sits.workShare };
  for (const point of points.filter((at) => isRenewed(at, outlook, visit, points))) {
    const draw = random(seed, `${name}/${point.key}/${visit.on}/renewed`);
    renew(point, workedNow);
    const newMm = toStep(sizeAt(point.kind, point.part.wearMmAt(0)), point.trueClass.stepMm);
    const written = draw.uniform();
    const row = { ...base(point), station: '', date: visit.on, dial_hours: dial, gauge_error_mm: '' };
    rows.push({ ...row, event: 'renewed', size_mm: written < 0.45 ? newMm : '' });
    if (written <= 0.75) continue;
    // Measured on assembly, at every station, so that later visits can be set against it station by station.
    for (const { name: station } of point.stations) rows.push({ ...row, station, event: 'as-left', size_mm: newMm });
  }
  return rows;
}

/** What has no size on its card is measured before what has, what holds a load and what is half gone before the rest. */
function chanceOfLook(point: Point, visit: VisitPlan, partHours: number): number {
  if (visit.look < STRIP_DOWN_FROM_LOOK) return visit.look;
  return Math.max(
    visit.look,
    point.safety ? LOOK_AT.safety : 0,
    point.lastRead === null && partHours > NO_SIZE_YET_FROM_WORKED_HOURS ? LOOK_AT.noSizeYet : 0,
    (point.lastRead?.shareOfLimit ?? 0) > 0.5 ? LOOK_AT.halfGone : 0,
  );
}

type Outlook = { worn: Map<Point, number>; workedNow: number; workedHoursPerYear: number };

function isRenewed(point: Point, outlook: Outlook, visit: VisitPlan, points: Point[]): boolean {
  if (visit.leaveAll || visit.decline?.includes(point.key)) return false;
  if (visit.renew?.includes(point.key) || visit.renewUnmeasured?.includes(point.key)) return true;
  if (isDue(point, outlook)) return true;
  const mates = points.filter((at) => at !== point && at.position === point.position);
  const share = shareOfLimit(point, outlook);
  return share >= RENEW_MATE_FROM_SHARE_OF_LIMIT && mates.some((at) => isDue(at, outlook));
}

const shareOfLimit = (point: Point, { worn }: Outlook): number =>
  point.limitWearMm === null ? 0 : (worn.get(point) ?? 0) / point.limitWearMm;

/** By the size just read and a straight line through the new size, as a fitter would reckon it. */
function isDue(point: Point, outlook: Outlook): boolean {
  const share = shareOfLimit(point, outlook);
  const partHours = Math.max(1, outlook.workedNow - point.fittedWorkedHours);
  const years = point.safety ? RENEW_AHEAD_YEARS.safety : RENEW_AHEAD_YEARS.other;
  const shareThen = share * (1 + (years * outlook.workedHoursPerYear) / partHours);
  // A part hardly worn is left, whatever a line through its first hundredths says.
  return share >= RENEW_FROM_SHARE_OF_LIMIT || (share > 0.5 && shareThen >= 1);
}

const sizeAt = (kind: KindPoint, wearMm: number): number =>
  kind.wears === 'down' ? kind.newSizeMm - wearMm : kind.newSizeMm + wearMm;
const wearOf = (kind: KindPoint, sizeMm: number): number =>
  kind.wears === 'down' ? kind.newSizeMm - sizeMm : sizeMm - kind.newSizeMm;
/** Rounded to the gauge's step, without the tail of binary fractions. */
const toStep = (sizeMm: number, stepMm: number): number => Number((Math.round(sizeMm / stepMm) * stepMm).toFixed(3));

function pointRow(plan: MachinePlan, assembly: AssemblyPlan, point: Point): Record<string, Cell> {
  return {
    machine: plan.machine,
    assembly: assembly.name,
    position: point.position,
    point: point.kind.name,
    part_class: point.kind.partClass,
    safety: point.safety ? 'yes' : 'no',
    wears: point.kind.wears,
    new_size_mm: point.kind.newSizeMm,
    new_size_tol_mm: point.kind.newSizeTolMm ?? '',
    renew_at_mm: point.kind.renewAtMm ?? '',
    reject_at_mm: point.kind.rejectAtMm ?? '',
    limit_source: point.kind.limitSource ?? '',
    gauge_error_mm: point.kind.gaugeErrorMm,
    fitted_machine_hours: assembly.fittedMachineHours ?? '',
  };
}

function truthRow(
  plan: MachinePlan,
  assembly: AssemblyPlan,
  life: MachineLife,
  move: Move | null,
  workedNow: number,
  point: Point,
): TruthRow {
  const sits = move ? move.toPlan : plan;
  const partHours = workedNow - point.fittedWorkedHours;
  const left =
    point.limitWearMm === null ? '' : (point.part.workedHoursAtWear(point.limitWearMm) - partHours) / sits.workShare;
  return {
    machine: sits.machine,
    assembly: assembly.name,
    position: point.position,
    point: point.kind.name,
    part_class: point.kind.partClass,
    as_of: LAST_DAY,
    true_machine_hours: Math.round((move ? move.toLife : life).hoursAt(LAST_DAY)),
    true_wear_mm: Number(point.part.wearMmAt(partHours).toFixed(3)),
    true_hours_left: left === '' ? '' : Math.round(left),
  };
}
