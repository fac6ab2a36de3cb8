import type { Handler } from '../contract/operation.ts';
import type { gaugeSave } from '../contract/shop.ts';
import { writePlain } from '../record/entry.ts';
import { listGauges, saveGauge } from '../record/gaugeStore.ts';
import { type Context, recordOf } from './context.ts';
import { refuseUnknownOrTaken } from './refuseUnknownOrTaken.ts';

/** Sizes already taken keep the error their gauge had then: saving one moves no forecast. */
export const gaugeSaveHandler: Handler<typeof gaugeSave, Context> = (context, { gaugeId, ...gauge }) => {
  const record = recordOf(context);
  refuseUnknownOrTaken(listGauges(record), { id: gaugeId, name: gauge.name }, 'unknown-gauge', 'gaugeId');
  return { gaugeId: writePlain(record, (w) => saveGauge(w, gaugeId, gauge)) };
};
