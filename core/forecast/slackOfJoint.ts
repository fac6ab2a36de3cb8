import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartBasis, PartLaw } from '../fit/partLaw.ts';
import { normalCdf, normalQuantile } from '../maths/normal.ts';
import { solveRising } from '../maths/solveRising.ts';
import type { PartForecast } from './forecastPart.ts';
import type { HoursAtLimit } from './hoursAtLimit.ts';
import { slopesAt } from './rateAt.ts';
import { RANGE_CHANCES, type Range } from './wearAt.ts';
import { wearNodes } from './wearLaw.ts';

/** One end of a joint: what is held of its part, and its worked hours at the as-of day [h]. */
export type JointEnd = { law: PartLaw; workedHoursNow: number };

/**
 * A pin and the bores it runs in. `offsetMm`: slack between the two parts when new, less the size slack is counted from, so
 * that slack gained = wear of the bore + wear of the pin + offset [mm].
 */
export type JointLaw = { pin: JointEnd; bores: readonly (JointEnd & { offsetMm: number })[] };

type Component = { weight: number; mean: number; variance: number };

/** As many as tell the wear of one end: see {@link gathered}. */
const COMPONENTS = 28;

/** Strata of the pin's own scatter where several bores share it. */
const STRATA = 16;
const STRATUM_Z = Array.from({ length: STRATA }, (_, i) => normalQuantile((i + 0.5) / STRATA));

/** Hours looked at, from one to the most, evenly in ln. */
const TABLE_POINTS = 48;

/** Where a stretch ends, in sd of all: finer where most of the weight lies. */
const STRETCH_ENDS = Float64Array.from(
  { length: COMPONENTS - 1 },
  (_, i) => 1.6 * normalQuantile((i + 1) / COMPONENTS),
);

/** How many stretches end at or below z. */
function stretchOf(z: number): number {
  let low = 0;
  let high = STRETCH_ENDS.length;
  while (low < high) {
    const half = (low + high) >> 1;
    if (z < STRETCH_ENDS[half]!) high = half;
    else low = half + 1;
  }
  return low;
}

/**
 * A mixture of Gaussians gathered into few, each with the weight, mean and variance of those in its stretch: the first two
 * moments stay as they were in every stretch.
 * @param variances absent: of points
 * @source own derivation: law of total variance
 */
function gathered(weights: Float64Array, means: Float64Array, variances?: Float64Array): Component[] {
  const count = weights.length;
  let mean = 0;
  for (let i = 0; i < count; i++) mean += weights[i]! * means[i]!;
  let square = 0;
  let within = 0;
  for (let i = 0; i < count; i++) {
    square += weights[i]! * (means[i]! - mean) ** 2;
    if (variances) within += weights[i]! * variances[i]!;
  }
  const spread = Math.sqrt(square);
  if (!(spread > 0)) return [{ weight: 1, mean, variance: within }];
  const sums = {
    weight: new Float64Array(COMPONENTS),
    mean: new Float64Array(COMPONENTS),
    square: new Float64Array(COMPONENTS),
  };
  for (let i = 0; i < count; i++) {
    const weight = weights[i]!;
    const at = means[i]!;
    const k = stretchOf((at - mean) / spread);
    sums.weight[k]! += weight;
    sums.mean[k]! += weight * at;
    sums.square[k]! += weight * ((variances ? variances[i]! : 0) + at * at);
  }
  return Array.from(sums.weight, (weight, k) => {
    const at = sums.mean[k]! / weight;
    return { weight, mean: at, variance: Math.max(0, sums.square[k]! / weight - at * at) };
  }).filter(({ weight }) => weight > 0);
}

const atHours = ({ law, workedHoursNow }: JointEnd, ahead: number, delta: number): Component[] => {
  const { mean, variance } = wearNodes(law, Math.max(0, workedHoursNow + ahead), delta);
  return gathered(law.weight, mean, variance);
};

