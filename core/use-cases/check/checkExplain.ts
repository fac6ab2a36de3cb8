import type { checkExplain } from '../../contract/check.ts';
import type { GivenReplyOf, Handler, RequestOf } from '../../contract/operation.ts';
import { RefusedError } from '../../outcome.ts';
import { day } from '../../units/day.ts';
import { explainSize } from '../../way/explainSize.ts';
import { type Context, recordOf } from '../context.ts';
import { learningOfAll } from '../learning/shopLearning.ts';
import { machineOfPoint } from '../seriesNow.ts';
import { shopAround } from '../shopNow.ts';
import { sizeAgainst } from './checkRead.ts';
import { type KeptForecast, keptForecasts, scoredForecasts, stoodBefore } from './scoredForecasts.ts';

/**
 * What would explain a size; where the classes have not yet heard of it, once they have.
 *
 * @throws RefusedError unknown-point; size-without-forecast where nothing of that day can be laid against a forecast
 */
export const checkExplainHandler: Handler<typeof checkExplain, Context> = async (context, request) => {
  const atOnce = explained(context, request);
  if (atOnce) return atOnce;
  await learningOfAll(context);
  const { takenOn } = request;
  const caughtUp = explained(context, request);
  if (!caughtUp) throw new RefusedError({ code: 'size-without-forecast', facts: { path: 'takenOn', takenOn } });
  return caughtUp;
};

/** Null: nothing of that day can be laid against a forecast, as far as the classes have heard. */
function explained(
  context: Context,
  request: RequestOf<typeof checkExplain>,
): GivenReplyOf<typeof checkExplain> | null {
  const { pointId } = request;
  const now = shopAround(context, machineOfPoint(context, pointId));
  const takenOn = day(request.takenOn);
  const point = now.shop.life.points.find((one) => one.pointId === pointId);
  if (!point) throw new RefusedError({ code: 'unknown-point', facts: { path: 'pointId', pointId } });
  const kept = keptForecasts(recordOf(context), [pointId]);
  const { shop, learning, asOf } = now;
  const why = explainSize({ life: shop.life, asOf, learning, pointId, takenOn });
  const scored = scoredForecasts(now, kept).find((one) => one.point === point && one.visit.takenOn === takenOn);
  if (!why || !scored) return null;
  const last = kept.findLast((one) => stoodBefore(one, shop.ofPoint(point), scored.visit));
  const forecast = now.ofMachine(point.machineId).points.find((one) => one.pointId === pointId)!;
  return {
    size: sizeAgainst(now, scored),
    stood:
      last && scored.origin === 'kept'
        ? stoodOf(last)
        : {
            asOf: takenOn,
            machineHoursAtLimit: why.machineHoursAtLimit,
            machineHours: why.machineHours,
            widenedBy: 1,
          },
    now: { hoursLeft: forecast.hoursLeft, machineHours: forecast.machineHours },
    visit: why.visit,
    explanations: why.explanations,
  };
}

/** A forecast that was kept, on the hours of its machine. */
function stoodOf({ asOf, foretold }: KeptForecast) {
  const { machineHours, workedHours, share, hoursAtLimit, widenedBy } = foretold;
  const at = (worked: number | null | undefined) =>
    worked == null || machineHours === null || share <= 0 ? null : machineHours + (worked - workedHours) / share;
  const machineHoursAtLimit = {
    low: at(hoursAtLimit?.low),
    middle: at(hoursAtLimit?.middle),
    high: at(hoursAtLimit?.high),
  };
  return { asOf, machineHoursAtLimit, machineHours, widenedBy };
}
