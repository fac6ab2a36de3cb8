import type { Handler } from '../contract/operation.ts';
import type { stripDownKeep } from '../contract/stripDown.ts';
import { keepDraft } from '../record/draftStore.ts';
import { writePlain } from '../record/entry.ts';
import { type Context, recordOf } from './context.ts';
import { refuseTypedMeanwhile } from './typedMeanwhile.ts';
import { namedInDraft } from './typedStripDown.ts';

/**
 * Keeps what was typed, however odd its figures: it feeds nothing yet, and is lost by no power cut.
 * @throws RefusedError typed-meanwhile, and as namedInDraft
 */
export const stripDownKeepHandler: Handler<typeof stripDownKeep, Context> = (context, { typedSince, ...draft }) => {
  const record = recordOf(context);
  namedInDraft(context, draft);
  refuseTypedMeanwhile(context, { machineId: draft.machineId, typedSince });
  const keptAt = context.now();
  writePlain(record, (w) => keepDraft(w, draft.machineId, draft, keptAt));
  return { keptAt };
};
