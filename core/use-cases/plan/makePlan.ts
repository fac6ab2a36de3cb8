import type { z } from 'zod';
import type { PlanAccount, PlanSum, zPlanAsk } from '../../contract/plan.ts';
import { RefusedError } from '../../outcome.ts';
import { writeEntry } from '../../record/entry.ts';
import { loadShopLife } from '../../record/loadShopLife.ts';
import { machineNames } from '../../record/machineStore.ts';
import {
  changeVisit,
  insertPlan,
  insertVisit,
  listVisits,
  strikeVisit,
  type VisitRow,
} from '../../record/planStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import type { Day } from '../../units/day.ts';
import { learnedFrom } from '../../way/learning.ts';
import { settingsOf } from '../../way/settingsOf.ts';
import {
  type MachinePlanned,
  type ProposedVisit,
  type ShopPlan,
  type ShopPlanFrom,
  shopPlan,
} from '../../way/shopPlan.ts';
import { learnClasses, seriesOfShop } from '../../way.ts';
import { learningKept } from '../learning/shopLearning.ts';
import { type ShopNow, shopNowFrom } from '../shopNow.ts';
import { planFrom, yearOfWinter } from './planFrom.ts';

export type PlanAsk = z.output<typeof zPlanAsk>;

type Telling = {
  /** throws where the work is to be broken off */
  told: (step: string, share: number) => void;
  /** false: the search ends with the best so far */
  searched: (share: number) => boolean;
};

/**
 * Plans the winter and saves it, or tries something and sets both plans beside each other, nothing saved.
 * @throws RefusedError no-machines; plan-overtaken: somebody changed a visit meanwhile
 */
export async function makePlan(
  record: ReadableRecord,
  { asOf, madeAt, ask }: { asOf: Day; madeAt: string; ask: PlanAsk },
  { told, searched }: Telling,
): Promise<PlanAccount> {
  const now = nowOfRecord(record, asOf);
  if (now.shop.life.machines.length === 0) throw new RefusedError({ code: 'no-machines' });
  const standing = listVisits(record);
  const names = machineNames(record);
  const kept = new Map<string, MachinePlanned>();
  const run = (from: ShopPlanFrom) =>
    shopPlan(from, told, ({ step, mostSteps }) => searched(mostSteps > 0 ? step / mostSteps : 1), kept);
  const from = planFrom(record, now);
  const plan = await run(from);
  if (ask.whatIf) {
    const fromTried = planFrom(record, now, ask.whatIf);
    const tried = await run(fromTried);
    return {
      ...{ saved: false, status: tried.facts.status, gap: tried.facts.harm.gap },
      ...{ now: sumOf(fromTried, tried), before: sumOf(from, plan) },
      changed: changedWeeks(firstWeeks(from, plan.visits), firstWeeks(fromTried, tried.visits), names),
    };
  }
  told('writing', 0);
  savePlan(record, { madeAt, madeBy: ask.by, what: 'plan/propose' }, from, plan, standing);
  const year = yearOfWinter(from.winters[0]!);
  const stood = standing
    .filter(({ winterYear, stands }) => winterYear === year && stands !== 'postponed')
    .map(({ machineId, weeks }) => ({ machineId, weekFrom: weeks[0]?.weekFrom ?? null }));
  return {
    ...{ saved: true, status: plan.facts.status, gap: plan.facts.harm.gap, now: sumOf(from, plan), before: null },
    changed: changedWeeks(stood, firstWeeks(from, plan.visits), names),
  };
}

/** The shop as its record has it, for a thread of its own: classes as kept while they hold, else learned again. */
function nowOfRecord(record: ReadableRecord, asOf: Day): ShopNow {
  const life = loadShopLife(record, { asOf });
  const before = learningKept(record);
  const shopBefore = seriesOfShop(life, asOf, before?.habit ?? null);
  const holds = before?.fingerprint === learnedFrom(shopBefore, settingsOf(life)).fingerprint;
  const shop = holds ? shopBefore : seriesOfShop(life, asOf);
  const learning = holds && before ? before : learnClasses(shop);
  return shopNowFrom(shop, learning);
}

