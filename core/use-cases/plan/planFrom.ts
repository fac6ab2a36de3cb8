import type { z } from 'zod';
import { type VisitWork, zVisitWork, type zWhatIf } from '../../contract/plan.ts';
import { zRebuildWork } from '../../contract/rebuild.ts';
import { zRepairOption } from '../../contract/repair.ts';
import { planSettingsWith } from '../../plan/planSettings.ts';
import { mondayOf, weeksOfWinter } from '../../plan/weeksOfWinter.ts';
import { listAssemblies } from '../../record/assemblyStore.ts';
import { listTerms } from '../../record/contactStore.ts';
import { customerOfMachine, customersKnown } from '../../record/customerStore.ts';
import { listAway, listPlanWeeks, listVisits, readPlanSettings } from '../../record/planStore.ts';
import { pointsOfAssemblies } from '../../record/pointStore.ts';
import { listRebuilds, readRates, rebuildLinesOf, rebuildStepsOf } from '../../record/rebuildStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { repairChoicesOf } from '../../record/repairStore.ts';
import { readSettings } from '../../record/settingsStore.ts';
import type { Measures } from '../../shop/assemblyKinds.ts';
import { renewalOfPosition } from '../../shop/renewalWork.ts';
import type { PointOnRecord } from '../../shop/shopLife.ts';
import type { StripDownTree } from '../../shop/stripDownTree.ts';
import type { RenewalWork } from '../../shop/visit.ts';
import { type Winter, wintersFrom } from '../../shop/winter.ts';
import { addDays, type Day, yearOf } from '../../units/day.ts';
import { withAllRenewed } from '../../way/machineInPlan.ts';
import { isStop, openFindings } from '../../way/openFindings.ts';
import { settingsOf } from '../../way/settingsOf.ts';
import type { FarmAway, MachineAtShop, ShopPlanFrom, StandingVisit } from '../../way/shopPlan.ts';
import { seriesOfShop } from '../../way.ts';
import { kindsOnRecord } from '../kindsOnRecord.ts';
import type { ShopNow } from '../shopNow.ts';

type WhatIf = z.output<typeof zWhatIf>;

/** Year in which a winter begins: what visits are kept under. */
export const yearOfWinter = ({ from }: Winter): number => yearOf(from);

/** The winter being planned, those planned with it, and the one after. */
const wintersPlanned = (now: Pick<ShopNow, 'shop'>, count: number): Winter[] =>
  wintersFrom(now.shop.life, now.shop.asOf, count + 1);

/** Weeks of the winter being planned, with their hours. */
export function weeksPlanned(record: ReadableRecord, winter: Winter) {
  const { winterHoursPerWeek } = readSettings(record);
  const others = new Map(listPlanWeeks(record).map((week) => [week.weekFrom, week]));
  return weeksOfWinter(winter).map((weekFrom) => {
    const other = others.get(weekFrom);
    return { weekFrom, benchHours: other?.benchHours ?? winterHoursPerWeek, note: other?.note ?? null };
  });
}

/**
 * Everything the plan of the shop rests on, from the record and its forecasts.
 * @param whatIf what is tried; null: nothing
 */
export function planFrom(record: ReadableRecord, now: ShopNow, whatIf: WhatIf | null = null): ShopPlanFrom {
  const { shop, learning } = now;
  const saved = readPlanSettings(record);
  const plan = planSettingsWith(saved.changed);
  const winters = wintersPlanned(now, plan.winters);
  const measuresOf = new Map(
    pointsOfAssemblies(record, [...new Set(shop.life.points.map(({ assemblyId }) => assemblyId))]).map(
      ({ id, measures }) => [id, measures as Measures],
    ),
  );
  const renewals = renewalsWith(saved.renewals, shop.life.points, measuresOf, whatIf);
  const renewed = seriesOfShop(withAllRenewed(shop), shop.asOf, shop.hours.habit);
  return {
    ...{ shop, renewed, learning, plan, winters, measuresOf, renewals },
    settings: settingsOf(shop.life),
    treeOf: treesOf(record),
    forecastOf: now.ofMachine,
    machines: machinesAtShop(record, now, renewals, measuresOf, whatIf),
    standing: standingVisits(record, winters),
    weeks: weeksPlanned(record, winters[0]!).map(({ weekFrom, benchHours, note }) => ({
      weekFrom,
      benchHours: hoursWith(whatIf, weekFrom, benchHours, note === null),
    })),
  };
}

