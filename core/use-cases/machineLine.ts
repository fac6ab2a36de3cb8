import type { z } from 'zod';
import type { zFinding, zMachineLine } from '../contract/machine.ts';
import type { Placed } from '../record/machineForecastStore.ts';
import type { MachineOnRecord } from '../shop/shopLife.ts';
import { type MachinePlan, machinePlan } from '../way/machinePlan.ts';
import { isStop, openFindings } from '../way/openFindings.ts';
import type { PointOutlook } from '../way/pointForecast.ts';
import type { ShopSeries } from '../way/shopSeries.ts';
import { findingSheet } from './findingSheet.ts';

type Line = z.input<typeof zMachineLine>;
type Group = Line['group'];

/** Soonest first by deciding hours; parts beyond reckoning after those, parts without a forecast last. */
export const bySoonest = (a: PointOutlook, b: PointOutlook): number =>
  rank(a) - rank(b) ||
  (a.decidingHoursLeft ?? a.hoursLeft.low ?? 0) - (b.decidingHoursLeft ?? b.hoursLeft.low ?? 0) ||
  a.item - b.item;

const rank = (point: PointOutlook): number =>
  point.decidingHoursLeft !== null ? 0 : point.hoursLeft.low !== null ? 1 : 2;

/** Drawn under the bar: the positions that come next. */
const NEXT_SHOWN = 2;
/** The winter being planned and two more; further off, a bar is too wide to be read against them. */
const WINTERS_SHOWN = 3;

/** One machine's line: the part that reaches its limit first, its other parts, its winters in hours from now. */
export function machineLine(shop: ShopSeries, machine: MachineOnRecord, points: readonly PointOutlook[]): Line {
  const plan = machinePlan(shop, machine.machineId, points);
  const soonest = [...points].filter((point) => point.hoursLeft.low !== null).sort(bySoonest);
  const findings = openFindings(shop.life, shop.asOf).ofMachine(machine.machineId);
  const now = plan.now.machineHours ?? 0;
  return {
    machineId: machine.machineId,
    name: machine.name,
    makeModel: machine.makeModel,
    serial: machine.serial,
    customer: machine.customer,
    place: machine.place,
    assemblies: [...new Set(points.map((point) => point.assembly))],
    hours: plan.now,
    hoursPerYear: plan.hoursPerYear?.middle ?? null,
    winters: plan.winters.slice(0, WINTERS_SHOWN).map(({ name, fromMachineHours, toMachineHours }) => ({
      name,
      fromHours: fromMachineHours - now,
      toHours: toMachineHours - now,
    })),
    planLineHours: plan.planLineMachineHours === null ? null : plan.planLineMachineHours - now,
    planWinter: plan.planWinter,
    group: groupOf(plan, soonest, findings.some(isStop)),
    first: soonest[0] ? firstOf(soonest[0]) : null,
    others: soonest.slice(1, 1 + NEXT_SHOWN).map(({ item, hoursLeft }) => ({ item, hoursLeft })),
    openFindings: findings.map((finding) => findingSheet(finding, shop.life)) satisfies z.input<typeof zFinding>[],
  };
}

/** By the part that comes first. Its low figure gone by already: the limit may be passed, whatever else falls due. */
function groupOf(plan: MachinePlan, soonest: readonly PointOutlook[], stopped: boolean): Group {
  if (stopped) return 'do-not-use';
  const first = soonest[0];
  if (!first) return 'no-forecast';
  if ((first.hoursLeft.low ?? 0) < 0) return 'may-be-passed';
  return plan.roles.includes('this-winter') ? 'this-winter' : 'later';
}

const firstOf = (point: PointOutlook): NonNullable<Line['first']> => ({
  pointId: point.pointId,
  item: point.item,
  position: point.position,
  point: point.point,
  hoursLeft: point.hoursLeft,
  decides: point.decides,
  decidingHoursLeft: point.decidingHoursLeft,
  dateMiddle: point.dateAtLimit.middle,
  dateDeciding: point.dateAtLimit[point.decides],
  ownReadings: point.ownReadings,
  likeParts: point.likeParts,
  chancePastLimit: point.chancePastLimit,
  pastLimitMm: point.pastLimitMm,
});

const GROUPS: readonly Group[] = ['do-not-use', 'may-be-passed', 'this-winter', 'later', 'no-forecast'];

/** Groups that have machines, in the order of the list; soonest first by deciding hours within each, then by name. */
export function inListOrder(
  placed: readonly Placed[],
  nameOf: (machineId: number) => string,
): { group: Group; machines: Placed[] }[] {
  const bySoonest = (a: Placed, b: Placed): number =>
    (a.soonestHours ?? Number.MAX_VALUE) - (b.soonestHours ?? Number.MAX_VALUE) || // no figure comes after any figure
    compared(nameOf(a.machineId), nameOf(b.machineId)) ||
    a.machineId - b.machineId;
  const groups = Map.groupBy(placed, ({ group }) => group);
  return GROUPS.flatMap((group) => {
    const machines = groups.get(group);
    return machines ? [{ group, machines: machines.sort(bySoonest) }] : [];
  });
}

const compared = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
