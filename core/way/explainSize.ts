import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import { wearQuantiles } from '../forecast/wearAt.ts';
import { solveRising } from '../maths/solveRising.ts';
import { machineHoursOn } from '../reading/machineHours.ts';
import { presentShare } from '../reading/workedHours.ts';
import type { MachineLife, WorkShare } from '../shop/machineLife.ts';
import type { PointOnRecord, ShopLife } from '../shop/shopLife.ts';
import { type Day, daysBetween } from '../units/day.ts';
import { lawsAsSaid } from './lawsAsSaid.ts';
import { type Learning, withEveryClass } from './learning.ts';
import { type LookBefore, looksBefore, type ScoredSize, scored } from './scoredSizes.ts';
import { settingsOf, workTypeOn } from './settingsOf.ts';
import { partsOfMachine, type ShopSeries, shopSeries } from './shopSeries.ts';

/** A size that came out beyond its range, in the shop as it is. */
export type ExplainFrom = { life: ShopLife; asOf: Day; learning: Learning; pointId: number; takenOn: Day };

type Range = { low: number | null; middle: number | null; high: number | null };
type Facts = Record<string, string | number | boolean | null>;

/** One thing that would explain it. */
export type SizeExplanation = {
  code: 'hours' | 'renewal' | 'gauge' | 'share' | 'hard-worked';
  facts: Facts;
  /** the size would lie within its range then; null: it would be no size of this part */
  explains: boolean | null;
  /** machine hours left from the as-of day with the correction [h]; null: none can be reckoned */
  hoursLeft: Range | null;
};

/** What stood before the size, and what would explain it. */
export type ExplainedSize = {
  look: LookBefore;
  score: ScoredSize;
  /** hours of its machine when it was measured, and hours at limit on them as they would have been told before it [h] */
  machineHours: number | null;
  machineHoursAtLimit: Range;
  /** sizes of the visit that have a forecast, and how many lay to the same side of its middle */
  visit: { sizes: number; sameSide: number };
  explanations: SizeExplanation[];
};

/**
 * What would explain a size beyond its range: each cause as the record would stand if it were so, worked through the whole way
 * from hours and sizes to hours at limit. Nothing is written. The classes stay as learned: one size moves them little.
 * @returns null: there is no such size, or it was no forecast's business
 */
export function explainSize(from: ExplainFrom): ExplainedSize | null {
  const shop = shopSeries(from.life, from.asOf, from.learning.habit);
  const before = lookAgain(shop, from);
  const point = from.life.points.find(({ pointId }) => pointId === from.pointId);
  if (!before || !point) return null;
  const { look, score, others } = before;
  const share = shareOn(shop, point.machineId, from.takenOn);
  const limit = shop.ofPoint(point).renewAtWearMm;
  const at = shop
    .ofPoint(point)
    .history.find(
      ({ takenOn, ordinal, governing }) => takenOn === from.takenOn && ordinal === look.part.ordinal && governing,
    );
  const machineHours = at?.axisHours ?? null;
  const told = limit === null ? null : hoursAtLimit(look.law, limit, settingsOf(from.life));
  const onMachine = (worked: number | null) =>
    worked === null || machineHours === null ? null : machineHours + (worked - score.workedHours) / share;
  const all = [score, ...others];
  return {
    look,
    score,
    machineHours,
    machineHoursAtLimit: {
      low: onMachine(told?.low ?? null),
      middle: onMachine(told?.middle ?? null),
      high: onMachine(told?.high ?? null),
    },
    visit: { sizes: all.length, sameSide: all.filter(({ z }) => z > 0 === score.z > 0).length },
    explanations: explanationsOf({ from, shop, point, look, score, share }),
  };
}

type Case = {
  from: ExplainFrom;
  shop: ShopSeries;
  point: PointOnRecord;
  look: LookBefore;
  score: ScoredSize;
  share: number;
};

function explanationsOf(its: Case): SizeExplanation[] {
  const found = [wrongHours(its), missedRenewal(its), wrongSize(its), otherShare(its), hardWorked(its)];
  const likely = ({ explains }: SizeExplanation) => (explains === true ? 0 : explains === null ? 1 : 2);
  return found.filter((one) => one !== null).sort((a, b) => likely(a) - likely(b));
}

/** The size and its forecast in a shop, and those of the other sizes of its visit; null: not there. */
function lookAgain(shop: ShopSeries, { learning, pointId, takenOn }: ExplainFrom) {
  const point = shop.life.points.find((one) => one.pointId === pointId);
  const settings = settingsOf(shop.life);
  if (!point) return null;
  const series = shop.ofPoint(point);
  const part = [series.present, ...series.finished].find(({ readings }) =>
    readings.some((reading) => reading.takenOn === takenOn && reading.workedHours > 0),
  );
  if (!part) return null;
  const parts = partsOfMachine(shop, part.machineId, [point]);
  const looks = looksBefore(takenOn, parts, withEveryClass(learning, shop, settings).shop, settings);
  const look = looks.find((one) => one.part.pointId === pointId);
  if (!look) return null;
  const others = looks.filter((one) => one !== look).map((one) => scored(one, settings));
  return { look, score: scored(look, settings), others };
}

