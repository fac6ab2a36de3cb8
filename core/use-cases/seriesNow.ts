import { RefusedError } from '../outcome.ts';
import type { Day } from '../units/day.ts';
import type { MachineHoursAndUse } from '../way/shopHours.ts';
import type { ShopSeries } from '../way/shopSeries.ts';
import { seriesOfShop } from '../way.ts';
import { type Context, keptInMemory, lifeOf } from './context.ts';

/** Hours and series as of a day (today), nothing learned: what entries are judged against. Kept until the record changes. */
export const seriesNow = (context: Context, asOf: Day = context.today()): ShopSeries =>
  keptInMemory(context, `series as of ${asOf}`, () => seriesOfShop(lifeOf(context, { asOf }), asOf));

/** @throws RefusedError unknown-machine */
export function hoursOfMachine(context: Context, machineId: number, path = 'machineId'): MachineHoursAndUse {
  const machine = seriesNow(context).hours.ofMachine(machineId);
  if (!machine) throw new RefusedError({ code: 'unknown-machine', facts: { path, machineId } });
  return machine;
}
