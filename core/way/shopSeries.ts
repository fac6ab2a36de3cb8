import { lifeOfSlack, withWorkedOut, workedOutSlack } from '../series/jointSlack.ts';
import { type MachineOnLine, type PartClock, partClock } from '../series/partClock.ts';
import { type PartSeries, partSeries } from '../series/partSeries.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import type { Joint } from '../shop/joint.ts';
import type { Sitting } from '../shop/measuringPoint.ts';
import type { PointOnRecord, ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { pointsOfShop } from './pointsOfShop.ts';
import { expectedLnHarshness } from './settingsOf.ts';
import { type ShopHabit, type ShopHours, shopHours } from './shopHours.ts';

/** The first half of the way: hours and wear series of the shop as of a day, each worked out when first asked for. */
export type ShopSeries = {
  life: ShopLife;
  asOf: Day;
  hours: ShopHours;
  ofPoint(point: PointOnRecord): PartSeries;
};

/** @param kept the shop's habit of use as learned before; absent: learned now */
export function shopSeries(life: ShopLife, asOf: Day, kept: ShopHabit | null = null): ShopSeries {
  const hours = shopHours(life, asOf, kept);
  const tolerances = new Map(life.partClasses.map((partClass) => [partClass.name, partClass.newSizeTolMm]));
  const joints = new Map((life.joints ?? []).map((joint) => [joint.slackPointId, joint]));
  const points = pointsOfShop(life.points).byId;
  const known = new Map<number, PartSeries>();
  const clocks: Clocks = new Map();
  const harshness = new Map(
    life.machines.map((machine) => [machine.machineId, expectedLnHarshness(machine, asOf, life)]),
  );
  return {
    life,
    asOf,
    hours,
    ofPoint(point) {
      const before = known.get(point.pointId);
      if (before) return before;
      const toleranceMm = tolerances.get(point.partClass) ?? null;
      const ends = endsOf(joints.get(point.pointId), points);
      const own = ends
        ? slackSeries(point, ends, (its) => this.ofPoint(its), hours, asOf, toleranceMm, clocks)
        : seriesOf(point, hours, asOf, toleranceMm, clocks);
      const series = toldOf(own, harshness);
      known.set(point.pointId, series);
      return series;
    },
  };
}

/** Parts with the shop's word on the machine each shares its harshness with. */
function toldOf(series: PartSeries, harshness: ReadonlyMap<number, number>): PartSeries {
  const told = (part: WearSeries): WearSeries => {
    const expected = harshness.get(part.machineId) ?? 0;
    return expected === 0 ? part : { ...part, expectedLnHarshness: expected };
  };
  if (![series.present, ...series.finished].some((part) => harshness.get(part.machineId))) return series;
  return { ...series, present: told(series.present), finished: series.finished.map(told) };
}

type Walked = { asOf: Day; toleranceMm: number | null; machines: readonly MachineOnLine[]; series: PartSeries };
/** As the hours of machines (shopHours): a point and machines that are the very same give the same series. */
const walked = new WeakMap<PointOnRecord, Walked>();

/** Clocks of what the points sit in, by where that sat: points of one assembly go by one. */
type Clocks = Map<readonly Sitting[], PartClock>;

function clockOf(clocks: Clocks, sittings: readonly Sitting[], lines: ReadonlyMap<number, MachineOnLine>, asOf: Day) {
  const clock = clocks.get(sittings) ?? partClock(sittings, lines, asOf);
  clocks.set(sittings, clock);
  return clock;
}

function seriesOf(
  point: PointOnRecord,
  hours: ShopHours,
  asOf: Day,
  toleranceMm: number | null,
  clocks: Clocks,
): PartSeries {
  const lines = new Map<number, MachineOnLine>();
  for (const { machineId } of point.sittings) {
    const machine = machineId === null ? undefined : hours.ofMachine(machineId);
    if (machineId !== null && machine) lines.set(machineId, machine);
  }
  const machines = [...lines.values()];
  const before = walked.get(point);
  const isSame =
    before?.asOf === asOf &&
    before.toleranceMm === toleranceMm &&
    before.machines.length === machines.length &&
    before.machines.every((machine, place) => machine === machines[place]);
  if (isSame) return before.series;
  const series = partSeries(point, lines, asOf, toleranceMm, clockOf(clocks, point.sittings, lines, asOf));
  walked.set(point, { asOf, toleranceMm, machines, series });
  return series;
}

type Ends = { pin: PointOnRecord; bores: readonly PointOnRecord[] };

/** The ends of the joint whose slack stands at a point; null: no joint, or its ends do not sit together any more. */
export function endsOf(joint: Joint | undefined, points: ReadonlyMap<number, PointOnRecord>): Ends | null {
  const slack = joint && points.get(joint.slackPointId);
  const pin = joint && points.get(joint.pinPointId);
  const bores = joint ? joint.borePointIds.flatMap((pointId) => points.get(pointId) ?? []) : [];
  if (!joint || !slack || !pin || bores.length < joint.borePointIds.length) return null;
  return [pin, ...bores].every(({ machineId }) => machineId === slack.machineId) ? { pin, bores } : null;
}

type Slack = {
  ends: readonly PartSeries[];
  machines: readonly unknown[];
  asOf: Day;
  toleranceMm: number | null;
  series: PartSeries;
};
const walkedSlack = new WeakMap<PointOnRecord, Slack>();

/** A joint's slack: its own sizes, and what those of pin and bore say of it. Kept as {@link walked}, with its ends. */
function slackSeries(
  point: PointOnRecord,
  { pin, bores }: Ends,
  ofPoint: (its: PointOnRecord) => PartSeries,
  hours: ShopHours,
  asOf: Day,
  toleranceMm: number | null,
  clocks: Clocks,
): PartSeries {
  const ends = { pin: ofPoint(pin), bores: bores.map(ofPoint) };
  const all = [ends.pin, ...ends.bores];
  const machines = point.sittings.map(({ machineId }) => (machineId === null ? null : hours.ofMachine(machineId)));
  const before = walkedSlack.get(point);
  const isSame =
    before?.asOf === asOf &&
    before.toleranceMm === toleranceMm &&
    sameEach(before.machines, machines) &&
    sameEach(before.ends, all);
  if (isSame) return before.series;
  const worked = workedOutSlack(ends);
  const life = { ...point, ...lifeOfSlack(point, { pin, bores }, worked) };
  const series = withWorkedOut(seriesOf(life, hours, asOf, toleranceMm, clocks), ends, worked);
  walkedSlack.set(point, { ends: all, machines, asOf, toleranceMm, series });
  return series;
}

const sameEach = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);

/** Every part that ever sat at a point. */
export const partsOf = ({ finished, present }: PartSeries): WearSeries[] => [...finished, present];

/** All parts of the shop: what its classes are learned from. */
export const allParts = (shop: ShopSeries): WearSeries[] =>
  shop.life.points.flatMap((point) => partsOf(shop.ofPoint(point)));

/**
 * The parts that share a machine's harshness: on it now, or at their end.
 * @param also points looked at besides those that ever sat on it
 */
export const partsOfMachine = (
  shop: ShopSeries,
  machineId: number,
  also: readonly PointOnRecord[] = [],
): WearSeries[] => {
  const looked = new Set([...also, ...pointsOfShop(shop.life.points).everOn(machineId)]);
  return [...looked].flatMap((point) => partsOf(shop.ofPoint(point))).filter((part) => part.machineId === machineId);
};
