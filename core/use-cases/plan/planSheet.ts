import type { z } from 'zod';
import { type PlanFacts, type VisitLine, type zPlan, zPlanFacts, zVisitWork } from '../../contract/plan.ts';
import { defaultPlanSettings, planSettingNames, planSettingNotes, planSettingsWith } from '../../plan/planSettings.ts';
import { hoursOfVisit } from '../../plan/visitHours.ts';
import { weekFrom as firstWeekFrom } from '../../plan/weeksOfWinter.ts';
import { listAssemblies, positionsOf } from '../../record/assemblyStore.ts';
import { classesMeasured } from '../../record/classStore.ts';
import { customerOfMachine, customersKnown } from '../../record/customerStore.ts';
import { lastPlan, listAway, listVisits, readPlanSettings, type VisitRow } from '../../record/planStore.ts';
import { readRates } from '../../record/rebuildStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { readSettings } from '../../record/settingsStore.ts';
import { renewalOfPosition, USUAL_RENEWALS_SOURCE } from '../../shop/renewalWork.ts';
import { type Winter, wintersFrom } from '../../shop/winter.ts';
import { addDays, type Day } from '../../units/day.ts';
import { awayWeeks, farmCallHours } from '../../way/shopPlan.ts';
import { type Context, recordOf } from '../context.ts';
import { machineNamesNow } from '../machineNamesNow.ts';
import { stopsNow } from '../machinesStopped.ts';
import { farmsOf, weeksPlanned, yearOfWinter } from './planFrom.ts';

type Sheet = z.input<typeof zPlan>;

const sum = (numbers: readonly number[]): number => numbers.reduce((so, one) => so + one, 0);

/** The winter plan as it stands: what is kept of it, with names, loads of the weeks, and what it was proposed from. */
export function planSheet(context: Context): Sheet {
  const record = recordOf(context);
  const asOf = context.today();
  const saved = readPlanSettings(record);
  const plan = planSettingsWith(saved.changed);
  const winters = wintersFrom(readSettings(record), asOf, plan.winters);
  const winter = winters[0]!;
  const visits = visitLines(context, winters);
  const { winterHoursPerWeek } = readSettings(record);
  const last = lastPlan(record);
  const facts = last && zPlanFacts.parse(last.facts);
  const names = machineNamesNow(context);
  const known = customersKnown(record);
  return {
    asOf,
    winter: { winterYear: yearOfWinter(winter), name: winter.name, from: winter.from, to: winter.to },
    usualHours: winterHoursPerWeek,
    weeks: loadedWeeks(record, winter, visits),
    visits,
    winters: winters.map((its) => winterLine(record, its, visits, facts, last?.winterYear ?? yearOfWinter(winter))),
    proposed: facts && {
      ...{ asOf: facts.asOf, status: facts.status, harm: facts.harm, trouble: facts.trouble },
      ...{ readings: facts.readings, machines: facts.machines.length },
      without: facts.without.map((machineId) => ({ machineId, machine: names.get(machineId)?.name ?? '' })),
    },
    rates: readRates(record),
    settings: planSettingNames.map((name) => ({
      ...{ name, value: plan[name], usual: defaultPlanSettings[name] },
      ...planSettingNotes[name],
    })),
    renewals: renewalLines(record, saved.renewals),
    away: listAway(record).map(({ id, customerId, fromOn, toOn, note }) => ({
      ...{ awayId: id, customerId: known.survivorOf(customerId), customer: known.of(customerId)?.name ?? '' },
      ...{ fromOn, toOn, note },
    })),
  };
}

/** Load of each week of a winter, in bench hours: its visits, and once for each farm that is gone to the way and setting up. */
export function loadedWeeks(
  record: ReadableRecord,
  winter: Winter,
  visits: readonly Pick<VisitLine, 'weeks' | 'stands' | 'farm'>[],
): Sheet['weeks'] {
  const placed = visits.filter(({ stands }) => stands !== 'postponed');
  return weeksPlanned(record, winter).map(({ weekFrom, benchHours, note }) => {
    const here = placed.filter(({ weeks }) => weeks.some((week) => week.weekFrom === weekFrom));
    const calls = new Map(here.flatMap(({ farm }) => (farm ? [[farm.name, farm.callHours] as const] : [])));
    const farmHours = sum([...calls.values()]);
    const work = here.flatMap(({ weeks }) => weeks.filter((week) => week.weekFrom === weekFrom));
    const hours = sum(work.map((week) => week.benchHours)) + farmHours;
    // hours kept to a hundredth may add up to a hair more than the week has
    const over = hours - benchHours;
    return { weekFrom, benchHours, note, hours, farmHours, overHours: over > 0.05 ? over : 0 };
  });
}

/** Where a visit is done, when not in the shop. */
export function farmOfVisit(record: ReadableRecord, asOf: Day): (row: VisitRow) => VisitLine['farm'] {
  const farmOf = farmsOf(record, asOf);
  const plan = planSettingsWith(readPlanSettings(record).changed);
  return ({ machineId, atFarm }) => {
    if (!atFarm) return null;
    const farm = farmOf(machineId);
    return { name: farm.name, callHours: farmCallHours(farm, plan), isWayKnown: farm.wayHours !== null };
  };
}

