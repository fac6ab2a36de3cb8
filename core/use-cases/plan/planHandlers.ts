import type { Handler } from '../../contract/operation.ts';
import type {
  PlanChange,
  planAdd,
  planAgree,
  planAtFarm,
  planBook,
  planDone,
  planMove,
  planPin,
  planPostpone,
  planRead,
  planSplit,
  VisitWork,
} from '../../contract/plan.ts';
import { zPlanFacts, zVisitWork } from '../../contract/plan.ts';
import { RefusedError } from '../../outcome.ts';
import { hoursOfVisit } from '../../plan/visitHours.ts';
import { mondayOf } from '../../plan/weeksOfWinter.ts';
import { writeEntry } from '../../record/entry.ts';
import { machineOrRefuse } from '../../record/machineStore.ts';
import {
  changeVisit,
  insertPlan,
  insertVisit,
  lastPlan,
  listVisits,
  strikeVisit,
  type VisitFacts,
  type VisitRow,
} from '../../record/planStore.ts';
import type { ReadableRecord, WritableRecord } from '../../record/recordFile.ts';
import { readSettings } from '../../record/settingsStore.ts';
import { type Winter, wintersFrom } from '../../shop/winter.ts';
import { addDays, type Day } from '../../units/day.ts';
import { type MachineInPlan, machineInPlan } from '../../way/machineInPlan.ts';
import {
  type MachineAtShop,
  type MachinePlanned,
  machineFacts,
  planMachine,
  type ShopPlanFrom,
  type StandingVisit,
  spread,
} from '../../way/shopPlan.ts';
import { becauseSaid, workOfVisit } from '../../way/visitWork.ts';
import { refuseField } from '../asked.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { keepForecasts, standingForecasts } from '../keepForecasts.ts';
import { shopAround } from '../shopNow.ts';
import { planFrom, weeksPlanned, yearOfWinter } from './planFrom.ts';
import { farmOfVisit, loadedWeeks, planSheet } from './planSheet.ts';

export const planReadHandler: Handler<typeof planRead, Context> = (context) => planSheet(context);

/** @throws RefusedError unknown-visit; visit-done */
function visitOrRefuse(record: ReadableRecord, visitId: number): VisitRow & { work: VisitWork } {
  const row = listVisits(record).find(({ id }) => id === visitId);
  if (!row) throw new RefusedError({ code: 'unknown-visit', facts: { path: 'visitId', visitId } });
  if (row.stands === 'done') throw new RefusedError({ code: 'visit-done', facts: { path: 'visitId' } });
  return { ...row, work: zVisitWork.parse(row.work) };
}

/** What was agreed is not changed by the way. @throws RefusedError visit-agreed {saidBy} unless `sure` */
function refuseAgreed({ stands, saidBy }: VisitRow, sure: boolean): void {
  if (stands === 'agreed' && !sure) throw new RefusedError({ code: 'visit-agreed', facts: { saidBy } });
}

const winterNow = (context: Context): Winter => wintersFrom(readSettings(recordOf(context)), context.today(), 1)[0]!;

/** Mondays of so many weeks in a row. @throws RefusedError not-as-expected: no week of this winter */
function weeksInRow(context: Context, weekFrom: Day, pieces: number): Day[] {
  const mondays = weeksPlanned(recordOf(context), winterNow(context)).map((week) => week.weekFrom);
  const first = mondays.indexOf(weekFrom);
  if (first < 0 || first + pieces > mondays.length)
    refuseField(
      first < 0 ? 'weekFrom' : 'pieces',
      `the Monday of a week of this winter, ${mondays[0]} to ${mondays.at(-1)}`,
    );
  return mondays.slice(first, first + pieces);
}

/** Load of the winter's weeks: what a change is judged by. */
function loadNow(context: Context) {
  const record = recordOf(context);
  const winter = winterNow(context);
  const year = yearOfWinter(winter);
  const farmOf = farmOfVisit(record, context.today());
  const visits = listVisits(record)
    .filter(({ winterYear }) => winterYear === year)
    .map((row) => ({ ...row, weeks: [...row.weeks], farm: farmOf(row) }));
  const weeks = loadedWeeks(record, winter, visits);
  const mondays = weeks.map(({ weekFrom }) => weekFrom);
  const late = visits.map(({ weeks: its, promisedOn, stands }) => {
    const last = its.at(-1)?.weekFrom;
    if (!last || !promisedOn || stands === 'postponed') return 0;
    return Math.max(0, mondays.indexOf(last) - mondays.findLastIndex((monday) => monday <= promisedOn));
  });
  return {
    benchHours: weeks.reduce((sum, { hours }) => sum + hours, 0),
    overHours: weeks.reduce((sum, { overHours }) => sum + overHours, 0),
    weeksLate: late.reduce((sum, one) => sum + one, 0),
  };
}

