import type { PointForecast } from '../contract/forecast.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { chanceByHours } from '../forecast/chanceByHours.ts';
import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import { slackPastBy } from '../forecast/slackOfJoint.ts';
import type { RateNode, UseOfYear } from '../forecast/useOfYear.ts';
import type { PlanSettings } from '../plan/planSettings.ts';
import { fairShares, type PlanPart, type PlanYears } from '../plan/winters/planPart.ts';
import type { Season } from '../reading/season.ts';
import { seasonDays } from '../reading/season.ts';
import { presentShare } from '../reading/workedHours.ts';
import { stepsToReach } from '../repair/strip-down-tree/stepsToReach.ts';
import type { Measures } from '../shop/assemblyKinds.ts';
import { renewalOfPosition } from '../shop/renewalWork.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import type { StripDownTree } from '../shop/stripDownTree.ts';
import type { RenewalWork } from '../shop/visit.ts';
import type { Winter } from '../shop/winter.ts';
import type { Day } from '../units/day.ts';
import { jointOfSlack } from './jointOfSlack.ts';
import { type Learning, withEveryClass } from './learning.ts';
import type { MachineHoursAndUse } from './shopHours.ts';
import { partsOfMachine, type ShopSeries } from './shopSeries.ts';

/** A position the plan may renew: all that is measured at it. */
export type PlaceInPlan = {
  positionId: number;
  assemblyId: number;
  pointIds: readonly number[];
  /** machine hours at the limit by the figure that decides, the soonest of its points; null: none, or beyond reckoning */
  goodUntilHours: number | null;
};

/** A machine as the plan of winters sees it: parts are positions, named by their ids. */
export type MachineInPlan = {
  machineId: number;
  places: readonly PlaceInPlan[];
  parts: readonly PlanPart[];
  years: PlanYears;
  /** what each take-off is called, by its code in the plan */
  takeOffNames: ReadonlyMap<string, string>;
};

/** What somebody has settled of a position, from outside the forecasts. */
export type SettledPlace = {
  /** own work and parts, where a repair is chosen or a job says so [bench h] */
  work?: { ownHours: number; partsHours: number } | undefined;
  /** must or must not be renewed in a winter */
  held?: ReadonlyMap<number, boolean> | undefined;
};

export type PlanInputs = {
  shop: ShopSeries;
  /** the same shop with every part renewed today */
  renewed: ShopSeries;
  learning: Learning;
  settings: ModelSettings;
  plan: PlanSettings;
  /** the winters planned, and the one after them */
  winters: readonly Winter[];
  measuresOf: ReadonlyMap<number, Measures>;
  renewals: readonly RenewalWork[];
  /** what comes off to reach what; null: the assembly's kind does not say */
  treeOf: (assemblyId: number) => StripDownTree | null;
};

/** Every part of the shop renewed on a day: what new parts will do on its machines. */
export const withAllRenewed = (shop: ShopSeries): ShopSeries['life'] => ({
  ...shop.life,
  points: shop.life.points.map((point) => ({
    ...point,
    renewals: [...point.renewals, { id: -1, takenOn: shop.asOf, dialHours: null, hoursKnown: true, sizeMm: null }],
  })),
});

type AtPoint = {
  point: PointOnRecord;
  /** chance past its limit by worked hours ahead of today: in place, and new */
  chanceAhead: (workedHours: number) => number;
  chanceNew: (workedHours: number) => number;
  /** worked hours left by the middle figure, and of a new part; Infinity: beyond reckoning */
  middleLeft: number;
  middleNew: number;
  goodUntilHours: number | null;
};

/**
 * One machine's positions as parts of the plan: chances that a limit passes, from the laws of wear and the machine's use, and
 * what it takes to renew them. A position is as likely past its limit as the likeliest of its points, and has as much life left
 * as the one with least. A position without a forecast is in it only where `settled` holds it to a winter.
 *
 * @param forecasts of the machine's points; laws of the parts in place
 * @param useTimes the machine runs this many times as many hours a year from today on
 * @source own derivation: chance by a day = mean over the machine's rates of use of the chance by the hours run by then
 */
