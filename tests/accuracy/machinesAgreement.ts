import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import { chanceWornPast } from '#core/forecast/wearLaw.ts';
import type { WearSeries } from '#core/series/wearSeries.ts';
import { plainChance, plainHours } from '../reference/plain-model/plainHours.ts';
import {
  type MachinesPrior,
  machinesGrid,
  type PlainMachine,
  plainMachines,
  plainPartsOfMachine,
} from '../reference/plain-model/plainMachines.ts';
import { type Agreement, apart, plainSettings } from './agreement.ts';
import { aReading, aSeries } from './aSeries.ts';
import { chance } from './chance.ts';
import { plainPartOf, plainPrior } from './plainForetell.ts';
import { simulatedPrior } from './simulatedClass.ts';

const LIMIT_MM = Math.exp(simulatedPrior.m0);
const GAUGE_SD_MM = 0.05;

/** What parts of one machine share: its harshness, with the shop's word on it or without; the error of a visit. */
export type Shared = { visits: boolean; powers: boolean; words: boolean };

export const sharedTerms: { title: string; shared: Shared }[] = [
  { title: 'machine harshness', shared: { visits: false, powers: true, words: false } },
  { title: "machine harshness and the shop's word on machines", shared: { visits: false, powers: true, words: true } },
  {
    title: 'machine harshness and a shared visit error, even wear',
    shared: { visits: true, powers: false, words: false },
  },
];

export const settingsFor = ({ powers }: Shared): ModelSettings => ({ ...plainSettings, linearChance: powers ? 0 : 1 });

/** Machines with three parts of one class; measured all in one visit, or each by itself, and some of them once more. Invented. */
export function sharingMachines(seed: number, count: number, shared: Shared): WearSeries[][] {
  const by = chance(seed);
  return Array.from({ length: count }, (_, m) => {
    const expected = shared.words && m % 2 === 0 ? Math.log(1.3) : 0;
    const harshness = expected + 0.25 * by.normal();
    const visit = 1500 + 2500 * by.uniform();
    const error = shared.visits ? 0.08 * by.normal() : 0;
    return Array.from({ length: 3 }, (_, k) => {
      const rate = LIMIT_MM * Math.exp(harshness + 0.2 * by.normal());
      const part = 3 * m + k + 1;
      const hours = shared.visits ? visit : 1000 + 3000 * by.uniform();
      const wear = (h: number) => (rate * h) / simulatedPrior.hRefHours + 0.04 * rate * by.normal();
      const size = (h: number, name: string, off: number) =>
        aReading({
          workedHours: h,
          wearMm: wear(h) + off + GAUGE_SD_MM * by.normal(),
          errorSdMm: GAUGE_SD_MM,
          visit: name,
        });
      const first = k === 0 ? [size(0.5 * hours, `${part} alone`, 0)] : [];
      const readings = [...first, size(hours, shared.visits ? `${m} together` : `${part}`, error)];
      return aSeries({
        pointId: part,
        machineId: m + 1,
        readings,
        ...(expected !== 0 && { expectedLnHarshness: expected }),
      });
    });
  });
}

/** Production and the extended plain model on one class, its figures learned on both sides. */
export function compareSharing(machines: readonly WearSeries[][], shared: Shared): Agreement[] {
  const settings = settingsFor(shared);
  const prior: MachinesPrior = {
    ...plainPrior(simulatedPrior, settings),
    omScale: settings.machineScatterScale,
    svScale: settings.visitErrorGauges * GAUGE_SD_MM,
    svLeast: 0.01 * GAUGE_SD_MM,
  };
  const learning = learnShop(machines.flat(), new Map([['slide', simulatedPrior]]), settings);
  const plain = plainMachines(
    machines.map(
      (own): PlainMachine => ({
        expected: own[0]!.expectedLnHarshness ?? 0,
        parts: own.map((part) => ({ ...plainPartOf(part), shared: shared.visits ? part.readings.length - 1 : null })),
      }),
    ),
    prior,
    machinesGrid(prior, shared),
  );
  return machines.flatMap((own, m) => {
    const exacts = plainPartsOfMachine(plain, m);
    return machineLaws(learning, own, settings).flatMap((law, k) => {
      const exact = exacts[k]!;
      const last = law.lastHours;
      const hours = hoursAtLimit(law, LIMIT_MM, settings);
      if (hours.pastAtLastSize) return [];
      const ahead = 1.2 * (hours.middle ?? simulatedPrior.hRefHours);
      const at = (u: number) => plainHours(exact, last, LIMIT_MM, u, settings.driftDelta);
      return {
        low: apart(hours.low, at(0.1)),
        middle: apart(hours.middle, at(0.5)),
        high: apart(hours.high, at(0.9)),
        chance: Math.abs(
          chanceWornPast(law, LIMIT_MM, ahead, settings.driftDelta) -
            plainChance(exact, last, LIMIT_MM, ahead, settings.driftDelta),
        ),
      };
    });
  });
}