const chanceBelow = (value: number, mean: number, variance: number): number =>
  variance > 0 ? normalCdf((value - mean) / Math.sqrt(variance)) : value >= mean ? 1 : 0;

/**
 * Chance that slack gained is at most `gainMm` some worked hours from now: both ends' laws of wear added, taken as independent
 * given all sizes of the machine. One bore: each pair of components is a Gaussian,
 *   P = sum_i sum_j p_i q_j Phi((gain - offset - M_i - M_j) / sqrt(V_i + V_j))
 * Several bores on one pin: the widest counts, so all must be below; the pin's wear is shared and is summed over,
 *   P = sum_i p_i mean over z of product over bores of sum_j q_j Phi((gain - offset_b - M_i - z sqrt V_i - M_j) / sqrt V_j)
 *
 * @param ahead worked hours from the as-of day [h]; at or after the last size of either end
 * @param delta drift of the law per e-fold of hours
 * @source own derivation: the sum of two independent Gaussians, mixed; the greatest of several
 * @checked core/forecast/slackOfJoint.test.ts against the normal sum in closed form and against simulation
 */
export const chanceSlackBelow = (joint: JointLaw, gainMm: number, ahead: number, delta: number): number =>
  chanceBelowOf(endsAt(joint, ahead, delta), gainMm);

/** Wear of both ends some worked hours from now: the same for every slack asked about there. */
type EndsAt = { pin: Component[]; bores: { offsetMm: number; wear: Component[] }[] };

const endsAt = ({ pin, bores }: JointLaw, ahead: number, delta: number): EndsAt => ({
  pin: atHours(pin, ahead, delta),
  bores: bores.map((bore) => ({ offsetMm: bore.offsetMm, wear: atHours(bore, ahead, delta) })),
});

function chanceBelowOf({ pin, bores }: EndsAt, gainMm: number): number {
  let chance = 0;
  const [only] = bores;
  if (bores.length === 1 && only) {
    for (const p of pin)
      for (const q of only.wear)
        chance += p.weight * q.weight * chanceBelow(gainMm - only.offsetMm, p.mean + q.mean, p.variance + q.variance);
    return Math.min(1, chance);
  }
  for (const p of pin) {
    for (const z of STRATUM_Z) {
      const left = gainMm - p.mean - z * Math.sqrt(p.variance);
      let all = 1;
      for (const { offsetMm, wear } of bores)
        all *= wear.reduce((sum, q) => sum + q.weight * chanceBelow(left - offsetMm, q.mean, q.variance), 0);
      chance += (p.weight / STRATA) * all;
    }
  }
  return Math.min(1, chance);
}

/** The last time anybody looked at either end, in worked hours from now; before it nothing is asked [h, 0 or less]. */
export const lastLook = ({ pin, bores }: JointLaw): number =>
  Math.min(0, Math.max(...[pin, ...bores].map(({ law, workedHoursNow }) => (law.lastHours ?? 0) - workedHoursNow)));

/** Chance by worked hours from now; past0: that it had at the last look, at `from`; nothing is asked beyond `most` hours. */
type SlackPastBy = { from: number; past0: number; most: number; chanceAt: (ahead: number) => number };

/** Asked for the hours at limit, then for their dates: each joint's last answer is kept with it. */
const askedLast = new WeakMap<JointLaw, { limitGainMm: number; settings: ModelSettings; answer: SlackPastBy }>();

/**
 * Chance that slack has reached its limit by some worked hours from now, given only that it had not at the last look:
 *   (F(x) - F0) / (1 - F0),   F(x) = 1 - P(gain <= limit at x)
 * Worked out once at hours even in ln since that look, and drawn straight between in normal quantiles.
 */
export function slackPastBy(joint: JointLaw, limitGainMm: number, settings: ModelSettings): SlackPastBy {
  const before = askedLast.get(joint);
  if (before?.limitGainMm === limitGainMm && before.settings === settings) return before.answer;
  const answer = workedOutPastBy(joint, limitGainMm, settings);
  askedLast.set(joint, { limitGainMm, settings, answer });
  return answer;
}

