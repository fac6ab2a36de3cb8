import type { Handler } from '../../contract/operation.ts';
import type { repairRead } from '../../contract/repair.ts';
import { type Context, recordOf } from '../context.ts';
import { shopAroundPosition } from '../shopNow.ts';
import { repairSheet } from './repairSheet.ts';

export const repairReadHandler: Handler<typeof repairRead, Context> = (context, { positionId }) =>
  repairSheet(recordOf(context), shopAroundPosition(context, positionId), positionId);