function hoursWith(whatIf: WhatIf | null, weekFrom: Day, benchHours: number, isUsual: boolean): number {
  const hours = isUsual ? (whatIf?.hoursPerWeek ?? benchHours) : benchHours;
  const off = whatIf?.fitterOff;
  if (!off) return hours;
  const first = mondayOf(off.weekFrom as Day);
  const isOff = weekFrom >= first && weekFrom < addDays(first, 7 * off.weeks);
  return isOff ? Math.max(0, hours - off.benchHours) : hours;
}

/** The shop's own work and parts, and where a price is tried that of every class it is tried on. */
function renewalsWith(
  own: readonly RenewalWork[],
  points: readonly PointOnRecord[],
  measuresOf: ReadonlyMap<number, Measures>,
  whatIf: WhatIf | null,
): RenewalWork[] {
  const tried = whatIf?.parts;
  if (!tried) return [...own];
  return classesPlanned(points, measuresOf).map(({ partClass, measures }) => {
    const now = own.find((one) => one.partClass === partClass) ?? {
      partClass,
      ...renewalOfPosition([{ partClass, measures }], []),
    };
    const isTried = tried.partClass === '' || tried.partClass === partClass;
    return isTried ? { ...now, partsHours: now.partsHours * tried.times } : now;
  });
}

/** Part classes met on the shop's machines, and what is measured of them. */
function classesPlanned(
  points: readonly PointOnRecord[],
  measuresOf: ReadonlyMap<number, Measures>,
): { partClass: string; measures: Measures }[] {
  const known = new Map<string, Measures>();
  for (const { pointId, partClass } of points) {
    const measures = measuresOf.get(pointId);
    if (measures && !known.has(partClass)) known.set(partClass, measures);
  }
  return [...known]
    .map(([partClass, measures]) => ({ partClass, measures }))
    .sort((a, b) => (a.partClass < b.partClass ? -1 : 1));
}

function treesOf(record: ReadableRecord): (assemblyId: number) => StripDownTree | null {
  const kinds = new Map(kindsOnRecord(record).map(({ kindId, stripDown }) => [kindId, stripDown ?? null]));
  const kindOf = new Map(listAssemblies(record).map(({ id, kindId }) => [id, kindId]));
  return (assemblyId) => {
    const kindId = kindOf.get(assemblyId);
    return kindId == null ? null : (kinds.get(kindId) ?? null);
  };
}

function standingVisits(record: ReadableRecord, winters: readonly Winter[]): StandingVisit[] {
  const years = winters.map(yearOfWinter);
  return listVisits(record).map(({ id, machineId, winterYear, stands, weeks, promisedOn, work, atFarm }) => ({
    ...{ visitId: id, machineId, stands, weeks, promisedOn, atFarm },
    winter: years.indexOf(winterYear),
    work: zVisitWork.parse(work) satisfies VisitWork,
  }));
}

type Job = NonNullable<MachineAtShop['job']> & Pick<MachineAtShop, 'onJob' | 'refused'>;