function workedOutPastBy(joint: JointLaw, limitGainMm: number, settings: ModelSettings): SlackPastBy {
  const from = lastLook(joint);
  const pastAt = (ahead: number) => 1 - chanceSlackBelow(joint, limitGainMm, ahead, settings.driftDelta);
  const past0 = pastAt(from);
  const ends = [joint.pin, ...joint.bores];
  const most = Math.max(
    ...ends.map(({ law, workedHoursNow }) => settings.beyondHRefs * law.hRefHours - workedHoursNow),
  );
  const top = Math.log(Math.max(2, most - from));
  const given = (past: number) => (past0 >= 1 ? 1 : Math.min(1, Math.max(0, (past - past0) / (1 - past0))));
  const table = Array.from({ length: TABLE_POINTS }, (_, i) =>
    given(pastAt(from + Math.exp((top * i) / (TABLE_POINTS - 1)))),
  );
  // what rises by nature may not fall by rounding
  for (let i = 1; i < TABLE_POINTS; i++) table[i] = Math.max(table[i]!, table[i - 1]!);
  const chanceAt = (ahead: number): number => {
    if (ahead <= from) return 0;
    const place = (Math.max(0, Math.log(ahead - from)) / top) * (TABLE_POINTS - 1);
    const before = Math.min(TABLE_POINTS - 2, Math.floor(place));
    return between(table[before]!, table[before + 1]!, Math.min(1, place - before));
  };
  return { from, past0, most, chanceAt };
}

const FAR_Z = 8;
const quantile = (chance: number): number =>
  chance <= 0 ? -FAR_Z : chance >= 1 ? FAR_Z : Math.min(FAR_Z, Math.max(-FAR_Z, normalQuantile(chance)));

function between(low: number, high: number, share: number): number {
  if (high <= low) return high;
  return normalCdf(quantile(low) + share * (quantile(high) - quantile(low)));
}

/** Hours at limit of the slack, counted from the as-of day [worked h]; as hoursAtLimit() gives them for one part. */
export function slackAtLimit(joint: JointLaw, limitGainMm: number, settings: ModelSettings): HoursAtLimit {
  const { from, past0, most, chanceAt } = slackPastBy(joint, limitGainMm, settings);
  if (past0 > 0.5) return { low: from, middle: from, high: from, chancePastAtLastSize: past0, pastAtLastSize: true };
  const end = chanceAt(most);
  const find = (chance: number): number | null =>
    end < chance ? null : solveRising(chanceAt, chance, from, most, 0, end, 1e-6);
  const range = { low: find(0.1), middle: find(0.5), high: find(0.9) };
  return { ...range, chancePastAtLastSize: past0, pastAtLastSize: false };
}

/** Slack gained at some worked hours from now [mm]: 10, 50 and 90 % points. */
export function slackAt(joint: JointLaw, ahead: number, delta: number): Range {
  const ends = endsAt(joint, ahead, delta);
  const { mean, sd } = moments(ends);
  const below = (gainMm: number) => chanceBelowOf(ends, gainMm);
  const low = mean - 8 * sd - 1e-6;
  const high = mean + 8 * sd + 1e-6;
  const point = (chance: number) => solveRising(below, chance, low, high, below(low), below(high), 1e-6);
  return { low: point(RANGE_CHANCES.low), middle: point(RANGE_CHANCES.middle), high: point(RANGE_CHANCES.high) };
}

