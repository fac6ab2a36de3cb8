import { z } from 'zod';
import { zBringInSheet, zSheetAccount } from './exchange.ts';
import { operation } from './operation.ts';
import { zPlanAccount, zPlanAsk } from './plan.ts';
import { zMadeSlips, zWinterSlips } from './recall.ts';
import { zJobFault } from './shapes.ts';

/** Work that takes long runs beside the program: it tells how far it is, and can be broken off with nothing half done. */
const zJobAsk = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('bring-in-sheet'), ask: zBringInSheet }),
  z.object({ kind: z.literal('winter-slips'), ask: zWinterSlips }),
  z.object({ kind: z.literal('plan'), ask: zPlanAsk }),
  /** every machine whose forecast is older than what it rests on; broken off, what was forecast by then is kept */
  z.object({ kind: z.literal('forecast-shop') }),
]);
export type JobAsk = z.infer<typeof zJobAsk>;

export const zJobState = z.object({
  jobId: z.string(),
  kind: z.enum(['bring-in-sheet', 'winter-slips', 'plan', 'forecast-shop']),
  state: z.enum(['running', 'done', 'cancelled', 'refused']),
  /** what it is at: "reading", "planning", "writing", "printing"; of a plan "machines", "weeks"; "forecasting" */
  step: z.string(),
  /** share of the step that is done, 0 to 1 */
  share: z.number(),
  /** what came of it, once done */
  account: zSheetAccount.nullable(),
  /** the slips it made, once done */
  slips: zMadeSlips.nullable(),
  plan: zPlanAccount.nullable(),
  /** why it was refused */
  fault: zJobFault.nullable(),
});
export type JobState = z.infer<typeof zJobState>;

const zJobId = z.object({ jobId: z.string().max(40) });

export const jobsStart = operation('jobs/start', z.object({ job: zJobAsk }), zJobState, {
  title: 'Start long work beside the program',
});
export const jobsState = operation('jobs/state', zJobId, zJobState, {
  title: 'How far long work is, or what came of it',
  meantFor: 'any',
});
export const jobsCancel = operation('jobs/cancel', zJobId, zJobState, {
  title:
    'Break long work off; the record is then as it was before. A plan looking for its weeks is kept as far as it came',
  meantFor: 'any',
});