function machinesAtShop(
  record: ReadableRecord,
  { shop }: ShopNow,
  renewals: readonly RenewalWork[],
  measuresOf: ReadonlyMap<number, Measures>,
  whatIf: WhatIf | null,
): MachineAtShop[] {
  const findings = openFindings(shop.life, shop.asOf);
  const jobs = openJobs(record, shop.asOf);
  const tried = whatIf?.use;
  const away = awayOf(record, shop.asOf);
  const farmOf = farmsOf(record, shop.asOf);
  const pointsOf = Map.groupBy(shop.life.points, ({ positionId }) => positionId);
  const usualOf = (positionId: number) =>
    renewalOfPosition(
      (pointsOf.get(positionId) ?? []).map(({ pointId, partClass }) => ({
        partClass,
        measures: measuresOf.get(pointId) ?? 'depth',
      })),
      renewals,
    );
  const choices = repairChoicesOf(record);
  const chosen = new Map(
    choices
      .filter(({ choice }) => choice !== 'leave')
      .map(({ positionId, option }) => {
        const usual = usualOf(positionId);
        const ownHours = zRepairOption.parse(option).hoursHere?.typical ?? usual.ownHours;
        return [positionId, { ...usual, ownHours }] as const;
      }),
  );
  const left = choices.filter(({ choice }) => choice === 'leave').map(({ positionId }) => positionId);
  return shop.life.machines.map(({ machineId }) => {
    const open = findings.ofMachine(machineId).filter(isStop);
    const wanted = open.filter(({ declined }) => declined === null);
    const job = jobs.get(machineId);
    return {
      machineId,
      away: away(machineId),
      job: job ? { rebuildId: job.rebuildId, wantedBy: job.wantedBy, extras: job.extras, partsOn: job.partsOn } : null,
      stopped: new Set(wanted.flatMap(({ positionId }) => positionId ?? [])),
      stoppedWhole: wanted.flatMap(({ positionId, kind, note }) =>
        positionId === null ? [[kind, note].filter(Boolean).join(': ').slice(0, 400)] : [],
      ),
      onJob: job?.onJob ?? new Map(),
      refused: new Set([
        ...(job?.refused ?? []),
        ...left,
        ...open.flatMap(({ positionId, declined }) => (declined && positionId !== null ? [positionId] : [])),
      ]),
      chosen,
      useTimes: tried?.machineId === machineId ? tried.times : 1,
      farm: farmOf(machineId),
    };
  });
}

/** Open jobs by machine, the last one taken in: its work at positions, the rest, and when its parts are there. */
function openJobs(record: ReadableRecord, asOf: Day): Map<number, Job> {
  const done = new Set(
    rebuildStepsOf(record).flatMap(({ kind, rebuildId }) => (kind === 'handed-over' ? [rebuildId] : [])),
  );
  const hourPrice = readRates(record)?.hourPrice ?? 0;
  const linesOf = Map.groupBy(rebuildLinesOf(record), ({ rebuildId }) => rebuildId);
  return new Map(
    listRebuilds(record)
      .filter(({ id }) => !done.has(id))
      .map(({ id, machineId, wantedBy }) => {
        const lines = (linesOf.get(id) ?? []).map((line) => ({ ...line, work: zRebuildWork.parse(line.work) }));
        const onJob = new Map<number, { ownHours: number; partsHours: number }>();
        const extras: { what: string; hours: number }[] = [];
        for (const { work, positionId } of lines.filter(({ stands }) => stands !== 'declined')) {
          if (positionId === null || work.renews.length === 0) {
            extras.push({ what: work.what, hours: work.ownHours });
            continue;
          }
          const before = onJob.get(positionId) ?? { ownHours: 0, partsHours: 0 };
          onJob.set(positionId, {
            ownHours: before.ownHours + work.ownHours,
            partsHours: before.partsHours + (hourPrice > 0 ? work.partsPrice / hourPrice : 0),
          });
        }
        const refused = new Set(
          lines.flatMap(({ stands, positionId }) => (stands === 'declined' && positionId !== null ? [positionId] : [])),
        );
        const leads = lines.flatMap(({ work }) => work.makes.flatMap(({ leadDays }) => leadDays ?? []));
        const partsOn = leads.length === 0 ? null : addDays(asOf, Math.max(...leads));
        return [machineId, { rebuildId: id, wantedBy, extras, onJob, refused, partsOn }];
      }),
  );
}

/** Where each machine stands, and how far that is by what was said of its customer. */
export function farmsOf(record: ReadableRecord, asOf: Day): (machineId: number) => FarmAway {
  const minutes = new Map(listTerms(record).map(({ customerId, driveMinutes }) => [customerId, driveMinutes]));
  return (machineId) => {
    const customer = customerOfMachine(record, machineId, asOf);
    if (!customer) return { name: `machine ${machineId}`, wayHours: null };
    const oneWay = minutes.get(customer.id) ?? null;
    return { name: `farm ${customer.id}`, wayHours: oneWay === null ? null : (2 * oneWay) / 60 };
  };
}

function awayOf(record: ReadableRecord, asOf: Day): (machineId: number) => MachineAtShop['away'] {
  const away = listAway(record);
  if (away.length === 0) return () => [];
  const known = customersKnown(record);
  return (machineId) => {
    const customerId = customerOfMachine(record, machineId, asOf)?.id;
    return away
      .filter((one) => known.survivorOf(one.customerId) === customerId)
      .map(({ fromOn, toOn }) => ({ fromOn, toOn }));
  };
}
