import { RefusedError } from '../outcome.ts';
import { machinesOfPoint } from '../record/boundMachines.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { pointsOfShop } from '../way/pointsOfShop.ts';
import type { MachineHoursAndUse, ShopHabit } from '../way/shopHours.ts';
import type { ShopSeries } from '../way/shopSeries.ts';
import { seriesOfShop } from '../way.ts';
import { type Context, keptAround, keptInMemory, lifeAround, lifeOf, recordOf } from './context.ts';
import { isLarge } from './learning/heardNow.ts';
import { habitSoFar, usualHabit } from './learning/shopLearning.ts';

/**
 * Hours and series as of a day (today): what entries are judged against, and what forecasts start from. Kept until the
 * record changes, or until the shop's habit of use has been learned again.
 */
export function seriesNow(
  context: Context,
  asOf: Day = context.today(),
  habit: ShopHabit | null = asOf === context.today() ? habitSoFar(context) : null,
): ShopSeries {
  return keptInMemory(context, `series as of ${asOf}, ${JSON.stringify(habit)}`, () =>
    seriesOfShop(lifeOf(context, { asOf }), asOf, habit),
  );
}

/** The same of one machine and what it is bound to, without the rest of the shop. */
export function seriesAround(context: Context, machineId: number, asOf: Day = context.today()): ShopSeries {
  const habit = habitSoFar(context) ?? (isLarge(context) ? usualHabit(context) : null);
  if (!habit) return seriesNow(context, asOf); // the shop's habit has yet to be learned, from all of it
  const life = lifeAround(context, machineId, asOf);
  const key = `series around ${life.machines[0]?.machineId ?? machineId} as of ${asOf}, ${JSON.stringify(habit)}`;
  return keptAround(context, key, () => seriesOfShop(life, asOf, habit));
}

/** What is on record of a point; null: it is not on record. */
export function pointNow(context: Context, pointId: number): PointOnRecord | null {
  for (const machineId of machinesOfPoint(recordOf(context), pointId)) {
    const point = pointsOfShop(seriesAround(context, machineId).life.points).byId.get(pointId);
    if (point) return point;
  }
  return null;
}

/** The machine a point sits on, or sat on last. @throws RefusedError unknown-point */
export function machineOfPoint(context: Context, pointId: number, path = 'pointId'): number {
  const point = pointNow(context, pointId);
  if (point) return point.machineId;
  throw new RefusedError({ code: 'unknown-point', facts: { path, pointId } });
}

/** @throws RefusedError unknown-machine */
export function hoursOfMachine(context: Context, machineId: number, path = 'machineId'): MachineHoursAndUse {
  const machine = seriesAround(context, machineId).hours.ofMachine(machineId);
  if (!machine) throw new RefusedError({ code: 'unknown-machine', facts: { path, machineId } });
  return machine;
}
