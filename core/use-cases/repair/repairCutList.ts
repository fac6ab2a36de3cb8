import type { Handler } from '../../contract/operation.ts';
import { type repairCutList, zRepairOption } from '../../contract/repair.ts';
import { orRefuse } from '../../outcome.ts';
import { repairChoicesOf } from '../../record/repairStore.ts';
import { cutList, rackOf } from '../../repair/cut-list/cutList.ts';
import { type Context, recordOf } from '../context.ts';
import { hoursOfMachine } from '../seriesNow.ts';
import { shopNow } from '../shopNow.ts';
import { shopGoesBy } from './shopFigures.ts';

/** The cut list of all repairs chosen for one machine, or for all. */
export const repairCutListHandler: Handler<typeof repairCutList, Context> = async (context, { machineId }) => {
  const record = recordOf(context);
  if (machineId !== null) hoursOfMachine(context, machineId);
  const { points } = shopNow(context).shop.life;
  const wanted = points.filter((point) => machineId === null || point.machineId === machineId);
  const positionIds = [...new Set(wanted.map(({ positionId }) => positionId))];
  const parts = repairChoicesOf(record, positionIds).flatMap(
    ({ option }) => zRepairOption.pick({ toMake: true }).parse(option).toMake,
  );
  const { figures, rack: lying } = shopGoesBy(record);
  const rack = rackOf(figures, lying);
  const { boughtMm, keepFromMm, saw } = rack;
  return { groups: orRefuse(await cutList(parts, rack)), saw: { ...saw, boughtMm, keepFromMm } };
};
