import type { Because, PlanFacts, VisitWork } from '../contract/plan.ts';
import { hoursOfVisit } from '../plan/visitHours.ts';
import { planWeeks, type WeeksPlan, type WeeksProgress } from '../plan/weeks/planWeeks.ts';
import { defaultWeekPrices, type WeekVisit } from '../plan/weeks/weeksShop.ts';
import { weekFrom as firstWeekFrom, weekOf } from '../plan/weeksOfWinter.ts';
import { costByWinter } from '../plan/winters/costByWinter.ts';
import { planWinters, type WintersPlan } from '../plan/winters/planWinters.ts';
import { type WhyThisWinter, whyThisWinter } from '../plan/winters/whyThisWinter.ts';
import type { VisitStands, VisitWeek } from '../shop/visit.ts';
import { addDays, type Day } from '../units/day.ts';

import { type MachineInPlan, machineInPlan, type PlanInputs, type SettledPlace } from './machineInPlan.ts';
import { becauseSaid, type Extra, toHundredth, workOfVisit } from './visitWork.ts';

/** A visit that stands when a plan is made. */
export type StandingVisit = {
  visitId: number;
  machineId: number;
  /** winters from the one being planned; below 0: an earlier one */
  winter: number;
  stands: VisitStands;
  weeks: readonly VisitWeek[];
  promisedOn: Day | null;
  work: VisitWork;
  /** done at the farm */
  atFarm: boolean;
};

/** What is known of a machine besides its forecasts. */
export type MachineAtShop = {
  machineId: number;
  /** days its customer is away or too busy, both included */
  away: readonly { fromOn: Day; toOn: Day }[];
  /** an open job: it is in already */
  job: { rebuildId: number; wantedBy: Day | null; extras: readonly Extra[]; partsOn: Day | null } | null;
  /** positions that must not be used, that a job renews, and that the customer does not want done */
  stopped: ReadonlySet<number>;
  onJob: ReadonlyMap<number, { ownHours: number; partsHours: number }>;
  refused: ReadonlySet<number>;
  /** work and parts of a repair that is chosen */
  chosen: ReadonlyMap<number, { ownHours: number; partsHours: number }>;
  /** findings on an assembly as a whole that forbid its use */
  stoppedWhole: readonly string[];
  /** runs this many times as many hours a year from today on */
  useTimes: number;
  /** where a visit at the farm goes to */
  farm: FarmAway;
};

/** A farm the shop may go out to. */
export type FarmAway = {
  /** names it: machines of one farm share the way */
  name: string;
  /** there and back [h]; null: nobody has said how far it is */
  wayHours: number | null;
};

/** The way there and back with setting up, once for a farm in a week [h]. */
export const farmCallHours = ({ wayHours }: FarmAway, { farmSetUpHours }: { farmSetUpHours: number }): number =>
  toHundredth((wayHours ?? 0) + farmSetUpHours);

export type ShopPlanFrom = PlanInputs & {
  machines: readonly MachineAtShop[];
  forecastOf: (machineId: number) => Parameters<typeof machineInPlan>[2];
  standing: readonly StandingVisit[];
  /** of the winter being planned */
  weeks: readonly { weekFrom: Day; benchHours: number }[];
};

/** A visit as the plan has it. */
export type ProposedVisit = {
  machineId: number;
  winter: number;
  /** the standing one it takes the place of; null: a new one */
  visitId: number | null;
  weeks: readonly VisitWeek[];
  work: VisitWork;
};

export type MachinePlanned = { machine: MachineInPlan; plan: WintersPlan; visits: readonly ProposedVisit[] };

export type ShopPlan = {
  /** proposed, and pinned ones with what is now to be done in them */
  visits: readonly ProposedVisit[];
  /** standing ones no plan has use for any more */
  gone: readonly number[];
  weeks: WeeksPlan;
  facts: PlanFacts;
};

/** How far a planning is. Machines first, each for itself; then the weeks. */
export type PlanTold = (step: 'machines' | 'weeks', share: number) => void;

