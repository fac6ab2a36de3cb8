import type { machinesList } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import type { Context } from './context.ts';
import { isFromPriors } from './learning/shopLearning.ts';
import { byGroupThenSoonest, machineLine } from './machineLine.ts';
import { shopNow } from './shopNow.ts';

export const machinesListHandler: Handler<typeof machinesList, Context> = (context, { atOnce }) => {
  const { asOf, shop, learning, ofMachine } = shopNow(context, context.today(), atOnce);
  const lines = shop.life.machines.map((machine) => machineLine(shop, machine, ofMachine(machine.machineId).points));
  return { asOf, machines: lines.sort(byGroupThenSoonest), learning: isFromPriors(learning) };
};
