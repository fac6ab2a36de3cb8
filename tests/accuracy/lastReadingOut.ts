import type { ClassPrior } from '#core/fit/classPrior.ts';
import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import type { ModelSettings } from '#core/fit/modelSettings.ts';
import type { PartLaw } from '#core/fit/partLaw.ts';
import { readingAt } from '#core/forecast/wearAt.ts';
import { chanceReadingBelow } from '#core/forecast/wearLaw.ts';
import type { WearReading, WearSeries } from '#core/series/wearSeries.ts';
import { aReading, aSeries } from './aSeries.ts';
import { referenceRows } from './csv.ts';
import { crps, type ReadingCase } from './scores.ts';

/** A set of parts with a reading of each kept back, to be foretold from the rest of the class. */
export type KeptBack = {
  title: string;
  prior: ClassPrior;
  series: WearSeries[];
  /** in the order of `series`; null: nothing kept back */
  keptBack: (WearReading | null)[];
};

export const scoreReading = (law: PartLaw, kept: WearReading, settings: ModelSettings): ReadingCase => {
  const at = (chance: number) => readingAt(law, kept.workedHours, kept.errorSdMm, chance, settings);
  const below = (y: number) => chanceReadingBelow(law, y, kept.workedHours, kept.errorSdMm, settings.driftDelta);
  return {
    low: at(0.1),
    middle: at(0.5),
    high: at(0.9),
    truth: kept.wearMm,
    pit: below(kept.wearMm),
    crps: crps(below, kept.wearMm, at(1e-4), at(1 - 1e-4)),
  };
};

/** Scores of the production forecast on every reading kept back. */
export function foretell(set: KeptBack, settings: ModelSettings): ReadingCase[] {
  const learning = learnShop(set.series, new Map([[set.prior.partClass, set.prior]]), settings);
  const byMachine = Map.groupBy(set.series, (one) => one.machineId);
  const laws = new Map<WearSeries, PartLaw>();
  for (const own of byMachine.values())
    machineLaws(learning, own, settings).forEach((law, i) => {
      laws.set(own[i]!, law);
    });
  return set.series.flatMap((one, i) => {
    const kept = set.keptBack[i];
    return kept ? [scoreReading(laws.get(one)!, kept, settings)] : [];
  });
}

const dropLast = (title: string, prior: ClassPrior, series: WearSeries[]): KeptBack => ({
  title,
  prior,
  series: series.map((one) => (one.readings.length > 1 ? { ...one, readings: one.readings.slice(0, -1) } : one)),
  keptBack: series.map((one) => (one.readings.length > 1 ? one.readings.at(-1)! : null)),
});

/** 32 liners of ships' engines; the last reading of each of 17 kept back. */
export function liners(newSizeSdMm = 0.05): KeptBack {
  const rows = Map.groupBy(referenceRows('marine-liners/marine_liners.csv'), (row) => row.liner!);
  const series = [...rows.values()].map((own, i) =>
    aSeries({
      pointId: i + 1,
      machineId: i + 1,
      partClass: 'liner',
      newSizeSdMm,
      readings: own.map((row) => aReading({ workedHours: Number(row.hours_h), wearMm: Number(row.wear_mm) })),
    }),
  );
  return dropLast(
    'liners, last reading',
    { partClass: 'liner', hRefHours: 40_000, m0: Math.log(4), s0: 1, from: 'trade' },
    series,
  );
}

export const laserSeries = (hours: readonly number[], newSizeSdMm: number) =>
  [...Map.groupBy(referenceRows('gaas-laser/gaas_laser.csv'), (row) => row.unit!).values()].map((own, i) =>
    aSeries({
      pointId: i + 1,
      machineId: i + 1,
      partClass: 'laser',
      newSizeSdMm,
      readings: hours.map((h) => {
        const row = own.find((one) => Number(one.hours_h) === h)!;
        return aReading({ workedHours: h, wearMm: Number(row.increase_pct), errorSdMm: 0.1 });
      }),
    }),
  );

export const laserPrior: ClassPrior = { partClass: 'laser', hRefHours: 4000, m0: Math.log(10), s0: 1, from: 'trade' };

/** 15 lasers; one later reading of each kept back. */
export const lasers = (known: readonly number[], asked: number, newSizeSdMm = 0.02): KeptBack =>
  dropLast(`lasers, ${known.join('/')} h -> ${asked} h`, laserPrior, laserSeries([...known, asked], newSizeSdMm));

/** 20 places of a belt, all read at each inspection: the inspection is a visit, the belt a machine. */
export function belt(name: string): KeptBack {
  const rows = referenceRows('conveyor-belts/conveyor_belts.csv').filter((row) => row.belt === name);
  const series = [...Map.groupBy(rows, (row) => row.position_m!).values()].map((own, i) =>
    aSeries({
      pointId: i + 1,
      machineId: 1,
      partClass: name,
      newSizeSdMm: 0.2,
      readings: own
        .filter((row) => Number(row.days_d) > 0)
        .map((row) =>
          aReading({
            workedHours: Number(row.load_relative),
            wearMm: Number(row.wear_mm),
            errorSdMm: 0.5,
            visit: row.days_d!,
          }),
        ),
    }),
  );
  const loads = series.flatMap((one) => one.readings.map((reading) => reading.workedHours));
  const wears = series.flatMap((one) => one.readings.map((reading) => reading.wearMm));
  const prior: ClassPrior = {
    partClass: name,
    hRefHours: Math.max(...loads),
    m0: Math.log(Math.max(1, [...wears].sort((a, b) => a - b)[wears.length >> 1]!)),
    s0: 1,
    from: 'wide',
  };
  return dropLast(`${name.replace('_', ' ')}, last inspection`, prior, series);
}

/** 12 sliding pieces under 3 loads; strongly slowing wear. */
export function slidingMetal(): KeptBack {
  const rows = Map.groupBy(referenceRows('metal-sliding/metal_sliding_wear.csv'), (row) => row.unit!);
  const series = [...rows.values()].map((own, i) =>
    aSeries({
      pointId: i + 1,
      machineId: i + 1,
      partClass: 'sliding metal',
      newSizeSdMm: 0.1,
      readings: [5, 20, 50, 200].map((cycles) => {
        const row = own.find((one) => Number(one.cycles_hundreds) === cycles)!;
        return aReading({ workedHours: cycles, wearMm: Number(row.wear_um), errorSdMm: 0.2 });
      }),
    }),
  );
  return dropLast(
    'sliding metal, 5/20/50 -> 200',
    { partClass: 'sliding metal', hRefHours: 200, m0: Math.log(20), s0: 1, from: 'wide' },
    series,
  );
}
