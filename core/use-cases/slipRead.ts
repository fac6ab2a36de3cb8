import type { Handler } from '../contract/operation.ts';
import { type slipRead, zSlip } from '../contract/slip.ts';
import { RefusedError } from '../outcome.ts';
import { readSlip } from '../record/slipStore.ts';
import { type Context, recordOf } from './context.ts';
import { pdfBase64 } from './slipPreview.ts';

/** A slip as it was made: its facts were kept, and the same facts give the same page. */
export const slipReadHandler: Handler<typeof slipRead, Context> = async (context, { slipId }) => {
  const kept = readSlip(recordOf(context), slipId);
  if (!kept) throw new RefusedError({ code: 'unknown-slip', facts: { path: 'slipId', slipId } });
  const slip = zSlip.parse(kept.slip);
  return { slip, pdfBase64: await pdfBase64(slip) };
};