/** Writes a change in one entry, and says what it costs. */
function changing(
  context: Context,
  [what, by]: readonly [string, string],
  write: (w: WritableRecord, entryId: number) => number,
  costs: { breakdownCost: number; total: number } = { breakdownCost: 0, total: 0 },
): PlanChange {
  const before = loadNow(context);
  const visitId = writeEntry(recordOf(context), entryNow(context, what, by), write);
  const after = loadNow(context);
  return {
    visitId,
    benchHours: after.benchHours - before.benchHours,
    overHours: after.overHours - before.overHours,
    weeksLate: after.weeksLate - before.weeksLate,
    ...costs,
  };
}

export const planMoveHandler: Handler<typeof planMove, Context> = (
  context,
  { visitId, weekFrom, pieces, sure, by },
) => {
  const row = visitOrRefuse(recordOf(context), visitId);
  refuseAgreed(row, sure);
  const weeks = weekFrom === null ? [] : spread(weeksInRow(context, weekFrom, pieces), hoursOfVisit(row.work));
  const stands = row.stands === 'agreed' && weekFrom !== null ? 'agreed' : weekFrom === null ? 'proposed' : 'pinned';
  return changing(context, ['plan/move', by], (w, entryId) => {
    changeVisit(w, entryId, row.rowId, { weeks, stands }, 'moved');
    return visitId;
  });
};

export const planPinHandler: Handler<typeof planPin, Context> = (context, { visitId, pinned, by }) => {
  const row = visitOrRefuse(recordOf(context), visitId);
  if (pinned && row.weeks.length === 0) throw new RefusedError({ code: 'visit-has-no-week' });
  const stands = pinned ? 'pinned' : 'proposed';
  return changing(context, ['plan/pin', by], (w, entryId) => {
    changeVisit(w, entryId, row.rowId, { stands, saidBy: '' }, stands);
    return visitId;
  });
};

export const planAgreeHandler: Handler<typeof planAgree, Context> = (
  context,
  { visitId, saidBy, promisedOn, note, by },
) => {
  const row = visitOrRefuse(recordOf(context), visitId);
  if (row.weeks.length === 0) throw new RefusedError({ code: 'visit-has-no-week' });
  const standing = standingForecasts(shopAround(context, row.machineId), row.machineId);
  return changing(context, ['plan/agree', by], (w, entryId) => {
    keepForecasts(w, standing, { why: 'plan', entryId }, context.now());
    changeVisit(w, entryId, row.rowId, { stands: 'agreed', saidBy, promisedOn, note }, 'agreed');
    return visitId;
  });
};

export const planDoneHandler: Handler<typeof planDone, Context> = (context, { visitId, by }) => {
  const row = visitOrRefuse(recordOf(context), visitId);
  return changing(context, ['plan/done', by], (w, entryId) => {
    changeVisit(w, entryId, row.rowId, { stands: 'done' }, 'done');
    return visitId;
  });
};

const breakdownsOf = ({ winters }: ReturnType<typeof machineFacts>): number =>
  winters.reduce((sum, { breakdownCost }) => sum + breakdownCost, 0);

/** The machine's winters planned as they stand, and with its visits as they would stand: what the change costs. */
async function plannedAnew(from: ShopPlanFrom, its: MachineAtShop, standing: readonly StandingVisit[]) {
  const before = machineFacts(await planMachine(from, its));
  const planned = await planMachine({ ...from, standing }, its);
  const after = machineFacts(planned);
  const costs = {
    breakdownCost: breakdownsOf(after) - breakdownsOf(before),
    total: after.total - before.total,
  };
  return { planned, costs };
}

/** Lays the machine's later winters out anew, and tells the plan's figures of it. */
function writeLaterWinters(
  w: WritableRecord,
  entryId: number,
  from: ShopPlanFrom,
  { machine, plan, visits }: MachinePlanned,
): void {
  const { machineId } = machine;
  const rows = listVisits(w).filter((row) => row.machineId === machineId && row.stands === 'proposed');
  const later = visits.filter(({ winter }) => winter > 0);
  const years = later.map(({ winter }) => yearOfWinter(from.winters[winter]!));
  const firstYear = yearOfWinter(from.winters[0]!);
  later.forEach(({ work }, place) => {
    const row = rows.find(({ winterYear }) => winterYear === years[place]);
    if (row) changeVisit(w, entryId, row.rowId, { work }, 'planned again');
    else insertVisit(w, entryId, { ...ofNobody(machineId, years[place]!), stands: 'proposed', weeks: [], work });
  });
  for (const row of rows)
    if (row.winterYear > firstYear && !years.includes(row.winterYear))
      strikeVisit(w, entryId, row.rowId, 'planned again');
  const last = lastPlan(w);
  if (!last) return;
  const facts = zPlanFacts.parse(last.facts);
  const others = facts.machines.filter((one) => one.machineId !== machineId);
  const machines = [...others, machineFacts({ machine, plan })].sort((a, b) => a.machineId - b.machineId);
  insertPlan(w, entryId, { madeOn: last.madeOn, winterYear: last.winterYear, facts: { ...facts, machines } });
}