/** The winters of every machine of the shop, then the weeks of the first. Same record, same plan. */
export async function shopPlan(
  from: ShopPlanFrom,
  told: PlanTold = () => {},
  goOn: (progress: WeeksProgress) => boolean | Promise<boolean> = () => true,
  kept: Map<string, MachinePlanned> = new Map(),
): Promise<ShopPlan> {
  const machines = [...from.machines].sort((a, b) => a.machineId - b.machineId);
  const planned: MachinePlanned[] = [];
  for (const [place, machine] of machines.entries()) {
    told('machines', place / machines.length);
    planned.push(await keptOr(kept, from, machine));
  }
  told('weeks', 0);
  const visits = planned.flatMap((one) => one.visits);
  visits.push(...unplacedParts(from, visits));
  const weeks = await planWeeks(weeksShopOf(from, visits), defaultWeekPrices, goOn);
  const placedAt = new Map(weeks.placed.map(({ visitId, ...at }) => [visitId, at]));
  const standing = new Map(from.standing.map((was) => [was.visitId, was]));
  const proposed = visits.map((visit): ProposedVisit => {
    const was = visit.visitId === null ? undefined : standing.get(visit.visitId);
    if (visit.winter === 0 && was && isHeld(was))
      return { ...visit, weeks: spread(mondaysOf(was), hoursOfVisit(visit.work)) };
    const at = visit.winter === 0 ? placedAt.get(nameOf(visit)) : undefined;
    return at ? { ...visit, weeks: weeksOf(from, visit.work, at) } : { ...visit, weeks: [] };
  });
  const used = new Set(proposed.flatMap(({ visitId }) => visitId ?? []));
  const gone = from.standing
    .filter(({ stands, winter, visitId }) => stands === 'proposed' && winter >= 0 && !used.has(visitId))
    .map(({ visitId }) => visitId);
  return { visits: proposed, gone, weeks, facts: factsOf(from, planned, weeks) };
}

/** What one machine's plan rests on does not change from one what-if to the next unless it is about that machine. */
async function keptOr(kept: Map<string, MachinePlanned>, from: ShopPlanFrom, its: MachineAtShop) {
  const key = JSON.stringify([its.machineId, its.useTimes, from.renewals, from.plan]);
  const before = kept.get(key);
  if (before) return before;
  const planned = await planMachine(from, its);
  kept.set(key, planned);
  return planned;
}

/** A fixed visit is as it was agreed or done; of several pinned ones of a winter each keeps its own work. */
const isFixed = (visit: StandingVisit, all: readonly StandingVisit[]): boolean =>
  visit.stands === 'agreed' ||
  visit.stands === 'done' ||
  (visit.stands === 'pinned' &&
    all.filter(({ winter, stands }) => winter === visit.winter && stands !== 'postponed').length > 1);

