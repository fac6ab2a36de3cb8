import { boundMachines } from '../../record/boundMachines.ts';
import { NOW_KNOWN } from '../../record/counting.ts';
import { readForecastSettings } from '../../record/forecastSettingsStore.ts';
import { countMachines, loadDrawnMachines } from '../../record/loadDrawnMachines.ts';
import { loadShopLife } from '../../record/loadShopLife.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import type { ShopLife } from '../../shop/shopLife.ts';
import type { Day } from '../../units/day.ts';
import { drawMachines } from '../../way/heardMachines.ts';
import { settingsOf } from '../../way/settingsOf.ts';
import { type Context, keptInMemory, recordOf } from '../context.ts';

/** Too many machines to hear them all: the shop is learned from some, and never loaded whole to show one. */
const isLargeRecord = (record: ReadableRecord): boolean =>
  countMachines(record) > settingsOf({ forecastSettings: readForecastSettings(record) }).machinesPerClass;

export const isLarge = (context: Context): boolean =>
  keptInMemory(context, 'is large', () => isLargeRecord(recordOf(context)));

/** The part of a large shop's life its classes are learned from: the machines drawn, and what they are bound to. */
export function heardLife(record: ReadableRecord, asOf: Day): ShopLife {
  const { machinesPerClass } = settingsOf({ forecastSettings: readForecastSettings(record) });
  const drawn = drawMachines(loadDrawnMachines(record, { asOf, knownAt: NOW_KNOWN }), machinesPerClass);
  return loadShopLife(record, { asOf, within: boundMachines(record, drawn) });
}
