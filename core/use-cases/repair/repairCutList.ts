import type { Handler } from '../../contract/operation.ts';
import { type repairCutList, zRepairOption } from '../../contract/repair.ts';
import { orRefuse } from '../../outcome.ts';
import { repairChoicesOf } from '../../record/repairStore.ts';
import { cutList, rackOf } from '../../repair/cut-list/cutList.ts';
import { type Context, recordOf } from '../context.ts';
import { hoursOfMachine, seriesAround } from '../seriesNow.ts';
import { shopGoesBy } from './shopFigures.ts';

/** @throws RefusedError unknown-machine */
function positionsOn(context: Context, machineId: number): number[] {
  hoursOfMachine(context, machineId);
  const points = seriesAround(context, machineId).life.points.filter((point) => point.machineId === machineId);
  return [...new Set(points.map(({ positionId }) => positionId))];
}

/** The cut list of all repairs chosen for one machine, or for all. */
export const repairCutListHandler: Handler<typeof repairCutList, Context> = async (context, { machineId }) => {
  const record = recordOf(context);
  const parts = repairChoicesOf(record, machineId === null ? undefined : positionsOn(context, machineId)).flatMap(
    ({ option }) => zRepairOption.pick({ toMake: true }).parse(option).toMake,
  );
  const { figures, rack: lying } = shopGoesBy(record);
  const rack = rackOf(figures, lying);
  const { boughtMm, keepFromMm, saw } = rack;
  return { groups: orRefuse(await cutList(parts, rack)), saw: { ...saw, boughtMm, keepFromMm } };
};
