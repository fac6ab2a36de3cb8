import type { ClassLearning, ShopLearning } from '../fit/learnShop.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import type { ClassCoverage } from './classCoverage.ts';
import { fittedWear } from './fittedWear.ts';
import { lawsAsSaid } from './lawsAsSaid.ts';
import { lnRateVarWithout, type RateSource } from './lnRateParts.ts';

/** What makes hours at limit uncertain, in the order it is told. */
export const WIDTH_SOURCES = [
  'gauge',
  'visit',
  'start',
  'own-rate',
  'machine',
  'class',
  'curvature',
  'path',
  'drift',
] as const;
export type WidthSource = (typeof WIDTH_SOURCES)[number];

/** Width of the range of hours at limit, and what it would be without each source [worked h]. */
export type Width = {
  hours: number;
  /** the range is told up to its high end, or up to its middle where the high end lies beyond */
  to: 'high' | 'middle';
  without: { source: WidthSource; hours: number }[];
};

export type WidthFrom = {
  pool: ShopLearning;
  /** of one machine: all classes, finished ones too */
  parts: readonly WearSeries[];
  pointId: number;
  limitWearMm: number;
  coverage: readonly ClassCoverage[];
  settings: ModelSettings;
};

/** A reading known to this is known exactly, for a wearing part [mm]. */
const EXACT_MM = 0.001;

/**
 * The range of hours at limit, and what would be left of it if one source of doubt were known exactly, all others left as
 * they are. What is known better moves the middle as well; the range left is told at the middle there is:
 *   hours without = width without x (hours ahead at the middle / the same without)
 * The parts do not add up to the whole: what one source leaves open another may fill.
 *
 *   gauge      the part's own sizes had no error: its readings lie where the fit holds them to be
 *   visit      nothing was shared by the sizes of one visit
 *   start      it was known when the part was fitted
 *   own-rate   like parts on one machine wore alike
 *   machine    its machine's harshness were known
 *   class      the mean rate of such parts were known
 *   curvature  it were known whether their wear runs in or quickens
 *   path       wear went on without ups and downs from here
 *   drift      the law of wear did not change from here on
 *
 * @returns null where there is no range, or its middle lies beyond
 * @source own derivation: one-at-a-time fixing, as in first-order sensitivity analysis (A. Saltelli and others, Global
 *   Sensitivity Analysis: The Primer, 2008); ln rate by conditional normals, see lnRateParts.ts
 */
export function widthWithout(from: WidthFrom): Width | null {
  const law = lawOf(from);
  const reach = law && reachOf(law, from);
  if (!law || !reach) return null;
  const hoursOf = (source: WidthSource): number => {
    const without = reachOf(...known(source, law, from));
    return without === null || without.to !== reach.to || without.ahead <= 0
      ? reach.width
      : without.width * (reach.ahead / without.ahead);
  };
  return {
    hours: reach.width,
    to: reach.to,
    without: WIDTH_SOURCES.map((source) => ({ source, hours: hoursOf(source) })),
  };
}

const lawOf = ({ pool, parts, pointId, coverage, settings }: WidthFrom): PartLaw | undefined =>
  lawsAsSaid(pool, parts, settings, coverage).find((law) => law.pointId === pointId);

/** The law, and what it is carried on with, once a source is known. */
function known(source: WidthSource, law: PartLaw, from: WidthFrom): [PartLaw, WidthFrom] {
  const refitted = (changed: WidthFrom): [PartLaw, WidthFrom] => [lawOf(changed) ?? law, from];
  switch (source) {
    case 'gauge':
      return refitted(withOwn(from, (part) => atFittedWear(law, part, EXACT_MM)));
    case 'visit': {
      const settled = withOwn(from, (part) => atFittedWear(law, part, null));
      return refitted({ ...settled, pool: withoutVisitError(from.pool) });
    }
    case 'start':
      return refitted(withOwn(from, (part) => ({ ...part, startHoursSd: 0 })));
    case 'curvature':
      return refitted({ ...from, pool: withOnePower(from.pool, law.partClass) });
    case 'own-rate':
    case 'machine':
    case 'class':
      return [narrowedRate(law, classOf(from.pool, law.partClass), source, from.settings), from];
    case 'path':
      return [{ ...law, shapes: law.shapes.map((shape) => ({ ...shape, pathScatter: 0 })) }, from];
    case 'drift':
      return [law, { ...from, settings: { ...from.settings, driftDelta: 0 } }];
  }
}

type Reach = { width: number; ahead: number; to: Width['to'] };

/** Low to high hours at limit, or to the middle where high lies beyond, and hours from the last size to the middle [h]. */
function reachOf(law: PartLaw, { limitWearMm, settings }: WidthFrom): Reach | null {
  const { low, middle, high, pastAtLastSize } = hoursAtLimit(law, limitWearMm, settings);
  if (pastAtLastSize || low === null || middle === null) return null;
  const ahead = middle - (law.lastHours ?? 0);
  return { width: (high ?? middle) - low, ahead, to: high === null ? 'middle' : 'high' };
}

const classOf = (pool: ShopLearning, partClass: string): ClassLearning | undefined =>
  pool.classes.find((one) => one.partClass === partClass);

const withOwn = (from: WidthFrom, change: (part: WearSeries) => WearSeries): WidthFrom => ({
  ...from,
  parts: from.parts.map((part) => (part.present && part.pointId === from.pointId ? change(part) : part)),
});

/** Sizes as the fit holds them, so that knowing them better does not move the middle. @param errorSdMm null: as it was */
function atFittedWear(law: PartLaw, part: WearSeries, errorSdMm: number | null): WearSeries {
  const fitted = fittedWear(
    law,
    part,
    part.readings.map(({ workedHours }) => workedHours),
  );
  return {
    ...part,
    readings: part.readings.map((reading, i) => ({
      ...reading,
      wearMm: fitted[i]!.middle,
      errorSdMm: errorSdMm ?? reading.errorSdMm,
    })),
  };
}

const withoutVisitError = (pool: ShopLearning): ShopLearning => ({
  classes: pool.classes.map((one) => ({
    ...one,
    sharedErrors: false,
    nodes: one.nodes.map((node) => ({ ...node, visitErrorMm: 0 })),
  })),
});

/** Every node of the class bent alike, by its mean ln power. */
const withOnePower = (pool: ShopLearning, partClass: string): ShopLearning => ({
  classes: pool.classes.map((one) => {
    if (one.partClass !== partClass) return one;
    const power = Math.exp(one.nodes.reduce((sum, node) => sum + node.weight * Math.log(node.power), 0));
    return { ...one, nodes: one.nodes.map((node) => ({ ...node, power })) };
  }),
});

/** The part's ln rate drawn together about its mean, to the spread it would have. */
function narrowedRate(
  law: PartLaw,
  learned: ClassLearning | undefined,
  source: RateSource,
  settings: ModelSettings,
): PartLaw {
  const { lnRateMean, lnRateVar } = law.basis;
  if (!learned || lnRateVar <= 0) return law;
  const shrink = Math.sqrt(lnRateVarWithout(source, law, learned, settings) / lnRateVar);
  return { ...law, rate: law.rate.map((rate) => Math.exp(lnRateMean + (Math.log(rate) - lnRateMean) * shrink)) };
}
