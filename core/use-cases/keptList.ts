import type { z } from 'zod';
import type { zMachineLine } from '../contract/machine.ts';
import { RefusedError } from '../outcome.ts';
import { boundMachines } from '../record/boundMachines.ts';
import { entriesRevision, writePlain } from '../record/entry.ts';
import { loadShopLife } from '../record/loadShopLife.ts';
import {
  type KeptMachineForecast,
  keepMachineForecasts,
  keptPlaces,
  type ListPlace,
  type Placed,
} from '../record/machineForecastStore.ts';
import type { MachineOnRecord } from '../shop/shopLife.ts';
import { fingerprint } from '../way/fingerprint.ts';
import { MODEL_VERSION } from '../way/learning.ts';
import type { PointOutlook } from '../way/pointForecast.ts';
import type { ShopSeries } from '../way/shopSeries.ts';
import { type Learning, outlooksOfMachine, seriesOfShop } from '../way.ts';
import { type Context, recordOf } from './context.ts';
import { machineLine } from './machineLine.ts';
import { type Due, dueOf } from './recall/dueOf.ts';
import { seriesAround } from './seriesNow.ts';
import { nowOf, type ShopNow } from './shopNow.ts';

export type Line = z.input<typeof zMachineLine>;

/** Raised whenever a line, or what a machine is due for, is kept in another shape. */
const KEPT_VERSION = 2;

const keptUnder = (context: Context, learning: Learning) => ({
  asOf: context.today(),
  learned: fingerprint(`${KEPT_VERSION} ${MODEL_VERSION} ${learning.fingerprint} ${JSON.stringify(learning.habit)}`),
});

/** Where machines stand by what was last forecast of them, older places among them; those never forecast; those that want it. */
export type KeptList = { places: Placed[]; never: number[]; wanting: number[] };

/** @param machineIds null: of all on record */
export function keptList(context: Context, learning: Learning, machineIds: readonly number[] | null = null): KeptList {
  const record = recordOf(context);
  const { kept, never } = keptPlaces(record, entriesRevision(record), keptUnder(context, learning), machineIds);
  const older = kept.filter(({ holds }) => !holds).map(({ machineId }) => machineId);
  return { places: kept, never, wanting: [...older, ...never].sort((a, b) => a - b) };
}

/** What is forecast of one machine now. */
export type ForecastMade = { machineId: number; place: ListPlace; line: Line; due: Due };

/** Forecasts one machine from what the classes have taught. Null: it is on record no more. */
export function forecastNow(context: Context, learning: Learning, machineId: number): ForecastMade | null {
  const now = nowOf(context, seriesAround(context, machineId), learning);
  const machine = now.shop.life.machines.find((one) => one.machineId === machineId);
  return machine ? forecastMade(now, machine) : null;
}

/** The same of some machines read in one go, and nothing of it stays in memory: for a thread that forecasts the whole shop. */
export function forecastTogether(context: Context, learning: Learning, machineIds: readonly number[]): ForecastMade[] {
  const record = recordOf(context);
  const asOf = context.today();
  const life = loadShopLife(record, { asOf, within: boundMachines(record, machineIds) });
  const wanted = new Set(machineIds);
  const shop = seriesOfShop(life, asOf, learning.habit);
  return life.machines
    .filter(({ machineId }) => wanted.has(machineId))
    .map((machine) => keptOf(shop, machine, outlooksOfMachine(shop, machine.machineId, learning)));
}

/** What is kept of a machine's forecasts. */
export const forecastMade = ({ shop, outlooksOf }: ShopNow, machine: MachineOnRecord): ForecastMade =>
  keptOf(shop, machine, outlooksOf(machine.machineId));

function keptOf(shop: ShopSeries, machine: MachineOnRecord, points: readonly PointOutlook[]): ForecastMade {
  const line = machineLine(shop, machine, points);
  return { machineId: machine.machineId, line, place: placeOf(line), due: dueOf(shop, machine, points) };
}

/** A machine that must not be used has no bar, and moves no scale. */
function placeOf({ group, first, planLineHours }: Line): ListPlace {
  const { low = null, middle = null } = group === 'do-not-use' ? {} : (first?.hoursLeft ?? {});
  return { group, planLineHours, soonestHours: first?.decidingHoursLeft ?? null, lowHours: low, middleHours: middle };
}

const asKept = ({ machineId, place, line, due }: ForecastMade): KeptMachineForecast => ({
  ...{ machineId, place, assemblies: line.assemblies.join('\n') },
  ...{ line: JSON.stringify(line), due: JSON.stringify(due) },
});

/**
 * Keeps what was forecast, unless something was entered meanwhile.
 * @param revision of the record when it was forecast
 * @returns false: not kept, as in a record that cannot be written to; it is forecast again when next asked for
 */
export function keepForecastsNow(
  context: Context,
  learning: Learning,
  revision: string,
  forecasts: readonly ForecastMade[],
): boolean {
  try {
    return writePlain(recordOf(context), (w) => {
      if (entriesRevision(w) !== revision) return false;
      keepMachineForecasts(w, revision, keptUnder(context, learning), forecasts.map(asKept));
      return true;
    });
  } catch (thrown) {
    if (!(thrown instanceof RefusedError)) throw thrown;
    return false;
  }
}
