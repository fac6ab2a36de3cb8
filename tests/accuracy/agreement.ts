import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import { defaultModelSettings, type ModelSettings } from '#core/fit/modelSettings.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import { chanceWornPast } from '#core/forecast/wearLaw.ts';
import {
  fittedPlainClass,
  type PlainNode,
  plainChance,
  plainHours,
  plainPart,
} from '../reference/plain-model/plainModel.ts';
import { plainPartOf, plainPrior } from './plainForetell.ts';
import type { ShopSet } from './shopSets.ts';

/** The model with its additions switched off: what the plain reference model sums over its grids. */
export const plainSettings: ModelSettings = {
  ...defaultModelSettings,
  oddPartShare: 0,
  linearChance: 0,
  lnPowerTail: 0,
};

/** Differences of one part's forecast, production against reference. */
export type Agreement = { low: number; middle: number; high: number; chance: number };

export type AgreementRun = {
  parts: Agreement[];
  referenceSeconds: number;
  /** learning and forecasting, and forecasting alone */
  productionSeconds: number;
  forecastSeconds: number;
};

/** Production and reference on one class of parts, each on a machine of its own. */
export function compareWithPlain(set: ShopSet, settings: ModelSettings): AgreementRun {
  const prior = [...set.priors.values()][0]!;
  const limitWearMm = Math.exp(prior.m0);
  const start = performance.now();
  const learning = learnShop(set.series, set.priors, settings);
  const forecastAll = () =>
    set.series.map((one) => {
      const law = machineLaws(learning, [one], settings)[0]!;
      return { law, hours: hoursAtLimit(law, limitWearMm, settings) };
    });
  // the first time round is spent on compiling it
  forecastAll();
  const learned = performance.now();
  const found = forecastAll();
  const produced = performance.now();
  const parts = set.series.map(plainPartOf);
  const plain = fittedPlainClass(parts, plainPrior(prior, settings));
  const agreements = parts.map((part, i) => {
    const nodes = pruned(plainPart(plain, part));
    const { law, hours } = found[i]!;
    const last = law.lastHours;
    const at = (u: number) => plainHours(nodes, prior.hRefHours, last, limitWearMm, u, settings.driftDelta);
    const middle = at(0.5);
    const ahead = 1.2 * (middle ?? prior.hRefHours);
    return {
      low: apart(hours.low, at(0.1)),
      middle: apart(hours.middle, middle),
      high: apart(hours.high, at(0.9)),
      chance: Math.abs(
        chanceWornPast(law, limitWearMm, ahead, settings.driftDelta) -
          plainChance(nodes, prior.hRefHours, last, limitWearMm, ahead, settings.driftDelta),
      ),
      past: hours.pastAtLastSize,
    };
  });
  return {
    parts: agreements.filter((one) => !one.past),
    productionSeconds: (produced - start) / 1000,
    forecastSeconds: (produced - learned) / 1000,
    referenceSeconds: (performance.now() - produced) / 1000,
  };
}

const apart = (a: number | null, b: number | null): number =>
  a === null && b === null ? 0 : Math.abs((a ?? 1e9) / (b ?? 1e9) - 1);

const pruned = (nodes: readonly PlainNode[]): PlainNode[] => {
  const kept = nodes.filter((node) => node.weight > 1e-6);
  const total = kept.reduce((sum, node) => sum + node.weight, 0);
  return kept.map((node) => ({ ...node, weight: node.weight / total }));
};

/** The value below which a share of a list lies. */
export function share(values: readonly number[], of: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(of * sorted.length))]!;
}
