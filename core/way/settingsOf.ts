import { type ModelSettings, modelSettingsWith } from '../fit/modelSettings.ts';
import type { ForecastSettings } from '../shop/forecastSettings.ts';
import type { MachineLife } from '../shop/machineLife.ts';
import type { ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';

/** The settings a shop forecasts with: the program's own, and what the shop has changed. */
export function settingsOf({ forecastSettings }: Pick<ShopLife, 'forecastSettings'>): ModelSettings {
  const known = worked.get(forecastSettings);
  if (known) return known;
  const settings = modelSettingsWith(forecastSettings.changed);
  worked.set(forecastSettings, settings);
  return settings;
}

const worked = new WeakMap<ForecastSettings, ModelSettings>();

/** The shop's word on a machine as of a day, as it stands in the record; null: none was given. */
export const workTypeOn = ({ workShares }: MachineLife, asOf: Day): string | null =>
  workShares.findLast(({ from }) => from === null || from <= asOf)?.workType ?? null;

/**
 * ln of how many times as fast a machine's parts are expected to wear, by the shop's word on it:
 *   trust x ln(times as fast its kind of work stands for);  a kind the shop does not list says nothing
 * @source own derivation: a word told from memory is drawn towards the usual
 */
export function expectedLnHarshness(machine: MachineLife, asOf: Day, life: ShopLife): number {
  const word = workTypeOn(machine, asOf)?.trim().toLowerCase();
  const type = word
    ? life.forecastSettings.workTypes.find(({ name }) => name.trim().toLowerCase() === word)
    : undefined;
  return type ? settingsOf(life).workTypeTrust * Math.log(type.timesAsFast) : 0;
}
