import type { Handler } from '../contract/operation.ts';
import { type slipsList, zSlip } from '../contract/slip.ts';
import { headlineText } from '../papers/slipWords.ts';
import { listSlips } from '../record/slipStore.ts';
import { type Context, recordOf } from './context.ts';

export const slipsListHandler: Handler<typeof slipsList, Context> = (context) => ({
  slips: listSlips(recordOf(context)).map(({ id, number, madeOn, machineId, slip: kept }) => {
    const slip = zSlip.parse(kept);
    return {
      slipId: id,
      number,
      madeOn,
      machineId,
      machine: slip.machine.name,
      customer: slip.customer.name,
      headline: headlineText(slip),
    };
  }),
});