/** Hours left of the point's present part in a shop that is as if; null: no limit, or no hours. */
function hoursLeftIn(shop: ShopSeries, { learning, pointId, asOf }: ExplainFrom): Range | null {
  const point = shop.life.points.find((one) => one.pointId === pointId)!;
  const settings = settingsOf(shop.life);
  const { present, renewAtWearMm, workedHoursNow } = shop.ofPoint(point);
  const known = withEveryClass(learning, shop, settings);
  const parts = partsOfMachine(shop, present.machineId, [point]);
  const law = lawsAsSaid(known.shop, parts, settings, learning.coverage).find((one) => one.pointId === pointId);
  const share = shareOn(shop, point.machineId, asOf);
  if (!law || renewAtWearMm === null || workedHoursNow === null || share <= 0) return null;
  const { low, middle, high } = hoursAtLimit(law, renewAtWearMm, settings);
  const left = (worked: number | null) => (worked === null ? null : (worked - workedHoursNow) / share);
  return { low: left(low), middle: left(middle), high: left(high) };
}

const shareOn = ({ hours }: ShopSeries, machineId: number, on: Day): number => {
  const machine = hours.ofMachine(machineId);
  return machine ? presentShare(machine.life, on) : 1;
};

/** The cause as the record would stand: whether the size lies within its range then, and the hours left. */
function asIf({ from }: Case, life: ShopLife): Pick<SizeExplanation, 'explains' | 'hoursLeft'> {
  const shop = shopSeries(life, from.asOf, from.learning.habit);
  return { explains: lookAgain(shop, from)?.score.inside ?? null, hoursLeft: hoursLeftIn(shop, from) };
}

/** Worked hours of the part at which the size would be the middle one; null: none from its last size on. */
function hoursThatFit({ look, score, from }: Case): number | null {
  const { driftDelta } = settingsOf(from.life);
  const middleAt = (hours: number) => wearQuantiles(look.law, hours, [0.5], driftDelta)[0]!;
  const least = look.law.lastHours ?? 0;
  const most = score.workedHours + 3 * look.law.hRefHours;
  const [atLeast, atMost] = [middleAt(least), middleAt(most)];
  if (score.wearMm <= atLeast || score.wearMm >= atMost) return null;
  return solveRising(middleAt, score.wearMm, least, most, atLeast, atMost, 1e-4);
}

/** The dial was misread that day: the hours at which the size would be just as expected, and between which it must lie. */
function wrongHours(its: Case): SizeExplanation | null {
  const { from, shop, point, score, share } = its;
  const machine = shop.hours.ofMachine(point.machineId);
  const fit = hoursThatFit(its);
  const said = machine && machineHoursOn(machine.line, from.takenOn);
  if (!machine || !said || share <= 0) return null;
  const { nodes } = machine.line;
  const before = nodes.findLast(({ takenOn }) => takenOn < from.takenOn);
  const after = nodes.find(({ takenOn }) => takenOn > from.takenOn);
  const earliest = before?.machineHours ?? null;
  // no machine runs more than the day has
  const dayAndNight = before ? before.machineHours + 24 * daysBetween(before.takenOn, from.takenOn) : null;
  const latest = after ? Math.min(after.machineHours, dayAndNight ?? after.machineHours) : dayAndNight;
  const wouldBe = fit === null ? null : said.hours + (fit - score.workedHours) / share;
  const possible = wouldBe !== null && wouldBe >= (earliest ?? 0) && (latest === null || wouldBe <= latest);
  const facts = { machineHours: said.hours, wouldBe, earliest, latest, possible };
  const dialRead = nodes.some(({ takenOn }) => takenOn === from.takenOn);
  if (!possible || !dialRead) return { code: 'hours', facts, explains: false, hoursLeft: null };
  return { code: 'hours', facts, ...asIf(its, withDial(from, point.machineId, wouldBe - said.hours)) };
}

/** The dial of a day read otherwise, on the machine and on every sheet of it that day. */
function withDial({ life, takenOn }: ExplainFrom, machineId: number, byHours: number): ShopLife {
  const moved = <Row extends { takenOn: Day; dialHours: number | null }>(rows: readonly Row[]): Row[] =>
    rows.map((row) =>
      row.takenOn === takenOn && row.dialHours !== null ? { ...row, dialHours: row.dialHours + byHours } : row,
    );
  return {
    ...life,
    machines: life.machines.map((machine) =>
      machine.machineId === machineId ? { ...machine, dialEvents: moved(machine.dialEvents) } : machine,
    ),
    points: life.points.map((point) =>
      point.machineId === machineId
        ? {
            ...point,
            sizes: moved(point.sizes),
            renewals: moved(point.renewals),
            ...(point.shims && { shims: moved(point.shims) }),
          }
        : point,
    ),
  };
}

