import type { Caution } from '../outcome.ts';
import { limitsAsFound, limitsOn } from '../shop/limitsOn.ts';
import type { PointLife, PointLimits, Renewal, Size, WearsWay } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import { MM_PER_INCH } from '../units/length.ts';
import { newSizeOfPart, newSizeTolOf } from './partWalk.ts';
import { averageStations, wearOf } from './visitSizes.ts';

/** What a person may say to a questioned size. */
export type SizeChoice = 'measure-again' | 'right-as-read' | 'was-renewed' | 'wrong-place';

/** What is odd about a size; `parked`: it waits for an answer, out of the forecast. */
export type SizeJudgement = { cautions: Caution[]; parked: boolean; choices: SizeChoice[] };

export type JudgedSize = { sizeMm: number; errorSdMm: number };

/** What a size is judged against. */
export type SizeContext = {
  wears: WearsWay;
  limits: Pick<PointLimits, 'newSizeMm' | 'newSizeTolMm' | 'rejectAtMm' | 'renewAtMm'>;
  /** the present part's last size at the same station; null: none yet */
  last: (JudgedSize & { takenOn: Day }) | null;
};

/** Beyond this many sd a difference is no gauge error. */
const BEYOND_GAUGE_SD = 3;

/** Wear beyond this many times the wear at the last limit is taken for a slip of unit or place when another reading fits. Common practice, no source. */
const FAR_BEYOND_LIMIT = 3;

/** Of what its limit leaves, what wears down still has at least this share: worn further it would have failed. Common practice, no source. */
const LEAST_OF_LIMIT = 0.5;

/** Share of the new size taken as the most wear when a point has no limits. Common practice, no source. */
const MOST_WEAR_SHARE = 0.25;

/**
 * Judges one size before it is used.
 *  - wrong-unit (inches, or thousandths of one, typed as mm), ten-times-off: the size is far out and the other reading of it fits
 *  - better-than-last: by more than 3 sqrt(s1^2 + s2^2), beyond gauge error: gauge, swelling, wrong place, or renewed
 *  - better-than-new: by more than 3 sqrt(s^2 + tau0^2)
 *  - past-reject: told, not questioned; the size is used
 * The first of the first three kinds that holds is what parks a size; a slip of unit explains the rest.
 *
 * @source shop practice; thresholds of three sd: common practice, no source
 */
export function judgeSize(size: JudgedSize, context: SizeContext): SizeJudgement {
  const slip = slipOf(size.sizeMm, context);
  if (slip) return { cautions: [slip], parked: true, choices: ['measure-again', 'right-as-read', 'wrong-place'] };
  const cautions = [betterThanLast(size, context), betterThanNew(size, context)].filter((found) => found !== null);
  if (cautions.length > 0) {
    const renewed: SizeChoice[] = context.last ? ['was-renewed'] : [];
    return { cautions, parked: true, choices: ['measure-again', 'right-as-read', ...renewed, 'wrong-place'] };
  }
  const past = pastReject(size, context);
  return past
    ? { cautions: [past], parked: false, choices: ['measure-again'] }
    : { cautions: [], parked: false, choices: [] };
}

/** Most wear a sound size of this point may show [mm]. */
function mostWearMm({ wears, limits: { newSizeMm, renewAtMm, rejectAtMm } }: SizeContext): number {
  const limitMm = rejectAtMm ?? renewAtMm;
  const toLimit = limitMm === null ? 0 : wearOf(wears, newSizeMm, limitMm);
  if (limitMm === null || toLimit <= 0) return MOST_WEAR_SHARE * Math.abs(newSizeMm);
  const far = FAR_BEYOND_LIMIT * toLimit;
  return wears === 'down' ? Math.min(far, newSizeMm - LEAST_OF_LIMIT * limitMm) : far;
}

/** Less than nothing by as much as the tolerance and a fiftieth of the size is no sound size. */
function fits(sizeMm: number, context: SizeContext): boolean {
  const { limits, wears } = context;
  const wearMm = wearOf(wears, limits.newSizeMm, sizeMm);
  return wearMm <= mostWearMm(context) && wearMm >= -(newSizeTolOf(limits) + 0.02 * limits.newSizeMm);
}

/** Other readings of a figure, likeliest slip first. */
const SLIPS: readonly { code: 'wrong-unit' | 'ten-times-off'; unit: string; times: number }[] = [
  { code: 'wrong-unit', unit: 'inch', times: MM_PER_INCH },
  { code: 'ten-times-off', unit: 'mm', times: 0.1 },
  { code: 'ten-times-off', unit: 'mm', times: 10 },
  { code: 'wrong-unit', unit: 'thousandth of an inch', times: MM_PER_INCH / 1000 },
];

/** Another reading of a figure that is far out: in inches or their thousandths, or ten times off; null: it may stand. */
export function slipOf(sizeMm: number, context: SizeContext): Caution | null {
  if (fits(sizeMm, context) || context.limits.newSizeMm <= 0) return null;
  const slip = SLIPS.find(({ times }) => fits(sizeMm * times, context));
  if (!slip) return null;
  const facts = {
    sizeMm,
    likelyMm: Math.round(sizeMm * slip.times * 1e6) / 1e6,
    unit: slip.unit,
    newSizeMm: context.limits.newSizeMm,
  };
  return { code: slip.code, facts };
}

