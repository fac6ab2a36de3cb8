import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import { defaultModelSettings, type ModelSettings } from '#core/fit/modelSettings.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import { chanceWornPast } from '#core/forecast/wearLaw.ts';
import { plainChance, plainHours } from '../reference/plain-model/plainHours.ts';
import { fittedPlainMixture, plainPartOfMixture } from '../reference/plain-model/plainModel.ts';
import { plainPartOf, plainPrior } from './plainForetell.ts';
import type { ShopSet } from './shopSets.ts';
import { simulatedClass } from './simulatedClass.ts';

/**
 * The model with its additions switched off: what the plain reference model sums over its grids. A class's figures are learned from
 * all its parts; as it stands the program learns them from some of a large class.
 */
export const plainSettings: ModelSettings = {
  ...defaultModelSettings,
  partsPerClassForFigures: 2000,
  oddPartShare: 0,
  linearChance: 0,
  lnPowerTail: 0,
};

/** Each addition by itself, and all of them: the reference is extended by the same. */
export const additions: { title: string; settings: ModelSettings }[] = [
  { title: 'none', settings: plainSettings },
  { title: 'odd parts', settings: { ...plainSettings, oddPartShare: defaultModelSettings.oddPartShare } },
  { title: 'even wear', settings: { ...plainSettings, linearChance: defaultModelSettings.linearChance } },
  { title: 'power tail', settings: { ...plainSettings, lnPowerTail: defaultModelSettings.lnPowerTail } },
  {
    title: 'all three',
    settings: { ...defaultModelSettings, partsPerClassForFigures: plainSettings.partsPerClassForFigures },
  },
];

/** Classes that wear in many ways: a new one for each k. */
export const variedClass = (parts: number, k: number): ShopSet =>
  simulatedClass(50_000 + 1000 * parts + k, parts, {
    pathScatter: [0.15, 0.08, 0.22][k % 3]!,
    power: [1.05, 0.9, 1, 1.15][k % 4]!,
    partScatter: [0.3, 0.15, 0.3, 0.3, 0.5][k % 5]!,
  });

/** The same with one part more, which was never read. */
export const withOneNeverRead = (set: ShopSet): ShopSet => ({
  ...set,
  series: [...set.series, { ...set.series[0]!, pointId: NEVER_READ, machineId: NEVER_READ, readings: [] }],
});
const NEVER_READ = 1_000_000;

/** How many classes of each size are compared: about 110 parts, in full over 2,000. */
export const agreementClasses = (full: boolean): [parts: number, classes: number][] =>
  full
    ? [
        [3, 60],
        [10, 50],
        [30, 24],
        [100, 9],
        [300, 1],
      ]
    : [
        [3, 4],
        [10, 1],
        [100, 1],
      ];

/** The same with each addition in: in full about 2,000 parts. */
export const additionClasses = (full: boolean): [parts: number, classes: number][] =>
  full
    ? [
        [3, 100],
        [10, 60],
        [30, 20],
        [100, 6],
      ]
    : [[10, 1]];

/** Differences of one part's forecast, production against reference: hours as shares, chance as it is. */
export type Agreement = { low: number; middle: number; high: number; chance: number };

/** Every hours figure within half a per cent, and the chance within 0.002. */
export const agrees = ({ low, middle, high, chance }: Agreement): boolean =>
  Math.max(low, middle, high) <= 0.005 && chance <= 0.002;

export type AgreementRun = {
  parts: Agreement[];
  /** seconds of work: the class learned, and all its parts forecast */
  reference: { learn: number; forecast: number };
  production: { learn: number; forecast: number };
};

/** Seconds this process has worked: what else the computer does is not counted. */
export function worked(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Times all parts are forecast over before and while production is timed: the first rounds go into compiling it. */
const WARM_UP = 3;
const LAPS = 10;

/**
 * Production and reference on one class of parts, each on a machine of its own. Forecast of a part, on both sides: its law, chance by
 * some hours, three hours figures.
 * @param timed true: production is warmed up and gone over many times, as it runs in a shop; its times are those of one round
 */
export function compareWithPlain(set: ShopSet, settings: ModelSettings, timed = false): AgreementRun {
  const prior = [...set.priors.values()][0]!;
  const limitWearMm = Math.exp(prior.m0);
  const start = worked();
  const learning = learnShop(set.series, set.priors, settings);
  const learned = worked();
  const forecastAll = () =>
    set.series.map((one) => {
      const law = machineLaws(learning, [one], settings)[0]!;
      const hours = hoursAtLimit(law, limitWearMm, settings);
      const ahead = 1.2 * (hours.middle ?? prior.hRefHours);
      return { hours, ahead, chance: chanceWornPast(law, limitWearMm, ahead, settings.driftDelta) };
    });
  for (let lap = 0; lap < (timed ? WARM_UP : 0); lap++) forecastAll();
  const compiled = worked();
  for (let lap = 1; lap < (timed ? LAPS : 1); lap++) forecastAll();
  const found = forecastAll();
  const produced = worked();
  const parts = set.series.map(plainPartOf);
  const plain = fittedPlainMixture(parts, plainPrior(prior, settings), settings.linearChance);
  const fitted = worked();
  const agreements = parts.map((part, i) => {
    const law = plainPartOfMixture(plain, part);
    const { hours, ahead, chance } = found[i]!;
    const last = part.readings.at(-1)?.hours ?? null;
    const at = (u: number) => plainHours(law, last, limitWearMm, u, settings.driftDelta);
    return {
      low: apart(hours.low, at(0.1)),
      middle: apart(hours.middle, at(0.5)),
      high: apart(hours.high, at(0.9)),
      chance: Math.abs(chance - plainChance(law, last, limitWearMm, ahead, settings.driftDelta)),
      past: hours.pastAtLastSize,
    };
  });
  return {
    parts: agreements.filter((one) => !one.past),
    production: { learn: learned - start, forecast: (produced - compiled) / (timed ? LAPS : 1) },
    reference: { learn: fitted - produced, forecast: worked() - fitted },
  };
}

export const apart = (a: number | null, b: number | null): number =>
  a === null && b === null ? 0 : Math.abs((a ?? 1e9) / (b ?? 1e9) - 1);

/** The value below which a share of a list lies. */
export function share(values: readonly number[], of: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(of * sorted.length))]!;
}
