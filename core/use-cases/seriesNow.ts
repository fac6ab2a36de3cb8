import { RefusedError } from '../outcome.ts';
import type { Day } from '../units/day.ts';
import type { MachineHoursAndUse } from '../way/shopHours.ts';
import type { ShopSeries } from '../way/shopSeries.ts';
import { seriesOfShop } from '../way.ts';
import { type Context, keptInMemory, lifeOf } from './context.ts';
import { habitSoFar } from './learning/shopLearning.ts';

/**
 * Hours and series as of a day (today): what entries are judged against, and what forecasts start from. Kept until the
 * record changes, or until the shop's habit of use has been learned again.
 */
export function seriesNow(context: Context, asOf: Day = context.today()): ShopSeries {
  const habit = asOf === context.today() ? habitSoFar(context) : null;
  return keptInMemory(context, `series as of ${asOf}, ${JSON.stringify(habit)}`, () =>
    seriesOfShop(lifeOf(context, { asOf }), asOf, habit),
  );
}

/** @throws RefusedError unknown-machine */
export function hoursOfMachine(context: Context, machineId: number, path = 'machineId'): MachineHoursAndUse {
  const machine = seriesNow(context).hours.ofMachine(machineId);
  if (!machine) throw new RefusedError({ code: 'unknown-machine', facts: { path, machineId } });
  return machine;
}
