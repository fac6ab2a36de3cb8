import type { Handler } from '../contract/operation.ts';
import type { stripDownKeep } from '../contract/stripDown.ts';
import { keepDraft } from '../record/draftStore.ts';
import { writePlain } from '../record/entry.ts';
import { type Context, recordOf } from './context.ts';
import { namedInDraft } from './typedStripDown.ts';

/** Keeps what was typed, however odd its figures: it feeds nothing yet, and is lost by no power cut. */
export const stripDownKeepHandler: Handler<typeof stripDownKeep, Context> = (context, draft) => {
  const record = recordOf(context);
  namedInDraft(context, draft);
  const keptAt = context.now();
  writePlain(record, (w) => keepDraft(w, draft.machineId, draft, keptAt));
  return { keptAt };
};