export function machineInPlan(
  from: PlanInputs,
  machineId: number,
  { points: forecasts, laws }: { points: readonly PointForecast[]; laws: ReadonlyMap<number, PartLaw> },
  settled: ReadonlyMap<number, SettledPlace>,
  useTimes = 1,
): MachineInPlan {
  const { shop, plan } = from;
  const machine = shop.hours.ofMachine(machineId);
  const points = shop.life.points.filter((point) => point.machineId === machineId);
  const atPoints = machine ? pointsInPlan(from, machine, points, forecasts, laws) : [];
  const known = Map.groupBy(atPoints, ({ point }) => point.positionId);
  const byPosition = Map.groupBy(points, ({ positionId }) => positionId);
  const isHeldTo = (positionId: number) => [...(settled.get(positionId)?.held?.values() ?? [])].includes(true);
  const planned = [...byPosition].filter(([positionId]) => known.has(positionId) || isHeldTo(positionId));
  const takeOffs = takeOffsOf(from, planned);
  const shares = fairShares(
    planned.map(([positionId]) => ({ takeOffs: takeOffs.ofPosition.get(positionId) ?? [] })),
    { takeOffHours: takeOffs.hours, visitHours: plan.visitHours },
  );
  const run = machine ? hoursRun(from, machine, useTimes) : null;
  const parts = planned.map(([positionId, its], place): PlanPart => {
    const { work, held } = settled.get(positionId) ?? {};
    const usual = renewalOfPosition(
      its.map(({ pointId, partClass }) => ({ partClass, measures: from.measuresOf.get(pointId) ?? 'depth' })),
      from.renewals,
    );
    const { ownHours, partsHours } = work ?? usual;
    return {
      ...{ partId: positionId, takeOffs: takeOffs.ofPosition.get(positionId) ?? [], ownHours, partsCost: partsHours },
      stripDownShare: shares[place] ?? 0,
      ...chancesOf(known.get(positionId) ?? [], run, plan.winters),
      ...(held && { held }),
    };
  });
  return {
    machineId,
    places: planned.map(([positionId, its]) => ({
      ...{ positionId, assemblyId: its[0]!.assemblyId, pointIds: its.map(({ pointId }) => pointId) },
      goodUntilHours: soonest((known.get(positionId) ?? []).map(({ goodUntilHours }) => goodUntilHours)),
    })),
    parts,
    years: {
      winters: plan.winters,
      takeOffHours: takeOffs.hours,
      breakdownCost: seasonsOf(from).map(
        () => plan.breakdownHours * (machine ? busyWeight(machine.use, plan.busyMonths) : 1),
      ),
      visitHours: plan.visitHours,
    },
    takeOffNames: takeOffs.names,
  };
}

const seasonsOf = ({ plan }: PlanInputs): number[] => Array.from({ length: plan.winters }, (_, season) => season);

/**
 * How much dearer a season's breakdowns are than in a month of mean use: a limit passes in a month as likely as the machine
 * runs in it, and in months above the mean it costs `busyMonths` times as much. Mean over the seasons it may keep, so that one
 * that works all the year round has no busy months however little doubt of that is left.
 * @source own derivation
 */
function busyWeight({ branches }: Pick<UseOfYear, 'branches'>, busyMonths: number): number {
  const all = branches.reduce((sum, { weight }) => sum + weight, 0);
  const busy = branches.reduce((sum, { weight, season }) => sum + weight * shareInBusyMonths(season), 0);
  return all > 0 ? 1 + (busyMonths - 1) * (busy / all) : 1;
}

/** Share of a year's hours run in months above the mean. */
function shareInBusyMonths(season: Season): number {
  const all = season.reduce((sum, month) => sum + month, 0);
  const mean = all / season.length;
  return season.filter((month) => month > mean).reduce((sum, month) => sum + month, 0) / all;
}

