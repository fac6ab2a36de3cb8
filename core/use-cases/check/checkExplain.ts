import type { checkExplain } from '../../contract/check.ts';
import type { Handler } from '../../contract/operation.ts';
import { RefusedError } from '../../outcome.ts';
import { day } from '../../units/day.ts';
import { explainSize } from '../../way/explainSize.ts';
import { type Context, recordOf } from '../context.ts';
import { shopNow } from '../shopNow.ts';
import { sizeAgainst } from './checkRead.ts';
import { type KeptForecast, keptForecasts, scoredForecasts, stoodBefore } from './scoredForecasts.ts';

/** @throws RefusedError unknown-point; size-without-forecast where nothing of that day can be laid against a forecast */
export const checkExplainHandler: Handler<typeof checkExplain, Context> = (context, request) => {
  const now = shopNow(context);
  const { pointId } = request;
  const takenOn = day(request.takenOn);
  const point = now.shop.life.points.find((one) => one.pointId === pointId);
  if (!point) throw new RefusedError({ code: 'unknown-point', facts: { path: 'pointId', pointId } });
  const kept = keptForecasts(recordOf(context), [pointId]);
  const { shop, learning, asOf } = now;
  const explained = explainSize({ life: shop.life, asOf, learning, pointId, takenOn });
  const scored = scoredForecasts(now, kept).find((one) => one.point === point && one.visit.takenOn === takenOn);
  if (!explained || !scored)
    throw new RefusedError({ code: 'size-without-forecast', facts: { path: 'takenOn', takenOn } });
  const last = kept.findLast((one) => stoodBefore(one, shop.ofPoint(point), scored.visit));
  const forecast = now.ofMachine(point.machineId).points.find((one) => one.pointId === pointId)!;
  return {
    size: sizeAgainst(now, scored),
    stood:
      last && scored.origin === 'kept'
        ? stoodOf(last)
        : {
            asOf: takenOn,
            machineHoursAtLimit: explained.machineHoursAtLimit,
            machineHours: explained.machineHours,
            widenedBy: 1,
          },
    now: { hoursLeft: forecast.hoursLeft, machineHours: forecast.machineHours },
    visit: explained.visit,
    explanations: explained.explanations,
  };
};

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
