import { fewerFigures } from '../fit/fewerFigures.ts';
import type { ClassLearning, ShopLearning } from '../fit/learnShop.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { type HoursAtLimit, hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import { type JointLaw, lastLook, slackAtLimit } from '../forecast/slackOfJoint.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import type { ClassCoverage } from './classCoverage.ts';
import { fittedWear } from './fittedWear.ts';
import { lawsAsSaid } from './lawsAsSaid.ts';
import { lnRateVarWithout, type RateSource } from './lnRateParts.ts';

/** What makes hours at limit uncertain, in the order it is told. */
const WIDTH_SOURCES = [
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
/** And the slack of a joint, which is all of that of pin and bores together. */
const JOINT_SOURCES = ['pin-rate', 'bore-rate'] as const;
export type WidthSource = (typeof WIDTH_SOURCES)[number] | (typeof JOINT_SOURCES)[number];

/** Width of the range of hours at limit, and what it would be without each source [worked h]. */
export type Width = {
  hours: number;
  /** the range is told up to its high end, or up to its middle where the high end lies beyond */
  to: 'high' | 'middle';
  without: { source: WidthSource; hours: number }[];
};

/** What is held of some parts, as it is told; and what that rests on. */
export type WidthFrom = {
  laws: ReadonlyMap<number, PartLaw>;
  pool: ShopLearning;
  /** of one machine: all classes, finished ones too */
  parts: readonly WearSeries[];
  coverage: readonly ClassCoverage[];
  settings: ModelSettings;
};

/** A reading known to this is known exactly, for a wearing part [mm]. */
const EXACT_MM = 0.001;

/**
 * The range of hours at limit, and what would be left of it if one source of doubt were known exactly, all others left as
 * they are. What is known better moves the middle as well; the range left is told at the middle there is:
 *   hours without = width x (width without / hours ahead at the middle without) / (width / hours ahead at the middle)
 * What has to be fitted again for it is by fewer figures, with and without.
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
export function widthWithout(from: WidthFrom & { pointId: number; limitWearMm: number }): Width | null {
  return widthBySource([from.pointId], from, WIDTH_SOURCES, ({ laws: [law], settings }) => {
    const limit = hoursAtLimit(law!, from.limitWearMm, settings);
    return reachOf(limit, law!.lastHours ?? 0);
  });
}

/**
 * The same of a joint's slack, forecast from its ends: each source known of pin and bores alike; besides,
 *
 *   pin-rate   it were known how fast the pin wears
 *   bore-rate  it were known how fast the bores wear
 */
export function widthOfJoint(from: WidthFrom & { joint: JointLaw; limitGainMm: number }): Width | null {
  const { pin, bores } = from.joint;
  const pointIds = [pin, ...bores].map(({ law }) => law.pointId);
  return widthBySource(
    pointIds,
    from,
    [...JOINT_SOURCES, ...WIDTH_SOURCES],
    ({ laws: [ofPin, ...ofBores], settings }) => {
      const joint = { pin: { ...pin, law: ofPin! }, bores: bores.map((bore, k) => ({ ...bore, law: ofBores[k]! })) };
      return reachOf(slackAtLimit(joint, from.limitGainMm, settings), lastLook(joint));
    },
  );
}

/** Laws of the parts looked at, in their order, and the settings they are carried on with. */
type Held = { laws: readonly PartLaw[]; settings: ModelSettings };
type Reach = { width: number; ahead: number; to: Width['to'] };

/** @returns null: no range, or not every one of the points has a law */
function widthBySource(
  pointIds: readonly number[],
  from: WidthFrom,
  sources: readonly WidthSource[],
  reachOfHeld: (held: Held) => Reach | null,
): Width | null {
  const told = heldOf(pointIds, from.laws, from.settings);
  const reach = told && reachOfHeld(told);
  const quick = { ...from, pool: fewerFigures(from.pool, from.parts) };
  const fitted = reach && fittedTo(pointIds, quick);
  if (!reach || !fitted) return null;
  const hoursOf = (source: WidthSource): number => {
    const [base, without] = isFittedFor(source)
      ? [reachOfHeld(fitted), reachOfHeld(fittedTo(pointIds, unsettled(source, fitted, quick)) ?? fitted)]
      : [reach, reachOfHeld(known(source, told, from))];
    const tells = base?.to === reach.to && without?.to === reach.to && without.ahead > 0 && base.width > 0;
    return tells ? reach.width * ((without.width / without.ahead) * (base.ahead / base.width)) : reach.width;
  };
  return { hours: reach.width, to: reach.to, without: sources.map((source) => ({ source, hours: hoursOf(source) })) };
}

/** @returns null: not every one of the points has a law */
function heldOf(pointIds: readonly number[], of: WidthFrom['laws'], settings: ModelSettings): Held | null {
  const laws = pointIds.flatMap((pointId) => of.get(pointId) ?? []);
  return laws.length === pointIds.length ? { laws, settings } : null;
}

function fittedTo(pointIds: readonly number[], { pool, parts, coverage, settings }: WidthFrom): Held | null {
  const all = lawsAsSaid(pool, parts, settings, coverage);
  return heldOf(pointIds, new Map(all.map((law) => [law.pointId, law])), settings);
}

/** Sources that bear on what the laws rest on: once one is known they are fitted again. */
type FittedFor = 'gauge' | 'visit' | 'start' | 'curvature';
const isFittedFor = (source: WidthSource): source is FittedFor =>
  ['gauge', 'visit', 'start', 'curvature'].includes(source);

/** What the laws rest on once such a source is known. */
function unsettled(source: FittedFor, { laws }: Held, from: WidthFrom): WidthFrom {
  switch (source) {
    case 'gauge':
      return withOwn(from, laws, (law, part) => atFittedWear(law, part, EXACT_MM));
    case 'visit': {
      const settled = withOwn(from, laws, (law, part) => atFittedWear(law, part, null));
      return { ...settled, pool: withoutVisitError(from.pool) };
    }
    case 'start':
      return withOwn(from, laws, (_, part) => ({ ...part, startHoursSd: 0 }));
    case 'curvature':
      return { ...from, pool: withOnePower(from.pool, new Set(laws.map(({ partClass }) => partClass))) };
  }
}

/** The laws, and what they are carried on with, once another source is known. */
function known(source: Exclude<WidthSource, FittedFor>, held: Held, from: WidthFrom): Held {
  const each = (change: (law: PartLaw, place: number) => PartLaw): Held => ({ ...held, laws: held.laws.map(change) });
  switch (source) {
    case 'own-rate':
    case 'machine':
    case 'class':
      return each((law) => narrowedRate(law, classOf(from.pool, law.partClass), source, from.settings));
    case 'pin-rate':
      return each((law, place) => (place === 0 ? atOneRate(law) : law));
    case 'bore-rate':
      return each((law, place) => (place > 0 ? atOneRate(law) : law));
    case 'path':
      return each((law) => ({ ...law, shapes: law.shapes.map((shape) => ({ ...shape, pathScatter: 0 })) }));
    case 'drift':
      return { ...held, settings: { ...held.settings, driftDelta: 0 } };
  }
}

/** Low to high hours at limit, or to the middle where high lies beyond, and hours from the last look to the middle [h]. */
function reachOf({ low, middle, high, pastAtLastSize }: HoursAtLimit, lastHours: number): Reach | null {
  if (pastAtLastSize || low === null || middle === null) return null;
  return { width: (high ?? middle) - low, ahead: middle - lastHours, to: high === null ? 'middle' : 'high' };
}

const classOf = (pool: ShopLearning, partClass: string): ClassLearning | undefined =>
  pool.classes.find((one) => one.partClass === partClass);

/** The present parts of some laws changed. */
const withOwn = (
  from: WidthFrom,
  laws: readonly PartLaw[],
  change: (law: PartLaw, part: WearSeries) => WearSeries,
): WidthFrom => ({
  ...from,
  parts: from.parts.map((part) => {
    const law = part.present ? laws.find(({ pointId }) => pointId === part.pointId) : undefined;
    return law ? change(law, part) : part;
  }),
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

/** Every node of each class bent alike, by its mean ln power. */
const withOnePower = (pool: ShopLearning, partClasses: ReadonlySet<string>): ShopLearning => ({
  classes: pool.classes.map((one) => {
    if (!partClasses.has(one.partClass)) return one;
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
  const { lnRateVar } = law.basis;
  if (!learned || lnRateVar <= 0) return law;
  return drawnTogether(law, Math.sqrt(lnRateVarWithout(source, law, learned, settings) / lnRateVar));
}

const atOneRate = (law: PartLaw): PartLaw => drawnTogether(law, 0);

/** ln rates at this share of their distance from the mean one. */
function drawnTogether(law: PartLaw, share: number): PartLaw {
  const { lnRateMean } = law.basis;
  return { ...law, rate: law.rate.map((rate) => Math.exp(lnRateMean + (Math.log(rate) - lnRateMean) * share)) };
}