/** Where slack is looked for: about the widest bore's mean, as wide as all ends together [mm]. */
function moments({ pin, bores }: EndsAt): { mean: number; sd: number } {
  const of = (all: readonly Component[]) => {
    const mean = all.reduce((sum, one) => sum + one.weight * one.mean, 0);
    const square = all.reduce((sum, one) => sum + one.weight * (one.variance + one.mean ** 2), 0);
    return { mean, variance: Math.max(0, square - mean * mean) };
  };
  const p = of(pin);
  const ofBores = bores.map(({ offsetMm, wear }) => ({ ...of(wear), offsetMm }));
  const mean = p.mean + Math.max(...ofBores.map((bore) => bore.mean + bore.offsetMm));
  return { mean, sd: Math.sqrt(p.variance + ofBores.reduce((sum, bore) => sum + bore.variance, 0)) };
}

/**
 * Forecast of a joint's slack from pin and bore together, where nobody measured the slack itself since. Its hours at limit are
 * given as those of a part of `asOfHours` worked hours, as forecastPart() gives them.
 * @param limitGainMm slack gained at the limit [mm]; null: no limit
 */
export function forecastJoint(
  joint: JointLaw,
  limitGainMm: number | null,
  asOfHours: number,
  settings: ModelSettings,
): PartForecast {
  const limit = limitGainMm === null ? null : slackAtLimit(joint, limitGainMm, settings);
  const counted = (ahead: number | null) => (ahead === null ? null : asOfHours + ahead);
  const delta = settings.driftDelta;
  return {
    wearMm: slackAt(joint, 0, delta),
    ratePerHourMm: rateOfJoint(joint),
    hoursAtLimit: limit && {
      ...limit,
      low: counted(limit.low),
      middle: counted(limit.middle),
      high: counted(limit.high),
    },
    chancePast: limitGainMm === null ? null : 1 - chanceSlackBelow(joint, limitGainMm, 0, delta),
    pastLimitMm:
      limitGainMm !== null && limit?.pastAtLastSize
        ? slackAt(joint, lastLook(joint), delta).middle - limitGainMm
        : null,
    basis: basisOf(joint),
  };
}

/** The bore that has probably most slack now. */
const widest = ({ bores }: JointLaw, delta = 0): JointEnd & { offsetMm: number } =>
  bores.reduce((wide, bore) => {
    const mean = (end: typeof bore) =>
      atHours(end, 0, delta).reduce((sum, one) => sum + one.weight * one.mean, end.offsetMm);
    return mean(bore) > mean(wide) ? bore : wide;
  });

/** Slope of slack now [mm/h]: every slope of the pin with every one of the widest bore. */
export function rateOfJoint(joint: JointLaw): Range {
  const slopes = ({ law, workedHoursNow }: JointEnd) => gathered(law.weight, slopesAt(law, workedHoursNow));
  const bore = slopes(widest(joint));
  const pairs = slopes(joint.pin)
    .flatMap((p) => bore.map((q) => ({ weight: p.weight * q.weight, slope: p.mean + q.mean })))
    .sort((a, b) => a.slope - b.slope);
  const point = (chance: number): number => {
    let reached = 0;
    for (const { weight, slope } of pairs) {
      reached += weight;
      if (reached >= chance) return slope;
    }
    return pairs.at(-1)?.slope ?? 0;
  };
  return { low: point(RANGE_CHANCES.low), middle: point(RANGE_CHANCES.middle), high: point(RANGE_CHANCES.high) };
}

/** What it rests on: that of pin and widest bore, each by its share in the slope. */
function basisOf(joint: JointLaw): PartBasis {
  const ends = [joint.pin, widest(joint)];
  const rates = ends.map(({ law }) => Math.exp(law.basis.lnRateMean) / law.hRefHours);
  const total = rates.reduce((sum, rate) => sum + rate, 0);
  const mixed = (key: keyof PartBasis) =>
    ends.reduce((sum, { law }, i) => sum + (rates[i]! / total) * law.basis[key], 0);
  return {
    own: mixed('own'),
    machine: mixed('machine'),
    lnRateMean: mixed('lnRateMean'),
    lnRateVar: mixed('lnRateVar'),
    lnRateVarClassAndMachine: mixed('lnRateVarClassAndMachine'),
    lnRateVarClass: mixed('lnRateVarClass'),
  };
}