const ofNobody = (machineId: number, winterYear: number): Omit<VisitFacts, 'stands' | 'weeks' | 'work'> => ({
  ...{ machineId, winterYear, promisedOn: null, saidBy: '', note: '', atFarm: false },
});

const atShop = (from: ShopPlanFrom, machineId: number): MachineAtShop =>
  from.machines.find((machine) => machine.machineId === machineId)!;

export const planPostponeHandler: Handler<typeof planPostpone, Context> = async (
  context,
  { visitId, reason, sure, by },
) => {
  const record = recordOf(context);
  const row = visitOrRefuse(record, visitId);
  refuseAgreed(row, sure);
  const from = planFrom(record, shopAround(context, row.machineId));
  const standing = from.standing.map((one) =>
    one.visitId === visitId ? { ...one, stands: 'postponed' as const, weeks: [] } : one,
  );
  const { planned, costs } = await plannedAnew(from, atShop(from, row.machineId), standing);
  return changing(
    context,
    ['plan/postpone', by],
    (w, entryId) => {
      changeVisit(w, entryId, row.rowId, { stands: 'postponed', weeks: [], promisedOn: null, note: reason }, reason);
      writeLaterWinters(w, entryId, from, planned);
      return visitId;
    },
    costs,
  );
};

/** The machine with some positions in the plan whatever is forecast of them. */
function machineWith(from: ShopPlanFrom, machineId: number, positionIds: readonly number[]): MachineInPlan {
  const its = atShop(from, machineId);
  const held = new Map([[0, true]]);
  const settled = new Map(
    positionIds.map((id) => [id, { held, work: its.onJob.get(id) ?? its.chosen.get(id) }] as const),
  );
  return machineInPlan(from, machineId, from.forecastOf(machineId), settled, its.useTimes);
}

/** @throws RefusedError not-as-expected: positions of the visit, and not all of them */
export const planSplitHandler: Handler<typeof planSplit, Context> = (context, { visitId, positionIds, sure, by }) => {
  const record = recordOf(context);
  const row = visitOrRefuse(record, visitId);
  refuseAgreed(row, sure);
  const all = row.work.positions.map(({ positionId }) => positionId);
  const rest = all.filter((id) => !positionIds.includes(id));
  if (positionIds.some((id) => !all.includes(id)) || (rest.length === 0 && row.work.extras.length === 0))
    refuseField('positionIds', 'some positions of the visit, and not all of its work');
  const from = planFrom(record, shopAround(context, row.machineId));
  const machine = machineWith(from, row.machineId, all);
  const becauseOf = (id: number) => row.work.positions.find(({ positionId }) => positionId === id)!.because;
  const parted = (ids: readonly number[], extras: VisitWork['extras']) => {
    const work = workOfVisit(machine, ids, becauseOf, { extras, rebuildId: row.work.rebuildId });
    const positions = row.work.positions.filter(({ positionId }) => ids.includes(positionId));
    return { ...work, positions, risk: (row.work.risk * Math.max(1, ids.length)) / Math.max(1, all.length) };
  };
  const [stays, goes] = [parted(rest, row.work.extras), parted([...positionIds], [])];
  const more = hoursOfVisit(stays) + hoursOfVisit(goes) - hoursOfVisit(row.work);
  const stands = row.stands === 'agreed' ? 'agreed' : 'pinned';
  const weeks = spread(
    row.weeks.map(({ weekFrom }) => weekFrom),
    hoursOfVisit(stays),
  );
  return changing(
    context,
    ['plan/split', by],
    (w, entryId) => {
      changeVisit(w, entryId, row.rowId, { work: stays, weeks, stands }, 'split');
      const second = { ...ofNobody(row.machineId, row.winterYear), stands: 'pinned' as const, atFarm: row.atFarm };
      return insertVisit(w, entryId, { ...second, weeks: [], work: goes });
    },
    { breakdownCost: 0, total: more },
  );
};

