import type { Handler } from '../contract/operation.ts';
import { type shopRead, zGauge } from '../contract/shop.ts';
import { listFitters } from '../record/fitterStore.ts';
import { listGauges } from '../record/gaugeStore.ts';
import { readSettings } from '../record/settingsStore.ts';
import { type Context, recordOf } from './context.ts';
import { kindsOnRecord } from './kindsOnRecord.ts';

export const shopReadHandler: Handler<typeof shopRead, Context> = (context) => {
  const record = recordOf(context);
  return {
    settings: readSettings(record),
    fitters: listFitters(record).map(({ id: fitterId, ...fitter }) => ({ fitterId, ...fitter })),
    gauges: listGauges(record).map(({ id: gaugeId, ...gauge }) => zGauge.parse({ gaugeId, ...gauge })),
    kinds: kindsOnRecord(record),
  };
};