/** Winters of one machine with what is settled of it, its visits, and why each position is in the first. */
export async function planMachine(from: ShopPlanFrom, its: MachineAtShop): Promise<MachinePlanned> {
  const standing = from.standing.filter(({ machineId, winter }) => machineId === its.machineId && winter >= 0);
  const fixed = standing.filter((visit) => isFixed(visit, standing));
  const settled = settledOf(from, its, standing, fixed);
  const machine = machineInPlan(from, its.machineId, from.forecastOf(its.machineId), settled, its.useTimes);
  const best = await planWinters(machine.parts, machine.years);
  const fixedWinters = new Set(fixed.map(({ winter }) => winter));
  const extras = fixedWinters.has(0) ? [] : extrasOf(from, its);
  const left = await leftForAWinter(machine);
  const isCalledFor = its.stopped.size > 0 || its.job !== null || extras.length > 0 || isHeldToFirst(machine);
  const gain = left.cost.total - best.cost.total;
  const plan = !isCalledFor && gain < from.plan.leastGain ? left : best;
  const free = plan.visits.filter(({ winter }) => !fixedWinters.has(winter));
  const first = free.find(({ winter }) => winter === 0);
  const why = first ? await whyThisWinter(machine.parts, machine.years, { ...plan, visits: [first] }) : [];
  const idle = its.stopped.size + its.stoppedWhole.length;
  const risk = Math.max(0, gain) + idle * from.plan.breakdownHours;
  const isPutOff = standing.some(({ winter, stands }) => winter === 0 && stands === 'postponed');
  const wanted = [...free];
  if (!first && extras.length > 0 && !isPutOff) wanted.unshift({ winter: 0, partIds: [], takeOffs: [], hours: 0 });
  const visits = [];
  for (const visit of wanted) {
    const isFirst = visit.winter === 0;
    const becauseOf = (positionId: number) =>
      isByHand(standing, visit.winter, positionId)
        ? becauseSaid('by-hand')
        : because(machine, its, why, visit.winter, positionId);
    const rest = isFirst ? { extras, risk, rebuildId: its.job?.rebuildId ?? null } : {};
    const takesPlaceOf = standing.find(
      ({ winter, stands, visitId }) =>
        winter === visit.winter &&
        (stands === 'proposed' || stands === 'pinned') &&
        !fixed.some((one) => one.visitId === visitId),
    );
    const work = workOfVisit(machine, visit.partIds, becauseOf, rest);
    visits.push({
      machineId: its.machineId,
      winter: visit.winter,
      visitId: takesPlaceOf?.visitId ?? null,
      weeks: [],
      work,
    });
  }
  return { machine, plan, visits };
}

/** The manager put a position into the machine's visit of a winter himself. */
const isByHand = (standing: readonly StandingVisit[], winter: number, positionId: number): boolean =>
  standing.some(
    (visit) =>
      visit.winter === winter &&
      visit.work.positions.some((at) => at.positionId === positionId && at.because.reason === 'by-hand'),
  );

/** Hours of a job's work at no position, and of findings that forbid use of an assembly as a whole. */
const extrasOf = ({ plan }: ShopPlanFrom, its: MachineAtShop): Extra[] => [
  ...(its.job?.extras ?? []),
  ...its.stoppedWhole.map((what) => ({ what, hours: plan.openHours })),
];

function settledOf(
  { shop }: ShopPlanFrom,
  its: MachineAtShop,
  standing: readonly StandingVisit[],
  fixed: readonly StandingVisit[],
): Map<number, SettledPlace> {
  const positionIds = new Set(
    shop.life.points.filter(({ machineId }) => machineId === its.machineId).map(({ positionId }) => positionId),
  );
  const fixedWinters = new Set(fixed.map(({ winter }) => winter));
  const putOff = new Set(standing.filter(({ stands }) => stands === 'postponed').map(({ winter }) => winter));
  return new Map(
    [...positionIds].map((positionId) => {
      const held = new Map<number, boolean>();
      for (const winter of putOff) held.set(winter, false);
      for (const winter of fixedWinters) held.set(winter, false);
      for (const { winter, stands, work } of fixed)
        if (stands !== 'done' && work.positions.some((at) => at.positionId === positionId)) held.set(winter, true);
      // what the manager put in by hand stays in
      for (const { winter } of standing)
        if (!held.has(winter) && isByHand(standing, winter, positionId)) held.set(winter, true);
      if (its.refused.has(positionId) && !held.has(0)) held.set(0, false);
      if ((its.stopped.has(positionId) || its.onJob.has(positionId)) && !held.has(0)) held.set(0, true);
      return [positionId, { work: its.onJob.get(positionId) ?? its.chosen.get(positionId), held }];
    }),
  );
}

/** The best plan with nothing done in the first winter: what leaving its visit costs is told against it. */
const leftForAWinter = (machine: MachineInPlan): Promise<WintersPlan> =>
  planWinters(
    machine.parts.map((part) => ({ ...part, held: new Map([...(part.held ?? []), [0, false] as const]) })),
    machine.years,
  );

const isHeldToFirst = ({ parts }: MachineInPlan): boolean => parts.some(({ held }) => held?.get(0) === true);

/** Life left below which a part is in for its own sake. */
const NEAR_ITS_END = 0.15;
/** Chance of passing its limit before the next winter above which it is. */
const LIKELY_PAST = 0.25;