function winterLine(
  record: ReadableRecord,
  winter: Winter,
  visits: readonly VisitLine[],
  facts: PlanFacts | null,
  firstYear: number,
): Sheet['winters'][number] {
  const winterYear = yearOfWinter(winter);
  const its = visits.filter((visit) => visit.winterYear === winterYear && visit.stands !== 'postponed');
  const of = (facts?.machines ?? []).flatMap(({ winters }) => winters[winterYear - firstYear] ?? []);
  return {
    ...{ winterYear, name: winter.name, visits: its.length, hours: sum(its.map(({ hours }) => hours)) },
    ofHours: sum(weeksPlanned(record, winter).map(({ benchHours }) => benchHours)),
    lifeThrownAway: sum(of.map(({ lifeThrownAway }) => lifeThrownAway)),
    breakdowns: sum(of.map(({ breakdowns }) => breakdowns)),
  };
}

/** Visits of the winters planned, with names. */
function visitLines(context: Context, winters: readonly Winter[]): VisitLine[] {
  const record = recordOf(context);
  const asOf = context.today();
  const nameOfWinter = new Map(winters.map((winter) => [yearOfWinter(winter), winter.name]));
  const rows = listVisits(record).filter(({ winterYear }) => nameOfWinter.has(winterYear));
  const machines = machineNamesNow(context);
  const places = new Map(positionsOf(record).map((position) => [position.id, position]));
  const assemblies = new Map(listAssemblies(record).map(({ id, name }) => [id, name]));
  const stopped = new Set(stopsNow(context).map(({ machineId }) => machineId));
  const plan = planSettingsWith(readPlanSettings(record).changed);
  const mondays = weeksPlanned(record, winters[0]!).map(({ weekFrom }) => weekFrom);
  const partsIn = firstWeekFrom(mondays, addDays(asOf, plan.partsLeadDays));
  const away = listAway(record);
  const known = customersKnown(record);
  const awayOf = (machineId: number) => {
    const customerId = away.length > 0 ? customerOfMachine(record, machineId, asOf)?.id : undefined;
    return away.filter((one) => known.survivorOf(one.customerId) === customerId);
  };
  const farmOf = farmOfVisit(record, asOf);
  return rows.map((row): VisitLine => {
    const work = zVisitWork.parse(row.work);
    const machine = machines.get(row.machineId);
    const first = row.weeks[0] ? mondays.indexOf(row.weeks[0].weekFrom) : -1;
    const inWeeks = row.weeks.map(({ weekFrom }) => mondays.indexOf(weekFrom));
    const partsHours = sum(work.positions.map((position) => position.partsHours));
    const gone = awayWeeks(mondays, awayOf(row.machineId));
    return {
      ...{ visitId: row.id, machineId: row.machineId, machine: machine?.name ?? '' },
      ...{ customer: machine?.customer ?? '', place: machine?.place ?? '' },
      ...{ winterYear: row.winterYear, winter: nameOfWinter.get(row.winterYear)!, stands: row.stands },
      ...{ weeks: [...row.weeks], promisedOn: row.promisedOn, saidBy: row.saidBy, note: row.note },
      ...{ hours: hoursOfVisit(work), partsHours, apartHours: work.apartHours, risk: work.risk },
      positions: work.positions.map(({ positionId, ownHours, partsHours: parts, because }) => {
        const place = places.get(positionId);
        return {
          ...because,
          ...{ positionId, ownHours, partsHours: parts, item: place?.item ?? 0, position: place?.name ?? '' },
          ...{ assembly: assemblies.get(place?.assemblyId ?? 0) ?? '', safety: place?.safety ?? false },
          openedWithItems: because.openedWith.flatMap((id) => places.get(id)?.name ?? []),
        };
      }),
      takeOffs: work.takeOffs.map(({ name, hours }) => ({ name, hours })),
      ...{ visitHours: work.visitHours, extras: work.extras, rebuildId: work.rebuildId },
      farm: farmOf(row),
      doNotUse: stopped.has(row.machineId),
      waitsForParts:
        row.stands !== 'done' && work.rebuildId === null && partsHours > 0 && first >= 0 && first < partsIn,
      customerAway: work.rebuildId === null && inWeeks.some((week) => gone.includes(week)),
    };
  });
}

function renewalLines(
  record: ReadableRecord,
  own: Sheet['renewals'] extends (infer _)[]
    ? readonly { partClass: string; ownHours: number; partsHours: number }[]
    : never,
): Sheet['renewals'] {
  return classesMeasured(record).map(({ partClass, measures }) => {
    const usual = renewalOfPosition([{ partClass, measures }], []);
    const ofShop = own.find((one) => one.partClass === partClass);
    const { ownHours, partsHours } = ofShop ?? usual;
    return {
      ...{ partClass, ownHours, partsHours, usual: ofShop === undefined },
      ...{ usualOwnHours: usual.ownHours, usualPartsHours: usual.partsHours, source: USUAL_RENEWALS_SOURCE },
    };
  });
}