function pointsInPlan(
  { shop, renewed, learning, settings }: PlanInputs,
  machine: MachineHoursAndUse,
  points: readonly PointOnRecord[],
  forecasts: readonly PointForecast[],
  laws: ReadonlyMap<number, PartLaw>,
): AtPoint[] {
  const pool = withEveryClass(learning, renewed, settings).shop;
  const anew = renewed.life.points.filter(({ machineId }) => machineId === machine.life.machineId);
  const newLaws = new Map(
    machineLaws(pool, partsOfMachine(renewed, machine.life.machineId, anew), settings).map((law) => [law.pointId, law]),
  );
  const share = presentShare(machine.life, shop.asOf);
  if (!(share > 0)) return [];
  return points.flatMap((point) => {
    const series = shop.ofPoint(point);
    const forecast = forecasts.find(({ pointId }) => pointId === point.pointId);
    const law = laws.get(point.pointId);
    const newLaw = newLaws.get(point.pointId);
    const newPoint = anew.find(({ pointId }) => pointId === point.pointId);
    const limit = series.renewAtWearMm;
    const limitNew = newPoint ? renewed.ofPoint(newPoint).renewAtWearMm : null;
    const now = series.workedHoursNow;
    if (!law || !newLaw || !forecast || limit === null || limitNew === null || now === null) return [];
    const joint = jointOfSlack(shop, point, laws);
    const jointNew = newPoint && jointOfSlack(renewed, newPoint, newLaws);
    const alone = chanceByHours(law, limit, settings);
    const aloneNew = chanceByHours(newLaw, limitNew, settings);
    const middleNew = hoursAtLimit(newLaw, limitNew, settings).middle ?? Number.POSITIVE_INFINITY;
    const left = hoursAtLimit(law, limit, settings).middle;
    const middleLeft = joint ? forecast.hoursLeft.middle : left === null ? null : left - now;
    const deciding =
      forecast.decides === 'low' ? forecast.machineHoursAtLimit.low : forecast.machineHoursAtLimit.middle;
    return [
      {
        point,
        chanceAhead: joint ? slackPastBy(joint, limit, settings).chanceAt : (hours: number) => alone(now + hours),
        chanceNew: jointNew ? slackPastBy(jointNew, limitNew, settings).chanceAt : aloneNew,
        middleLeft: middleLeft === null ? Number.POSITIVE_INFINITY : joint ? middleLeft * share : middleLeft,
        middleNew,
        goodUntilHours: deciding,
      },
    ];
  });
}

/** Worked hours from today to each winter at one rate of use, and from a winter to those after it. */
type Run = { ahead: number[]; since: number[] };

const USE_CHANCES = [0.1, 0.3, 0.5, 0.7, 0.9];

/** A machine's hours to come at five rates of use, equally likely. */
function hoursRun({ shop, winters, plan }: PlanInputs, machine: MachineHoursAndUse, useTimes: number): Run[] {
  const share = presentShare(machine.life, shop.asOf);
  const later = (on: Day): Day => (on > shop.asOf ? on : shop.asOf);
  return equalRates(machine.use).map(({ lnHoursPerDay, season }) => {
    const worked = (from: Day, to: Day) => useTimes * share * Math.exp(lnHoursPerDay) * seasonDays(season, from, to);
    const first = later(winters[0]!.from);
    const at = Array.from({ length: plan.winters + 1 }, (_, winter) => later(winters[winter]!.from));
    return { ahead: at.map((on) => worked(shop.asOf, on)), since: at.map((on) => worked(first, on)) };
  });
}

/** Five rates of a machine's use, each as likely: the middles of fifths of all it may run at. */
function equalRates({ branches }: Pick<UseOfYear, 'branches'>): (RateNode & { season: Season })[] {
  const all = branches
    .flatMap(({ season, weight, rates }) => rates.map((rate) => ({ ...rate, weight: rate.weight * weight, season })))
    .sort((a, b) => a.lnHoursPerDay - b.lnHoursPerDay);
  const total = all.reduce((sum, { weight }) => sum + weight, 0);
  let reached = 0;
  const upTo = all.map((rate) => {
    reached += rate.weight;
    return { rate, reached };
  });
  return USE_CHANCES.map((chance) => (upTo.find((at) => at.reached >= chance * total) ?? upTo.at(-1)!).rate);
}

