import type { checkWorth } from '../../contract/check.ts';
import type { Handler } from '../../contract/operation.ts';
import { machineOrRefuse } from '../../record/machineStore.ts';
import { worthMeasuring } from '../../way/worthMeasuring.ts';
import { type Context, recordOf } from '../context.ts';
import { shopAround } from '../shopNow.ts';

/** @throws RefusedError unknown-machine */
export const checkWorthHandler: Handler<typeof checkWorth, Context> = (context, { machineId }) => {
  const { name } = machineOrRefuse(recordOf(context), machineId);
  const { shop, learning, asOf } = shopAround(context, machineId);
  const { points, best } = worthMeasuring(shop, machineId, learning);
  return {
    asOf,
    machineId,
    machine: name,
    points: points.map(({ point: { pointId, item, position, point }, narrowsHours }) => {
      return { pointId, item, position, point, narrowsHours };
    }),
    best: best && {
      pointIds: best.points.map(({ pointId }) => pointId),
      minutes: best.minutes,
      narrowsHours: best.narrowsHours,
      widthHours: best.widthHours,
    },
  };
};
