import type { ShopLearning } from '../fit/learnShop.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import type { WearSeries } from '../series/wearSeries.ts';

/** What makes hours at limit uncertain, in the order they are told. */
export const WIDTH_SOURCES = ['class', 'own-rate', 'path', 'gauge', 'visit', 'start', 'drift'] as const;
export type WidthShare = { source: (typeof WIDTH_SOURCES)[number]; share: number };

export type WidthFrom = {
  pool: ShopLearning;
  /** of one machine: all classes, finished ones too */
  parts: readonly WearSeries[];
  pointId: number;
  limitWearMm: number;
  settings: ModelSettings;
};

/** A reading known to this is known exactly, for a wearing part [mm]. */
const EXACT_MM = 0.001;

/**
 * Which source brings how much of the width of hours at limit: each is held fixed in turn, all others left as they are.
 *   gain_i = 1 - (width with i fixed / width)^2, not below 0;   share_i = gain_i / sum of gains
 * class: its figures at the likeliest; own-rate: this part's rate at its middle; path: no scatter from here on; gauge: sizes
 * known exactly; visit: no error shared by a visit's sizes; start: fitted at known hours; drift: the wear law does not change.
 *
 * @returns none where the width is nothing, or beyond what is spoken for
 * @source own derivation: one-at-a-time fixing, as in first-order sensitivity analysis; shares are a guide, not a partition
 */
export function widthShares(from: WidthFrom): WidthShare[] {
  const law = lawOf(from);
  const width = law && widthOf(law, from);
  if (!law || !width) return [];
  const fixed: Record<WidthShare['source'], number | null> = {
    class: widthOf(likeliestShape(law), from),
    'own-rate': widthOf(middleRate(law), from),
    path: widthOf(withoutPath(law), from),
    gauge: refitWidth({ ...from, parts: from.parts.map(exactSizes) }),
    visit: refitWidth({ ...from, pool: withoutVisitError(from.pool) }),
    start: refitWidth({ ...from, parts: from.parts.map((part) => ({ ...part, startHoursSd: 0 })) }),
    drift: widthOf(law, { ...from, settings: { ...from.settings, driftDelta: 0 } }),
  };
  const gains = WIDTH_SOURCES.map((source) => {
    const left = fixed[source];
    return left === null ? 0 : Math.max(0, 1 - (left / width) ** 2);
  });
  const total = gains.reduce((sum, gain) => sum + gain, 0);
  return total > 0 ? WIDTH_SOURCES.map((source, i) => ({ source, share: gains[i]! / total })) : [];
}

const lawOf = ({ pool, parts, pointId, settings }: WidthFrom): PartLaw | undefined =>
  machineLaws(pool, parts, settings).find((law) => law.pointId === pointId);

const refitWidth = (from: WidthFrom): number | null => {
  const law = lawOf(from);
  return law ? widthOf(law, from) : null;
};

/** From low to high hours at limit; from low to middle where high lies beyond [h]. */
function widthOf(law: PartLaw, { limitWearMm, settings }: WidthFrom): number | null {
  const { low, middle, high, pastAtLastSize } = hoursAtLimit(law, limitWearMm, settings);
  const top = high ?? middle;
  return pastAtLastSize || low === null || top === null ? null : top - low;
}

function likeliestShape(law: PartLaw): PartLaw {
  const ofShape = new Float64Array(law.shapes.length);
  law.weight.forEach((weight, i) => {
    ofShape[law.shapeOf[i]!]! += weight;
  });
  const best = ofShape.indexOf(Math.max(...ofShape));
  return { ...law, weight: law.weight.map((weight, i) => (law.shapeOf[i] === best ? weight / ofShape[best]! : 0)) };
}

const middleRate = (law: PartLaw): PartLaw => ({
  ...law,
  rate: law.rate.map(() => Math.exp(law.basis.lnRateMean)),
});

const withoutPath = (law: PartLaw): PartLaw => ({
  ...law,
  shapes: law.shapes.map((shape) => ({ ...shape, pathScatter: 0 })),
});

const exactSizes = (part: WearSeries): WearSeries => ({
  ...part,
  readings: part.readings.map((reading) => ({ ...reading, errorSdMm: EXACT_MM })),
});

const withoutVisitError = (pool: ShopLearning): ShopLearning => ({
  ...pool,
  classes: pool.classes.map((one) => ({
    ...one,
    nodes: one.nodes.map((node) => ({ ...node, visitErrorMm: 0 })),
  })),
});