/** @throws RefusedError unknown-machine; unknown-position; visit-there-already */
export const planAddHandler: Handler<typeof planAdd, Context> = async (
  context,
  { machineId, positionIds, weekFrom, by },
) => {
  const record = recordOf(context);
  machineOrRefuse(record, machineId);
  const now = shopAround(context, machineId);
  const here = new Set(
    now.shop.life.points.flatMap((point) => (point.machineId === machineId ? [point.positionId] : [])),
  );
  const unknown = positionIds.find((id) => !here.has(id));
  if (unknown !== undefined)
    throw new RefusedError({ code: 'unknown-position', facts: { path: 'positionIds', positionId: unknown } });
  const winterYear = yearOfWinter(winterNow(context));
  const rows = listVisits(record).filter((row) => row.machineId === machineId && row.winterYear === winterYear);
  if (rows.some(({ stands }) => stands !== 'postponed')) throw new RefusedError({ code: 'visit-there-already' });
  const from = planFrom(record, now);
  const machine = machineWith(from, machineId, positionIds);
  const work = workOfVisit(machine, positionIds, () => becauseSaid('by-hand'));
  const weeks = weekFrom === null ? [] : spread(weeksInRow(context, weekFrom, 1), hoursOfVisit(work));
  const visit = {
    ...{ visitId: 0, machineId, winter: 0, promisedOn: null, atFarm: false },
    stands: 'pinned' as const,
    weeks,
    work,
  };
  const others = from.standing.filter((one) => !(one.machineId === machineId && one.winter === 0));
  const { planned, costs } = await plannedAnew(from, atShop(from, machineId), [...others, visit]);
  return changing(
    context,
    ['plan/add', by],
    (w, entryId) => {
      for (const row of rows) strikeVisit(w, entryId, row.rowId, 'on the plan again');
      const id = insertVisit(w, entryId, { ...ofNobody(machineId, winterYear), stands: 'pinned', weeks, work });
      writeLaterWinters(w, entryId, from, planned);
      return id;
    },
    costs,
  );
};

/** @throws RefusedError unknown-visit; visit-done */
export const planAtFarmHandler: Handler<typeof planAtFarm, Context> = (context, { visitId, atFarm, by }) => {
  const row = visitOrRefuse(recordOf(context), visitId);
  return changing(context, ['plan/atFarm', by], (w, entryId) => {
    if (row.atFarm !== atFarm) changeVisit(w, entryId, row.rowId, { atFarm }, atFarm ? 'at the farm' : 'in the shop');
    return visitId;
  });
};

/**
 * The visit of this winter goes into the week of the day that was agreed. Where the plan has none, the machine is put on with
 * what its winters would have done now, and with nothing but looking where they have nothing.
 * @throws RefusedError unknown-machine; visit-done; not-as-expected: a day of no week of this winter
 */
export const planBookHandler: Handler<typeof planBook, Context> = async (
  context,
  { machineId, on, saidBy, note, by },
) => {
  const record = recordOf(context);
  machineOrRefuse(record, machineId);
  const mondays = weeksPlanned(record, winterNow(context)).map((week) => week.weekFrom);
  const weekFrom = mondayOf(on);
  if (!mondays.includes(weekFrom))
    refuseField('on', `a day in a week of this winter, ${mondays[0]} to ${addDays(mondays.at(-1)!, 6)}`);
  const winterYear = yearOfWinter(winterNow(context));
  const rows = listVisits(record).filter((row) => row.machineId === machineId && row.winterYear === winterYear);
  if (rows.some(({ stands }) => stands === 'done'))
    throw new RefusedError({ code: 'visit-done', facts: { path: 'machineId' } });
  const open = rows.find(({ stands }) => stands !== 'postponed');
  const now = shopAround(context, machineId);
  const standing = standingForecasts(now, machineId);
  const work = open ? zVisitWork.parse(open.work) : await workNow(planFrom(record, now), machineId);
  const weeks = spread([weekFrom], hoursOfVisit(work));
  const agreed = { weeks, stands: 'agreed' as const, saidBy, note };
  return changing(context, ['plan/book', by], (w, entryId) => {
    keepForecasts(w, standing, { why: 'plan', entryId }, context.now());
    if (open) {
      changeVisit(w, entryId, open.rowId, agreed, 'agreed');
      return open.id;
    }
    for (const row of rows) strikeVisit(w, entryId, row.rowId, 'on the plan again');
    return insertVisit(w, entryId, { ...ofNobody(machineId, winterYear), ...agreed, work });
  });
};

/** What the machine's own winters would have done in this one, were it not put off. */
async function workNow(from: ShopPlanFrom, machineId: number): Promise<VisitWork> {
  const its = atShop(from, machineId);
  const standing = from.standing.filter((one) => one.machineId !== machineId);
  const { machine, visits } = await planMachine({ ...from, standing }, its);
  return visits.find(({ winter }) => winter === 0)?.work ?? workOfVisit(machine, [], () => becauseSaid('by-hand'));
}
