import type { Handler } from '../contract/operation.ts';
import type { Slip, slipPreview } from '../contract/slip.ts';
import { type Context, recordOf } from './context.ts';
import { shopAround } from './shopNow.ts';
import { slipOfMachine } from './slipOfMachine.ts';

export const slipPreviewHandler: Handler<typeof slipPreview, Context> = async (context, { machineId }) => {
  const slip = slipOfMachine(recordOf(context), shopAround(context, machineId), machineId, context.today());
  return { slip, pdfBase64: await pdfBase64(slip) };
};

export async function pdfBase64(slip: Slip): Promise<string> {
  const { printSlip } = await import('../papers/printSlip.ts');
  return Buffer.from(await printSlip(slip)).toString('base64');
}