function betterThanLast({ sizeMm, errorSdMm }: JudgedSize, { wears, last }: SizeContext): Caution | null {
  if (!last) return null;
  const betterByMm = -wearOf(wears, last.sizeMm, sizeMm);
  const gaugeMm = BEYOND_GAUGE_SD * Math.hypot(errorSdMm, last.errorSdMm);
  if (betterByMm <= gaugeMm) return null;
  return {
    code: 'better-than-last',
    facts: { sizeMm, lastSizeMm: last.sizeMm, lastOn: last.takenOn, betterByMm, gaugeMm },
  };
}

function betterThanNew({ sizeMm, errorSdMm }: JudgedSize, { wears, limits }: SizeContext): Caution | null {
  const betterByMm = -wearOf(wears, limits.newSizeMm, sizeMm);
  const allowedMm = BEYOND_GAUGE_SD * Math.hypot(errorSdMm, newSizeTolOf(limits) / 4);
  if (betterByMm <= allowedMm) return null;
  return { code: 'better-than-new', facts: { sizeMm, newSizeMm: limits.newSizeMm, betterByMm, gaugeMm: allowedMm } };
}

function pastReject({ sizeMm }: JudgedSize, { wears, limits }: SizeContext): Caution | null {
  if (limits.rejectAtMm === null) return null;
  const pastByMm = wearOf(wears, limits.rejectAtMm, sizeMm);
  return pastByMm > 0 ? { code: 'past-reject', facts: { sizeMm, rejectAtMm: limits.rejectAtMm, pastByMm } } : null;
}

/**
 * Judges every size of a point in order of its days, each against the sound ones of the same part before it, and against
 * the size that part was put in with, less packing put in since: what an import asks. As-left sizes are also judged against the as-found ones of their
 * day: better than those without a renewal, and somebody forgot to write it down. Sizes already parked stay out and are not
 * judged again.
 *
 * @returns judgement by size id; sizes without anything odd are left out
 */
export function judgePointSizes(point: PointLife, classNewSizeTolMm: number | null = null): Map<number, SizeJudgement> {
  const judged = new Map<number, SizeJudgement>();
  const days = [...new Set([...point.sizes, ...point.renewals, ...(point.shims ?? [])].map(({ takenOn }) => takenOn))];
  let last = new Map<string, JudgedSize & { takenOn: Day }>();
  let newSizeMm: number | null = null;
  let packedMm = 0;
  for (const takenOn of days.sort()) {
    const ofDay = point.sizes.filter((size) => size.takenOn === takenOn && !size.parked);
    const renewals = point.renewals.filter((renewal) => renewal.takenOn === takenOn);
    const judge = (event: Size['event']) => {
      const limits = (event === 'as-found' ? limitsAsFound : limitsOn)(point, takenOn);
      const newSizeTolMm = newSizeTolOf(limits, classNewSizeTolMm);
      const newMm = (newSizeMm ?? limits.newSizeMm) - packedMm;
      const context = { wears: point.wears, limits: { ...limits, newSizeTolMm, newSizeMm: newMm } };
      const sizes = ofDay.filter((size) => size.event === event);
      judgeStations(point, sizes, context, last, judged);
    };
    const comesIn = (renewal: Renewal) => {
      if (renewal.station) {
        last.delete(renewal.station);
        return;
      }
      newSizeMm = newSizeOfPart(point, renewal, classNewSizeTolMm);
      packedMm = 0;
      last = new Map();
    };
    for (const renewal of renewals.filter(({ hoursKnown }) => !hoursKnown)) comesIn(renewal);
    judge('as-found');
    for (const renewal of renewals.filter(({ hoursKnown }) => hoursKnown)) comesIn(renewal);
    if (!renewals.some(({ station }) => !station))
      for (const { shimMm } of (point.shims ?? []).filter((shim) => shim.takenOn === takenOn)) {
        packedMm += shimMm;
        for (const [station, size] of last) last.set(station, { ...size, sizeMm: size.sizeMm - shimMm });
      }
    judge('as-left');
  }
  return judged;
}

function judgeStations(
  point: PointLife,
  sizes: readonly Size[],
  context: Omit<SizeContext, 'last'>,
  last: Map<string, JudgedSize & { takenOn: Day }>,
  judged: Map<number, SizeJudgement>,
): void {
  const before = new Map(last);
  for (const size of sizes) {
    const [alone] = averageStations(point, [size]);
    const judgement = judgeSize(alone!, { ...context, last: before.get(size.station) ?? null });
    if (judgement.cautions.length > 0) judged.set(size.id, judgement);
  }
  const sound = sizes.filter(({ id }) => !judged.get(id)?.parked);
  for (const { station, sizeMm, errorSdMm } of averageStations(point, sound)) {
    last.set(station, { sizeMm, errorSdMm, takenOn: sizes[0]!.takenOn });
  }
}