function because(
  machine: MachineInPlan,
  its: MachineAtShop,
  why: readonly WhyThisWinter[],
  winter: number,
  positionId: number,
): Because {
  const part = machine.parts.find(({ partId }) => partId === positionId)!;
  const place = machine.places.find((one) => one.positionId === positionId)!;
  const known = why.find((one) => one.partId === positionId && one.winter === winter);
  const chancePast = part.chancePast[winter] ?? 0;
  const lifeLeft = part.lifeLeft[winter] ?? 0;
  const own = chancePast > LIKELY_PAST || lifeLeft < NEAR_ITS_END;
  const said = winter === 0 && (its.stopped.has(positionId) ? 'finding' : its.onJob.has(positionId) ? 'job' : null);
  return {
    reason: said || (own || (known && known.openedWith.length === 0) ? 'limit' : 'with-it'),
    lifeLeft: toHundredth(lifeLeft),
    goodUntilHours: place.goodUntilHours === null ? null : Math.round(place.goodUntilHours),
    chancePast: toHundredth(chancePast),
    openedWith: [...(known?.openedWith ?? [])],
    leavingItCosts: known ? toHundredth(known.leavingItCosts) : null,
    moreStripDownHours: known ? toHundredth(known.moreStripDownHours) : null,
    moreBreakdown: known ? toHundredth(known.moreBreakdown) : null,
  };
}

// ---- weeks

const nameOf = ({ visitId, machineId }: { visitId: number | null; machineId: number }): string =>
  // before it is kept a visit has no id: its machine names it, and it has only one of these
  visitId === null ? `machine ${String(machineId).padStart(8, '0')}` : `visit ${String(visitId).padStart(8, '0')}`;

/** Nobody but who put it there moves it. */
const isHeld = ({ stands, weeks }: StandingVisit): boolean =>
  weeks.length > 0 && (stands === 'agreed' || stands === 'pinned' || stands === 'done');

const mondaysOf = ({ weeks }: Pick<StandingVisit, 'weeks'>): Day[] => weeks.map(({ weekFrom }) => weekFrom);

/** A visit split off another keeps its own work, and may have no week yet. */
const unplacedParts = ({ standing }: ShopPlanFrom, visits: readonly ProposedVisit[]): ProposedVisit[] => {
  const taken = new Set(visits.flatMap(({ visitId }) => visitId ?? []));
  return standing.filter(
    ({ visitId, winter, stands, weeks }) =>
      winter === 0 && stands === 'pinned' && weeks.length === 0 && !taken.has(visitId),
  );
};

/** Everything that finds its week in the first winter: what is proposed, and what is settled in one of its weeks. */
function weeksShopOf(from: ShopPlanFrom, visits: readonly ProposedVisit[]) {
  const standing = from.standing.filter(({ winter }) => winter === 0);
  const proposed = visits.filter(({ winter }) => winter === 0);
  const taken = new Set(proposed.flatMap(({ visitId }) => visitId ?? []));
  const settled = standing.filter((was) => !taken.has(was.visitId) && isHeld(was));
  const mondays = new Set(mondaysOf(from));
  const all = [
    ...proposed.map((visit) => ({ ...visit, was: standing.find(({ visitId }) => visitId === visit.visitId) ?? null })),
    ...settled.map((was) => ({ ...was, was })),
    // held on days that are no week of this winter, it stays there, and takes none of its hours
  ].filter(({ was }) => !was || !isHeld(was) || mondaysOf(was).some((monday) => mondays.has(monday)));
  return {
    weeks: from.weeks.map(({ benchHours }) => ({ benchHours, mostOverload: from.plan.overHours })),
    setUpHours: new Map(from.machines.map(({ farm }) => [farm.name, farmCallHours(farm, from.plan)])),
    visits: all.map(({ was, ...visit }) => weekVisit(from, visit, was)),
  };
}

/** A machine stands in pieces no longer than so many weeks. */
const MOST_PIECES = 3;

