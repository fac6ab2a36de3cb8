import type { MachineOnLine } from '../series/partClock.ts';
import { type PartSeries, partSeries } from '../series/partSeries.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import type { PointOnRecord, ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
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
  const known = new Map<number, PartSeries>();
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
      const series = toldOf(seriesOf(point, hours, asOf, tolerances.get(point.partClass) ?? null), harshness);
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

function seriesOf(point: PointOnRecord, hours: ShopHours, asOf: Day, toleranceMm: number | null): PartSeries {
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
  const series = partSeries(point, lines, asOf, toleranceMm);
  walked.set(point, { asOf, toleranceMm, machines, series });
  return series;
}

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
  const looked = new Set([...also, ...shop.life.points.filter((point) => everSatOn(point, machineId))]);
  return [...looked].flatMap((point) => partsOf(shop.ofPoint(point))).filter((part) => part.machineId === machineId);
};

const everSatOn = (point: PointOnRecord, machineId: number): boolean =>
  point.machineId === machineId || point.sittings.some((sitting) => sitting.machineId === machineId);
