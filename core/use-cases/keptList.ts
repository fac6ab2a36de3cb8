import type { z } from 'zod';
import type { PointForecast } from '../contract/forecast.ts';
import type { zMachineLine } from '../contract/machine.ts';
import { RefusedError } from '../outcome.ts';
import { entriesRevision, writePlain } from '../record/entry.ts';
import { loadMachineNames } from '../record/loadMachines.ts';
import { type KeptMachineForecast, keepMachineForecasts, keptForecasts } from '../record/machineForecastStore.ts';
import { fingerprint } from '../way/fingerprint.ts';
import { MODEL_VERSION } from '../way/learning.ts';
import type { Learning } from '../way.ts';
import { type Context, recordOf } from './context.ts';
import { machineLine } from './machineLine.ts';
import { seriesAround } from './seriesNow.ts';
import { nowOf } from './shopNow.ts';

export type Line = z.input<typeof zMachineLine>;

/** Raised whenever a line or a point's forecast is kept in another shape. */
const KEPT_VERSION = 1;

const keptUnder = (context: Context, learning: Learning) => ({
  asOf: context.today(),
  learned: fingerprint(`${KEPT_VERSION} ${MODEL_VERSION} ${learning.fingerprint} ${JSON.stringify(learning.habit)}`),
});

/** What stands in the record of the shop's forecasts: what holds, what is older, and the machines that want forecasting. */
export type KeptList<T> = { holding: Map<number, T>; older: Map<number, T>; wanting: number[] };

export function keptList(context: Context, learning: Learning, what: 'line'): KeptList<Line>;
export function keptList(context: Context, learning: Learning, what: 'points'): KeptList<PointForecast[]>;
export function keptList(context: Context, learning: Learning, what: 'line' | 'points'): KeptList<unknown> {
  const record = recordOf(context);
  const kept = keptForecasts(record, what, entriesRevision(record), keptUnder(context, learning));
  const list: KeptList<unknown> = { holding: new Map(), older: new Map(), wanting: [] };
  for (const named of loadMachineNames(record, context.today())) {
    const { machineId } = named;
    const own = kept.get(machineId);
    if (!own?.holds) list.wanting.push(machineId);
    if (!own) continue;
    const value: unknown = JSON.parse(own.text);
    // names may have changed since: they move no forecast
    const told =
      what === 'line'
        ? { ...(value as Line), ...named }
        : (value as PointForecast[]).map((point) => ({ ...point, machine: named.name }));
    (own.holds ? list.holding : list.older).set(machineId, told);
  }
  return list;
}

/** What is forecast of one machine now, as it is shown and as it is kept. */
export type ForecastNow = { line: Line; points: readonly PointForecast[]; kept: KeptMachineForecast };

/** Forecasts one machine from what the classes have taught. Null: it is on record no more. */
export function forecastNow(context: Context, learning: Learning, machineId: number): ForecastNow | null {
  const now = nowOf(context, seriesAround(context, machineId), learning);
  const machine = now.shop.life.machines.find((one) => one.machineId === machineId);
  if (!machine) return null;
  const { points } = now.ofMachine(machineId);
  const line = machineLine(now.shop, machine, points);
  return { line, points, kept: { machineId, line: JSON.stringify(line), points: JSON.stringify(points) } };
}

/**
 * Keeps what was forecast, unless something was entered meanwhile. A record that cannot be written to is forecast again.
 * @param revision of the record when it was forecast
 */
export function keepForecastsNow(
  context: Context,
  learning: Learning,
  revision: string,
  forecasts: readonly KeptMachineForecast[],
): void {
  try {
    writePlain(recordOf(context), (w) => {
      if (entriesRevision(w) === revision) keepMachineForecasts(w, revision, keptUnder(context, learning), forecasts);
    });
  } catch (thrown) {
    if (!(thrown instanceof RefusedError)) throw thrown;
  }
}
