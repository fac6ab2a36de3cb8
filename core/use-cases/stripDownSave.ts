import { scoreSize } from '../check/scoreSize.ts';
import type { PointForecast } from '../contract/forecast.ts';
import type { Handler, RequestOf } from '../contract/operation.ts';
import type { stripDownSave } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { pointsOfShop } from '../way/pointsOfShop.ts';
import type { ShopSeries } from '../way/shopSeries.ts';
import { hoursLeftOfMachine, poolByFewer } from '../way.ts';
import { measuredVisits } from './check/scoredForecasts.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { keepForecasts, type StandingForecast, standingForecasts } from './keepForecasts.ts';
import { learningSoFar } from './learning/shopLearning.ts';
import { type NotedDial, notedDial } from './notedDial.ts';
import { refuseSavedMeanwhile } from './savedMeanwhile.ts';
import { seriesAround } from './seriesNow.ts';
import { nowOf, type ShopNow, shopAround, shopNowFrom } from './shopNow.ts';
import { refuseTypedMeanwhile } from './typedMeanwhile.ts';
import { judgeTyped, judgeTypedRenewals, type TypedStripDown, typedStripDown } from './typedStripDown.ts';
import { isEmpty, parkedOf, writeStripDown } from './writeStripDown.ts';

/**
 * Saves a strip-down whole, in one step: dial, sizes, renewals and findings, or nothing. Sizes that were questioned and not
 * answered are kept aside. What was typed is then no draft any more.
 *
 * @throws RefusedError nothing-typed; measured-meanwhile unless `anotherSure`; typed-meanwhile; the dial's question (dial-went-back, ...) unless `dialSure`; and as typedStripDown
 */
export const stripDownSaveHandler: Handler<typeof stripDownSave, Context> = (context, request) => {
  const typed = typedStripDown(context, request);
  if (isEmpty(request)) throw new RefusedError({ code: 'nothing-typed', facts: { path: 'sizes' } });
  refuseSavedMeanwhile(context, request);
  refuseTypedMeanwhile(context, request);
  const judged = { sizes: judgeTyped(context, typed), renewals: judgeTypedRenewals(context, typed) };
  const dial = dialOf(context, typed, request);
  const before = shopAround(context, request.machineId);
  const hoursBefore = hoursLeftOfMachine(before.shop, request.machineId, before.learning);
  const standing = standingBefore(context, typed, before);
  const made = entryNow(context, 'stripDown/save', request.fitter);
  const stripDownId = writeEntry(recordOf(context), made, (w, entryId) => {
    const id = writeStripDown(w, entryId, typed, judged, dial);
    keepForecasts(w, standing, { why: 'strip-down', entryId, stripDownId: id }, made.madeAt);
    return id;
  });
  // what was learned before serves for the machine at once, by fewer figures; the classes are learned again when the shop is next looked at
  const after = seriesAround(context, request.machineId);
  const hoursAfter = hoursLeftOfMachine(after, request.machineId, before.learning);
  return {
    stripDownId,
    parked: parkedOf(request, judged),
    moved: movedForecasts(pointsOfShop(before.shop.life.points).on(request.machineId), hoursBefore, hoursAfter),
    against: againstStanding(standing, after, typed.takenOn),
  };
};

/**
 * While a sheet is typed: what its save says that it moved is laid against the hours left by then, the forecasts it keeps are
 * those of before, and its machine will be gone by at fewer figures, so that all three can be worked out before it. Of a day gone by they
 * are left to the save.
 */
export function readyToSave(context: Context, typed: TypedStripDown): void {
  const learning = learningSoFar(context);
  if (!learning) return;
  const { machineId } = typed.draft;
  const now = nowOf(context, seriesAround(context, machineId), learning);
  hoursLeftOfMachine(now.shop, machineId, learning);
  poolByFewer(learning, now.shop, machineId);
  if (typed.takenOn === now.asOf) standingBefore(context, typed, now);
}

/**
 * The forecasts of the parts it opens as they stood just before. A sheet that comes late is laid against what was held on its
 * own day: nothing measured since is in it, though what the classes have learned since is; by fewer figures, as its machine then had
 * less to say than its classes have heard.
 */
function standingBefore(context: Context, { draft, takenOn }: TypedStripDown, before: ShopNow): StandingForecast[] {
  const opened = new Set([...draft.sizes, ...draft.renewals].map(({ pointId }) => pointId));
  if (takenOn === before.asOf) return standingForecasts(before, draft.machineId, opened);
  const shop = seriesAround(context, draft.machineId, takenOn);
  return standingForecasts(shopNowFrom(shop, before.learning), draft.machineId, opened);
}

/** The sizes of the sheet against what stood just before it. */
function againstStanding(standing: readonly StandingForecast[], { life, ofPoint }: ShopSeries, takenOn: Day) {
  const scored = standing.flatMap(({ pointId, partOrdinal, foretold }) => {
    const point = life.points.find((one) => one.pointId === pointId)!;
    const visit = measuredVisits(ofPoint(point)).find((one) => one.takenOn === takenOn && one.ordinal === partOrdinal);
    const score = visit && scoreSize(foretold, { ...visit.governing, workedHours: visit.workedHours });
    return score ? [{ point, sizeMm: visit.governing.sizeMm, score }] : [];
  });
  const beyond = scored.flatMap(({ point: { pointId, item, position, point }, sizeMm, score }) => {
    const { inside, leastWornMm, mostWornMm } = score;
    return inside ? [] : [{ pointId, item, position, point, sizeMm, leastWornMm, mostWornMm }];
  });
  return { sizes: scored.length, beyond };
}

type Asked = RequestOf<typeof stripDownSave>;

function dialOf(context: Context, { takenOn }: TypedStripDown, { machineId, dialHours, dialSure }: Asked): NotedDial {
  const dial = notedDial(context, machineId, takenOn, dialHours, 'dialHours', dialSure);
  const question = dial && 'asked' in dial ? dial.asked.question : null;
  if (question && !dialSure)
    throw new RefusedError({ code: question.code, facts: { ...question.facts, path: 'dialHours' } });
  return dial;
}

/** A forecast has moved when a figure of it differs by more than this [h]. */
const MOVED_HOURS = 0.5;

type HoursLeft = ReadonlyMap<number, PointForecast['hoursLeft']>;

function movedForecasts(points: readonly PointOnRecord[], before: HoursLeft, after: HoursLeft) {
  return points.flatMap(({ pointId, item, position, point }) => {
    const was = before.get(pointId);
    const now = after.get(pointId);
    const figures = ['low', 'middle', 'high'] as const;
    const moved =
      was !== undefined && now !== undefined && !figures.every((figure) => sameHours(was[figure], now[figure]));
    return moved ? [{ pointId, item, position, point, before: was, after: now }] : [];
  });
}

const sameHours = (a: number | null, b: number | null): boolean =>
  a === null || b === null ? a === b : Math.abs(a - b) <= MOVED_HOURS;
