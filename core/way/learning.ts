import { type ClassPrior, classPrior } from '../fit/classPrior.ts';
import { type LearnOptions, learnShop, type ShopLearning } from '../fit/learnShop.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import { median } from '../maths/median.ts';
import { wearOf } from '../series/visitSizes.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { limitsOn } from '../shop/limitsOn.ts';
import type { ShopLife } from '../shop/shopLife.ts';
import { type ClassCoverage, classCoverage } from './classCoverage.ts';
import { type ClassLooks, classLooks } from './classLooks.ts';
import { fingerprint } from './fingerprint.ts';
import { drawMachines, drawnFrom, lifeOfMachines } from './heardMachines.ts';
import { type ScoredSize, scoredSizes } from './scoredSizes.ts';
import type { ShopHabit } from './shopHours.ts';
import { allParts, type ShopSeries, shopSeries } from './shopSeries.ts';

/** Raised whenever the model of fit/ changes, so that what an earlier program kept is learned again. */
export const MODEL_VERSION = 21;

/** What the shop has taught of its part classes and of how its machines are used, and of what: plain numbers, to be kept. */
export type Learning = {
  fingerprint: string;
  shop: ShopLearning;
  habit: ShopHabit;
  /** sizes of each machine's last visits against what would have been foretold for them, and how each class did */
  scored: readonly ScoredSize[];
  coverage: readonly ClassCoverage[];
  /** how the parts of each class came to be measured */
  looks: readonly ClassLooks[];
};

/**
 * Learns every part class of the shop, unless what was kept was learned from the same parts, priors and settings.
 * @param kept an earlier answer; given back as it is while its fingerprint holds
 */
export function learn(
  shop: ShopSeries,
  settings: ModelSettings,
  kept: Learning | null = null,
  options: LearnOptions = {},
): Learning {
  const from = learnedFrom(shop, settings);
  if (kept?.fingerprint === from.fingerprint) return kept;
  const learned = learnShop(from.parts, from.priors, settings, options);
  const looked = new Set(drawMachines(drawnFrom(from.shop.life), MACHINES_SCORED));
  const scored = scoredSizes(
    learned,
    from.parts.filter((part) => looked.has(part.machineId)),
    settings,
  );
  const { habit } = from.shop.hours;
  return {
    fingerprint: from.fingerprint,
    shop: learned,
    habit,
    scored,
    coverage: classCoverage(scored),
    looks: classLooks(from.shop),
  };
}

/** Forecasts of so many machines a class are scored at most: some thousand sizes tell a share to 1 % (common practice, no source). */
const MACHINES_SCORED = 60;

/**
 * The machines a shop's classes are learned from, walked by themselves: a large shop's are drawn. A shop in which all are
 * heard is given back as it is.
 */
function heardShop(shop: ShopSeries, settings: ModelSettings): { shop: ShopSeries; parts: WearSeries[] } {
  const { life, asOf } = shop;
  const heard = life.machines.length > settings.machinesPerClass ? drawn(life, settings.machinesPerClass) : null;
  if (!heard) return { shop, parts: allParts(shop) };
  const own = shopSeries(lifeOfMachines(life, heard), asOf);
  const ids = new Set(heard);
  return { shop: own, parts: allParts(own).filter((part) => ids.has(part.machineId)) };
}

function drawn(life: ShopLife, most: number): number[] | null {
  const machines = drawnFrom(life);
  const heard = drawMachines(machines, most);
  return heard.length < machines.filter(({ measuredClasses }) => measuredClasses.size > 0).length ? heard : null;
}

/** Parts and priors a learning rests on, and the name they and the machines' known hours go by. */
export function learnedFrom(whole: ShopSeries, settings: ModelSettings) {
  const { shop, parts } = heardShop(whole, settings);
  const priors = priorsOf(shop, settings);
  const { season, hoursPerYearDefault } = shop.life;
  const rest = [
    MODEL_VERSION,
    settings,
    [...priors.values()],
    parts,
    shop.hours.stretches,
    season,
    hoursPerYearDefault,
  ];
  return { shop, parts, priors, fingerprint: fingerprint(JSON.stringify(rest)) };
}

/** A learning that knows every class of the shop: one that is too old for a new class takes that class's prior. */
export function withEveryClass(learning: Learning, shop: ShopSeries, settings: ModelSettings): Learning {
  const learned = new Set(learning.shop.classes.map((one) => one.partClass));
  if (shop.life.partClasses.every(({ name }) => learned.has(name))) return learning;
  const missing = [...priorsOf(shop, settings)].filter(([name]) => !learned.has(name));
  if (missing.length === 0) return learning;
  const added = learnShop([], new Map(missing), settings);
  return { ...learning, shop: { ...learning.shop, classes: [...learning.shop.classes, ...added.classes] } };
}

/** Priors of all classes, by name; the limit a class goes to is the middle one of its points. */
function priorsOf({ life, asOf }: ShopSeries, settings: ModelSettings): Map<string, ClassPrior> {
  const limits = Map.groupBy(
    life.points.flatMap((point) => {
      const { newSizeMm, renewAtMm } = limitsOn(point, asOf);
      const wearMm = renewAtMm === null ? 0 : wearOf(point.wears, newSizeMm, renewAtMm);
      return wearMm > 0 ? [{ partClass: point.partClass, wearMm }] : [];
    }),
    ({ partClass }) => partClass,
  );
  const byName = [...life.partClasses].sort((a, b) => (a.name < b.name ? -1 : 1));
  return new Map(
    byName.map((partClass) => {
      const wears = limits.get(partClass.name)?.map(({ wearMm }) => wearMm) ?? [];
      return [partClass.name, classPrior(partClass, median(wears), settings)];
    }),
  );
}
