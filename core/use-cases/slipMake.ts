import type { Handler } from '../contract/operation.ts';
import type { slipMake } from '../contract/slip.ts';
import { customerOfMachine } from '../record/customerStore.ts';
import { writePlain } from '../record/entry.ts';
import { insertSlip, nextSlipNumber } from '../record/slipStore.ts';
import { type Context, recordOf } from './context.ts';
import { keepForecasts, standingForecasts } from './keepForecasts.ts';
import { shopAround } from './shopNow.ts';
import { slipOfMachine } from './slipOfMachine.ts';
import { pdfBase64 } from './slipPreview.ts';

/** Printed before it is kept: a slip that cannot be printed leaves no number behind. Its forecasts are kept with it. */
export const slipMakeHandler: Handler<typeof slipMake, Context> = async (context, { machineId, by }) => {
  const record = recordOf(context);
  const madeOn = context.today();
  const now = shopAround(context, machineId);
  const slip = {
    ...slipOfMachine(record, now, machineId, madeOn),
    number: nextSlipNumber(record, madeOn),
  };
  const pdf = await pdfBase64(slip);
  const customerId = customerOfMachine(record, machineId, madeOn)?.id ?? null;
  const standing = standingForecasts(now, machineId);
  const madeAt = context.now();
  const slipId = writePlain(record, (w) => {
    const id = insertSlip(w, { number: slip.number, machineId, customerId, madeOn, madeAt, madeBy: by, slip });
    keepForecasts(w, standing, { why: 'slip', slipId: id }, madeAt);
    return id;
  });
  return { slipId, number: slip.number, fileName: slipFileName(slip.number, slip.machine.name), pdfBase64: pdf };
};

/** A name every system takes. */
export const slipFileName = (number: string, machine: string): string =>
  `forecast-slip-${number}-${machine
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60)}.pdf`;
