import type { Caution } from '../outcome.ts';
import type { PointLife, PointLimits, Size, WearsWay } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import { MM_PER_INCH } from '../units/length.ts';
import { limitsOn, USUAL_NEW_SIZE_TOL_MM } from './partWalk.ts';
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
function mostWearMm({ wears, limits }: SizeContext): number {
  const limitMm = limits.rejectAtMm ?? limits.renewAtMm;
  const toLimit = limitMm === null ? 0 : wearOf(wears, limits.newSizeMm, limitMm);
  return toLimit > 0 ? FAR_BEYOND_LIMIT * toLimit : MOST_WEAR_SHARE * Math.abs(limits.newSizeMm);
}

/** Less than nothing by as much as the tolerance and a fiftieth of the size is no sound size. */
function fits(sizeMm: number, context: SizeContext): boolean {
  const { limits, wears } = context;
  const wearMm = wearOf(wears, limits.newSizeMm, sizeMm);
  return (
    wearMm <= mostWearMm(context) &&
    wearMm >= -((limits.newSizeTolMm ?? USUAL_NEW_SIZE_TOL_MM) + 0.02 * limits.newSizeMm)
  );
}

/** Other readings of a figure, likeliest slip first. */
const SLIPS: readonly { code: 'wrong-unit' | 'ten-times-off'; unit: string; times: number }[] = [
  { code: 'wrong-unit', unit: 'inch', times: MM_PER_INCH },
  { code: 'ten-times-off', unit: 'mm', times: 0.1 },
  { code: 'ten-times-off', unit: 'mm', times: 10 },
  { code: 'wrong-unit', unit: 'thousandth of an inch', times: MM_PER_INCH / 1000 },
];

function slipOf(sizeMm: number, context: SizeContext): Caution | null {
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
  const tolSdMm = (limits.newSizeTolMm || USUAL_NEW_SIZE_TOL_MM) / 4;
  const allowedMm = BEYOND_GAUGE_SD * Math.hypot(errorSdMm, tolSdMm);
  if (betterByMm <= allowedMm) return null;
  return { code: 'better-than-new', facts: { sizeMm, newSizeMm: limits.newSizeMm, betterByMm, gaugeMm: allowedMm } };
}

function pastReject({ sizeMm }: JudgedSize, { wears, limits }: SizeContext): Caution | null {
  if (limits.rejectAtMm === null) return null;
  const pastByMm = wearOf(wears, limits.rejectAtMm, sizeMm);
  return pastByMm > 0 ? { code: 'past-reject', facts: { sizeMm, rejectAtMm: limits.rejectAtMm, pastByMm } } : null;
}

/**
 * Judges every size of a point in order of its days, each against the sound ones of the same part before it: what an
 * import asks. Sizes already parked stay out and are not judged again.
 *
 * @returns judgement by size id; sizes without anything odd are left out
 */
export function judgePointSizes(point: PointLife, classNewSizeTolMm: number | null = null): Map<number, SizeJudgement> {
  const judged = new Map<number, SizeJudgement>();
  const days = [...new Set([...point.sizes, ...point.renewals].map(({ takenOn }) => takenOn))].sort();
  let last = new Map<string, JudgedSize & { takenOn: Day }>();
  for (const takenOn of days) {
    const ofDay = point.sizes.filter((size) => size.takenOn === takenOn && !size.parked);
    const renewals = point.renewals.filter((renewal) => renewal.takenOn === takenOn);
    const limits = limitsOn(point, takenOn);
    const judgeDay = (sizes: readonly Size[]) => {
      const context = {
        wears: point.wears,
        limits: { ...limits, newSizeTolMm: limits.newSizeTolMm ?? classNewSizeTolMm },
      };
      judgeStations(point, sizes, context, last, judged);
    };
    if (renewals.some(({ hoursKnown }) => !hoursKnown)) last = new Map();
    if (renewals.some(({ hoursKnown }) => hoursKnown)) {
      judgeDay(ofDay.filter(({ event }) => event === 'as-found'));
      last = new Map();
      judgeDay(ofDay.filter(({ event }) => event === 'as-left'));
    } else judgeDay(ofDay);
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
