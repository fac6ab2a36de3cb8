import type { HoursNow } from '../contract/machine.ts';
import { lastRead, machineHoursOn } from '../reading/machineHours.ts';
import { type Role, rolesOf } from '../shop/role.ts';
import { type Winter, wintersFrom } from '../shop/winter.ts';
import type { Day } from '../units/day.ts';
import { dialGoneBy } from './dialGoneBy.ts';
import { isStop, openFindings } from './openFindings.ts';
import type { PointOutlook } from './pointForecast.ts';
import { pointsOfShop } from './pointsOfShop.ts';
import type { MachineHoursAndUse } from './shopHours.ts';
import type { ShopSeries } from './shopSeries.ts';

/** A winter on a machine's own hours. */
export type WinterOnMachine = Winter & { fromMachineHours: number; toMachineHours: number };

/** What a machine's page, its line in the list and its slip all stand on besides the forecasts. */
export type MachinePlan = {
  now: HoursNow;
  /** h a year; null: the machine has no hours on record */
  hoursPerYear: { low: number; middle: number; high: number } | null;
  /** too few readings of its own to know its use */
  useBorrowed: boolean;
  /** the one being planned first; none without hours on record */
  winters: WinterOnMachine[];
  planWinter: string;
  /** machine hours at the start of the winter after the one being planned */
  planLineMachineHours: number | null;
  /** of each point, in the order of the forecasts */
  roles: Role[];
};

/** A baler of 60 h a year has a dozen winters on a scale that shows a forager three. */
const WINTERS = 12;

export function machinePlan(shop: ShopSeries, machineId: number, points: readonly PointOutlook[]): MachinePlan {
  const machine = shop.hours.ofMachine(machineId);
  const days = wintersOfShop(shop);
  const now = hoursNow(shop, machine);
  const winters = machine && now.machineHours !== null ? days.flatMap((winter) => onMachine(machine, winter)) : [];
  const line = winters[1]?.fromMachineHours ?? null;
  const left = (machineHours: number | null | undefined) =>
    machineHours == null || now.machineHours === null ? null : machineHours - now.machineHours;
  return {
    now,
    hoursPerYear: now.machineHours === null ? null : (machine?.use.hoursPerYear ?? null),
    useBorrowed: (machine?.use.ownShare ?? 0) < 0.5,
    winters,
    planWinter: days[0]?.name ?? '',
    planLineMachineHours: line,
    roles: rolesOf(outlooks(shop, points), {
      nextWinterHours: left(line),
      winterAfterHours: left(winters[2]?.fromMachineHours),
    }),
  };
}

/** The same for every machine of the shop: worked out once of each. */
const winters = new WeakMap<ShopSeries, readonly Winter[]>();

function wintersOfShop(shop: ShopSeries): readonly Winter[] {
  const known = winters.get(shop) ?? wintersFrom(shop.life, shop.asOf, WINTERS);
  winters.set(shop, known);
  return known;
}

function hoursNow(shop: ShopSeries, machine: MachineHoursAndUse | undefined): HoursNow {
  const now = machine ? machineHoursOn(machine.line, shop.asOf) : null;
  const dial = machine && now ? dialGoneBy(shop.hours, machine, shop.asOf) : null;
  const isAnothers = dial !== null && dial.of.machineId !== machine?.life.machineId;
  const read = machine ? readOf(machine, isAnothers ? dial.readOn : null) : null;
  return {
    machineHours: now?.hours ?? null,
    sdHours: now?.sdHours ?? 0,
    estimated: now !== null && now.kind !== 'read',
    machineHoursRead: read?.machineHours ?? null,
    readOn: read?.takenOn ?? null,
    dialHours: dial?.shownNow ?? null,
    dialMachine: isAnothers ? { machineId: dial.of.machineId, name: dial.of.name } : null,
  };
}

/** The last real reading: of its own meter, or of the one it goes by. */
function readOf({ line }: MachineHoursAndUse, readOn: Day | null): { takenOn: Day; machineHours: number } | null {
  const then = readOn && machineHoursOn(line, readOn);
  return readOn && then ? { takenOn: readOn, machineHours: then.hours } : lastRead(line);
}

function onMachine(machine: MachineHoursAndUse, winter: Winter): WinterOnMachine[] {
  const from = machineHoursOn(machine.line, winter.from);
  const to = machineHoursOn(machine.line, winter.to);
  return from && to ? [{ ...winter, fromMachineHours: from.hours, toMachineHours: to.hours }] : [];
}

function outlooks(shop: ShopSeries, points: readonly PointOutlook[]) {
  const findings = openFindings(shop.life, shop.asOf);
  const onRecord = pointsOfShop(shop.life.points).byId;
  return points.map((forecast) => {
    const point = onRecord.get(forecast.pointId)!;
    return {
      assemblyId: point.assemblyId,
      doNotUse: findings.ofPoint(point).some(isStop),
      hasForecast: forecast.limitWearMm !== null && forecast.machineHours !== null,
      decidingHoursLeft: forecast.decidingHoursLeft,
    };
  });
}
