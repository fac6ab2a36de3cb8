import { figureCoordinates, figuresAt } from '#core/fit/classFigures.ts';
import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import type { ModelSettings } from '#core/fit/modelSettings.ts';
import type { ClassFigures } from '#core/fit/partSite.ts';
import { chanceReadingBelow } from '#core/forecast/wearLaw.ts';
import type { WearReading, WearSeries } from '#core/series/wearSeries.ts';
import { aReading, aSeries } from './aSeries.ts';
import { type Chance, chance } from './chance.ts';
import { simulatedPrior } from './simulatedClass.ts';

/** How many parts a drawn shop holds. */
export type ShopShape = { machines: number; partsOfMachine: number };

const GAUGE_SD_MM = 0.05;
const NEW_SIZE_SD_MM = 0.03;

/**
 * Where new readings fall in their forecasts, over shops drawn from the model itself with figures drawn from its prior:
 * evenly between 0 and 1, if learning and forecasting are right. The reading comes at 1.6 times the last age, with no drift.
 * @source S. Talts, M. Betancourt, D. Simpson, A. Vehtari, A. Gelman, "Validating Bayesian inference algorithms with
 *   simulation-based calibration" (2018)
 */
export function calibration(shops: number, shape: ShopShape, settings: ModelSettings, seed: number): number[] {
  const still = { ...settings, driftDelta: 0 };
  return Array.from({ length: shops }, (_, k) => drawnShop(shape, still, chance(seed + k))).flatMap(
    ({ series, next }) => {
      const learning = learnShop(series, new Map([['slide', simulatedPrior]]), still);
      const byMachine = Map.groupBy(series, (one) => one.machineId);
      return [...byMachine.values()].flatMap((own) =>
        machineLaws(learning, own, still).map((law, i) => {
          const reading = next.get(own[i]!)!;
          return chanceReadingBelow(law, reading.wearMm, reading.workedHours, reading.errorSdMm, 0);
        }),
      );
    },
  );
}

function drawnShop({ machines, partsOfMachine }: ShopShape, settings: ModelSettings, by: Chance) {
  const shared = partsOfMachine > 1;
  const coordinates = figureCoordinates(
    { fewParts: false, machines: shared, visits: shared, power: by.uniform() > settings.linearChance },
    [GAUGE_SD_MM],
    simulatedPrior,
  );
  const figures = figuresAt(
    coordinates.names.map(() => by.normal()),
    coordinates,
    settings,
  );
  const mu = simulatedPrior.m0 + simulatedPrior.s0 * by.normal();
  const series: WearSeries[] = [];
  const next = new Map<WearSeries, WearReading>();
  for (let machine = 1; machine <= machines; machine++) {
    const u = mu + figures.machineScatter * by.normal();
    const ages = visitAges(by);
    const errors = ages.map(() => figures.visitErrorMm * by.normal());
    for (let part = 0; part < partsOfMachine; part++) {
      const odd = by.uniform() < settings.oddPartShare ? settings.oddPartWidth : 1;
      const rate = Math.exp(u + odd * figures.partScatter * by.normal());
      const readings = drawnPath(rate, figures, ages, by).map((wear, j) =>
        aReading({
          workedHours: ages[j]!,
          wearMm: wear + errors[j]! + GAUGE_SD_MM * by.normal(),
          errorSdMm: GAUGE_SD_MM,
          visit: `${machine}@${j}`,
        }),
      );
      const one = aSeries({
        pointId: series.length + 1,
        machineId: machine,
        newSizeSdMm: NEW_SIZE_SD_MM,
        readings: readings.slice(0, -1),
      });
      series.push(one);
      next.set(one, readings.at(-1)!);
    }
  }
  return { series, next };
}

/** 1 to 4 visits, and one more at 1.6 times the last age. */
function visitAges(by: Chance): number[] {
  const last = 600 + 4400 * by.uniform();
  const earlier = Array.from({ length: Math.floor(4 * by.uniform()) }, () => last * (0.1 + 0.85 * by.uniform()));
  return [...earlier, last].sort((a, b) => a - b).concat(1.6 * last);
}

/** True wear at each age, after the model: Brownian about the mean, noise in step with the rate. */
function drawnPath(rate: number, figures: ClassFigures, ages: readonly number[], by: Chance): number[] {
  let wear = NEW_SIZE_SD_MM * by.normal();
  let time = 0;
  return ages.map((age) => {
    const t = (age / simulatedPrior.hRefHours) ** figures.power;
    wear += rate * (t - time) + rate * figures.pathScatter * Math.sqrt(t - time) * by.normal();
    time = t;
    return wear;
  });
}