type Chances = Pick<PlanPart, 'chancePast' | 'chancePastNew' | 'lifeLeft' | 'lifeLeftNew'>;

function chancesOf(points: readonly AtPoint[], run: readonly Run[] | null, winters: number): Chances {
  const upTo = (count: number) => Array.from({ length: count }, (_, index) => index);
  // nobody can say how long it lasts: it is renewed only where somebody holds it to a winter
  if (!run || points.length === 0)
    return {
      chancePast: upTo(winters).map(() => 0),
      chancePastNew: upTo(winters).map((winter) => upTo(winters - winter).map(() => 0)),
      lifeLeft: upTo(winters + 1).map(() => 1),
      lifeLeftNew: upTo(winters).map((winter) => upTo(winters - winter + 1).map(() => 1)),
    };
  const mean = (of: (one: Run) => number) => run.reduce((sum, one) => sum + of(one), 0) / run.length;
  const likeliest = (chance: (at: AtPoint) => (hours: number) => number, hours: (one: Run) => number) =>
    Math.max(...points.map((at) => mean((one) => chance(at)(hours(one)))));
  const half = run[Math.floor(run.length / 2)]!;
  const least = (left: (at: AtPoint) => number) => Math.min(...points.map((at) => shareOf(left(at), at.middleNew)));
  const past = upTo(winters).map((season) =>
    likeliest(
      (at) => at.chanceAhead,
      (one) => one.ahead[season + 1]!,
    ),
  );
  const pastNew = upTo(winters).map((season) =>
    likeliest(
      (at) => at.chanceNew,
      (one) => one.since[season + 1]!,
    ),
  );
  const leftNew = upTo(winters + 1).map((gone) => least((at) => at.middleNew - half.since[gone]!));
  return {
    chancePast: past,
    chancePastNew: upTo(winters).map((winter) => pastNew.slice(0, winters - winter)),
    lifeLeft: upTo(winters + 1).map((winter) => least((at) => at.middleLeft - half.ahead[winter]!)),
    lifeLeftNew: upTo(winters).map((winter) => leftNew.slice(0, winters - winter + 1)),
  };
}

/** Share of a life, 0 to 1; of one beyond reckoning all while any is left. */
const shareOf = (left: number, whole: number): number =>
  Number.isFinite(left / whole) && Number.isFinite(whole) ? Math.min(1, Math.max(0, left / whole)) : left > 0 ? 1 : 0;

/** What comes off to reach each position, by codes that tell assemblies apart, with hours and names. */
function takeOffsOf({ treeOf, plan }: PlanInputs, places: readonly (readonly [number, readonly PointOnRecord[]])[]) {
  const hours = new Map<string, number>();
  const names = new Map<string, string>();
  const ofPosition = new Map<number, string[]>();
  for (const [positionId, points] of places) {
    const { assemblyId, item } = points[0]!;
    const tree = treeOf(assemblyId);
    const reached = tree ? stepsToReach(tree, [item]) : null;
    const steps = reached?.ok
      ? reached.value.map(({ code, name, hours: its }) => ({ code, name, hours: its.typical }))
      : [{ code: 'open', name: '', hours: plan.openHours }];
    const codes = steps.map((step) => {
      const code = `${assemblyId} ${step.code}`;
      hours.set(code, step.hours);
      names.set(code, step.name);
      return code;
    });
    ofPosition.set(positionId, codes);
  }
  return { hours, names, ofPosition };
}

const soonest = (hours: readonly (number | null)[]): number | null => {
  const known = hours.filter((one) => one !== null);
  return known.length === 0 ? null : Math.min(...known);
};