/** A part that came out less worn than expected may be another: put in between, and not noted. */
function missedRenewal(its: Case): SizeExplanation | null {
  const { from, look, score, point } = its;
  const renewedThat = point.renewals.some(({ takenOn, hoursKnown }) => takenOn === from.takenOn && !hoursKnown);
  if (score.z > 0 || renewedThat) return null;
  const renewal = { id: -1, takenOn: from.takenOn, dialHours: null, hoursKnown: false, sizeMm: null };
  const renewals = [...point.renewals.filter(({ takenOn }) => takenOn < from.takenOn), renewal].concat(
    point.renewals.filter(({ takenOn }) => takenOn >= from.takenOn) as (typeof renewal)[],
  );
  const facts = { fromOn: dayBefore(look, from.takenOn), toOn: from.takenOn };
  return { code: 'renewal', facts, ...asIf(its, withPoint(from, { ...point, renewals })) };
}

const dayBefore = ({ part }: LookBefore, takenOn: Day): Day | null =>
  part.readings.findLast((reading) => reading.takenOn < takenOn)?.takenOn ?? null;

const withPoint = ({ life }: ExplainFrom, point: PointOnRecord): ShopLife => ({
  ...life,
  points: life.points.map((one) => (one.pointId === point.pointId ? point : one)),
});

/** The gauge, its zero or a figure read wrong: the forecast without the size. */
function wrongSize(its: Case): SizeExplanation {
  const { from, point, score, look } = its;
  const sizes = point.sizes.map((size) => (size.takenOn === from.takenOn ? { ...size, parked: true } : size));
  const edgeMm = score.z > 0 ? score.mostWornMm : score.leastWornMm;
  const facts = {
    offMm: Math.abs(score.wearMm - edgeMm),
    gaugeErrors: Math.abs(score.wearMm - edgeMm) / look.reading.errorSdMm,
  };
  return { code: 'gauge', facts, explains: null, hoursLeft: asIf(its, withPoint(from, { ...point, sizes })).hoursLeft };
}

/** Since its last size the part worked in more or fewer of the machine's hours than was said. */
function otherShare(its: Case): SizeExplanation | null {
  const { from, shop, point, look, score, share } = its;
  const machine = shop.hours.ofMachine(point.machineId)?.life;
  const fit = hoursThatFit(its);
  const least = look.law.lastHours ?? 0;
  if (!machine || fit === null || score.workedHours <= least) return null;
  const wouldBe = (share * (fit - least)) / (score.workedHours - least);
  const facts = { share, wouldBe, since: dayBefore(look, from.takenOn) };
  if (wouldBe > 1 || wouldBe < 0.01) return { code: 'share', facts, explains: false, hoursLeft: null };
  const since = dayBefore(look, from.takenOn);
  const changed: WorkShare = { from: since, share: wouldBe, workType: workTypeOn(machine, from.asOf) };
  const earlier = machine.workShares.filter((one) => since !== null && (one.from === null || one.from < since));
  return { code: 'share', facts, ...asIf(its, withShares(from, machine, [...earlier, changed])) };
}

const withShares = ({ life }: ExplainFrom, machine: MachineLife, workShares: readonly WorkShare[]): ShopLife => ({
  ...life,
  machines: life.machines.map((one) => (one.machineId === machine.machineId ? { ...one, workShares } : one)),
});

/** Nothing is wrong: the machine is worked harder, or more gently, than its kind of work says. */
function hardWorked(its: Case): SizeExplanation | null {
  const { from, shop, point, score } = its;
  const machine = shop.hours.ofMachine(point.machineId)?.life;
  if (!machine) return null;
  const types = [...from.life.forecastSettings.workTypes].sort((a, b) => a.timesAsFast - b.timesAsFast);
  const word = workTypeOn(machine, from.asOf);
  const times = types.find(({ name }) => name === word)?.timesAsFast ?? 1;
  const next =
    score.z > 0
      ? types.find(({ timesAsFast }) => timesAsFast > times)
      : types.findLast(({ timesAsFast }) => timesAsFast < times);
  const facts = { harder: score.z > 0, word: next?.name ?? null, times: next?.timesAsFast ?? null };
  if (!next) return { code: 'hard-worked', facts, explains: false, hoursLeft: null };
  const said = machine.workShares.length > 0 ? machine.workShares : [{ from: null, share: 1, workType: null }];
  const shares = said.map((one) => ({ ...one, workType: next.name }));
  return { code: 'hard-worked', facts, ...asIf(its, withShares(from, machine, shares)) };
}
