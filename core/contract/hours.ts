import { z } from 'zod';
import { operation } from './operation.ts';
import { zDay, zDialEventKind, zHours, zId, zNote, zQuestion } from './shapes.ts';

/**
 * Enter what a meter shows. An unlikely figure comes back as a question and is not kept, until it is sent again
 * with `sure`, or as another event (new meter, rollover, estimate).
 */
export const hoursAdd = operation(
  'hours/add',
  z.object({
    machineId: zId,
    takenOn: zDay,
    kind: zDialEventKind,
    dialHours: zHours.nullable(),
    newDialHours: zHours.nullable(),
    errorHours: zHours.nullable(),
    saidBy: z.string().max(120),
    sure: z.boolean(),
  }),
  z.object({
    kept: z.boolean(),
    question: zQuestion.nullable(),
    machineHours: z.number().nullable(),
    dialReadingId: zId.nullable(),
  }),
  { title: 'Enter what an hour meter shows' },
);

/** Put a wrong reading right: a new row takes its place, the old one stays visible. */
export const hoursPutRight = operation(
  'hours/putRight',
  z.object({ dialReadingId: zId, takenOn: zDay, dialHours: zHours, reason: zNote, by: z.string().max(120) }),
  z.object({ dialReadingId: zId }),
  { title: 'Put a wrong meter reading right' },
);