function savePlan(
  record: ReadableRecord,
  made: { madeAt: string; madeBy: string; what: string },
  from: ShopPlanFrom,
  plan: ShopPlan,
  standing: readonly VisitRow[],
): void {
  writeEntry(record, made, (w, entryId) => {
    if (JSON.stringify(listVisits(w)) !== JSON.stringify(standing)) throw new RefusedError({ code: 'plan-overtaken' });
    const rowOf = new Map(standing.map((row) => [row.id, row]));
    for (const { machineId, winter, visitId, weeks, work } of plan.visits) {
      const row = visitId === null ? undefined : rowOf.get(visitId);
      if (!row) {
        const winterYear = yearOfWinter(from.winters[winter]!);
        const rest = { promisedOn: null, saidBy: '', note: '', atFarm: false };
        insertVisit(w, entryId, { machineId, winterYear, stands: 'proposed', weeks, work, ...rest });
      } else if (JSON.stringify([row.weeks, row.work]) !== JSON.stringify([weeks, work])) {
        changeVisit(w, entryId, row.rowId, { weeks, work }, 'planned again');
      }
    }
    for (const visitId of plan.gone) strikeVisit(w, entryId, rowOf.get(visitId)!.rowId, 'planned again');
    const winterYear = yearOfWinter(from.winters[0]!);
    insertPlan(w, entryId, { madeOn: from.shop.asOf, winterYear, facts: plan.facts });
  });
}

type FirstWeek = { machineId: number; weekFrom: Day | null };

/** Week each visit of the first winter begins in, what is settled included. */
function firstWeeks(from: ShopPlanFrom, visits: readonly ProposedVisit[]): FirstWeek[] {
  const taken = new Set(visits.flatMap(({ visitId }) => visitId ?? []));
  const settled = from.standing.filter(
    ({ winter, stands, visitId }) =>
      winter === 0 && stands !== 'postponed' && stands !== 'proposed' && !taken.has(visitId),
  );
  return [...visits.filter(({ winter }) => winter === 0), ...settled].map(({ machineId, weeks }) => ({
    machineId,
    weekFrom: weeks[0]?.weekFrom ?? null,
  }));
}

function changedWeeks(
  before: readonly FirstWeek[],
  after: readonly FirstWeek[],
  names: ReadonlyMap<number, string>,
): PlanAccount['changed'] {
  const was = new Map(before.map(({ machineId, weekFrom }) => [machineId, weekFrom]));
  const is = new Map(after.map(({ machineId, weekFrom }) => [machineId, weekFrom]));
  return [...new Set([...was.keys(), ...is.keys()])]
    .sort((a, b) => a - b)
    .flatMap((machineId) => {
      const [from, to] = [was.get(machineId) ?? null, is.get(machineId) ?? null];
      if (was.has(machineId) && is.has(machineId) && from === to) return [];
      const what = !was.has(machineId) ? 'added' : !is.has(machineId) ? 'gone' : to === null ? 'no-room' : 'moved';
      return [{ machineId, machine: names.get(machineId) ?? '', from, to, what } as const];
    });
}

/** A plan summed up: the winter being planned, and the cost of all that are. */
function sumOf(from: ShopPlanFrom, { visits, weeks, facts }: ShopPlan): PlanSum {
  const first = visits.filter(({ winter }) => winter === 0);
  const sum = (numbers: readonly number[]) => numbers.reduce((so, one) => so + one, 0);
  const seasons = facts.machines.flatMap(({ winters }) => winters[0] ?? []);
  return {
    visits: firstWeeks(from, visits).length,
    hours: sum(weeks.weeks.map(({ hours }) => hours)),
    ofHours: sum(weeks.weeks.map(({ benchHours }) => benchHours)),
    unplaced: weeks.unplaced.length,
    unplacedRisk: sum(weeks.unplaced.map(({ risk }) => risk)),
    overHours: weeks.cost.overloadHours,
    weeksLate: weeks.cost.weeksLate,
    breakdowns: sum(seasons.map(({ breakdowns }) => breakdowns)),
    breakdownCost: sum(seasons.map(({ breakdownCost }) => breakdownCost)),
    partsHours: sum(first.flatMap(({ work }) => work.positions.map(({ partsHours }) => partsHours))),
    total: sum(facts.machines.map(({ total }) => total)) + weeks.harm.cost,
  };
}