function weekVisit(
  from: ShopPlanFrom,
  visit: { visitId: number | null; machineId: number; work: VisitWork },
  was: StandingVisit | null,
): WeekVisit {
  const { shop, plan, weeks } = from;
  const mondays = mondaysOf(from);
  const its = from.machines.find(({ machineId }) => machineId === visit.machineId);
  const stood = was
    ? mondaysOf(was).flatMap((monday) => (mondays.includes(monday) ? [mondays.indexOf(monday)] : []))
    : [];
  const held = was && isHeld(was) ? { week: stood[0]!, pieces: stood.length } : null;
  const hours = Math.max(0.1, hoursOfVisit(visit.work) * (held ? held.pieces / was!.weeks.length : 1));
  const alreadyIn = visit.work.rebuildId !== null;
  const needsParts = visit.work.positions.some(({ partsHours }) => partsHours > 0);
  const promised = was?.promisedOn ?? its?.job?.wantedBy ?? null;
  const most = Math.max(...weeks.map(({ benchHours }) => benchHours), 1);
  return {
    visitId: nameOf(visit),
    hours,
    earliestWeek: alreadyIn
      ? weekOf(mondays, its?.job?.partsOn ?? shop.asOf)
      : firstWeekFrom(mondays, addDays(shop.asOf, Math.max(plan.leadDays, needsParts ? plan.partsLeadDays : 0))),
    awayWeeks: new Set(awayWeeks(mondays, its?.away ?? [])),
    promisedWeek: promised === null ? null : weekOf(mondays, promised),
    risk: visit.work.risk,
    alreadyIn,
    held,
    lastPlannedWeek: stood[0] ?? null,
    mostPieces: hours <= most / 2 ? 1 : Math.min(MOST_PIECES, Math.ceil(hours / most) + 1),
    farmCall: was?.atFarm && its ? its.farm.name : null,
  };
}

/** Weeks with a working day, Monday to Friday, in days somebody is away. */
export const awayWeeks = (mondays: readonly Day[], away: readonly { fromOn: Day; toOn: Day }[]): number[] =>
  mondays.flatMap((monday, week) =>
    away.some(({ fromOn, toOn }) => fromOn <= addDays(monday, 4) && toOn >= monday) ? [week] : [],
  );

function weeksOf(
  { weeks }: ShopPlanFrom,
  work: VisitWork,
  { week, pieces }: { week: number; pieces: number },
): VisitWeek[] {
  return spread(
    weeks.slice(week, week + pieces).map(({ weekFrom }) => weekFrom),
    hoursOfVisit(work),
  );
}

/** Bench hours in even pieces over some weeks. */
export const spread = (mondays: readonly Day[], hours: number): VisitWeek[] =>
  mondays.map((weekFrom) => ({ weekFrom, benchHours: toHundredth(hours / mondays.length) }));

function factsOf(from: ShopPlanFrom, planned: readonly MachinePlanned[], weeks: WeeksPlan): PlanFacts {
  return {
    asOf: from.shop.asOf,
    status: weeks.status,
    harm: weeks.harm,
    trouble: weeks.trouble,
    readings: from.shop.life.points.reduce((sum, point) => sum + from.shop.ofPoint(point).ownReadings, 0),
    without: planned.filter(({ machine }) => machine.parts.length === 0).map(({ machine }) => machine.machineId),
    machines: planned.filter(({ machine }) => machine.parts.length > 0).map(machineFacts),
  };
}

/** What one machine's plan of winters comes to. */
export const machineFacts = ({
  machine,
  plan,
}: Pick<MachinePlanned, 'machine' | 'plan'>): PlanFacts['machines'][number] => ({
  machineId: machine.machineId,
  total: toHundredth(plan.cost.total),
  winters: costByWinter(machine.parts, machine.years, plan.renewIn).map((cost) => ({
    lifeThrownAway: toHundredth(cost.lifeThrownAway),
    breakdowns: Math.round(cost.breakdowns * 1e4) / 1e4,
    breakdownCost: toHundredth(cost.breakdownCost),
  })),
});
