import type { Handler } from '../contract/operation.ts';
import type { stripDownDiscard } from '../contract/stripDown.ts';
import { dropDraft } from '../record/draftStore.ts';
import { writePlain } from '../record/entry.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import { type Context, recordOf } from './context.ts';

export const stripDownDiscardHandler: Handler<typeof stripDownDiscard, Context> = (context, { machineId }) => {
  const record = recordOf(context);
  machineOrRefuse(record, machineId);
  return { discarded: writePlain(record, (w) => dropDraft(w, machineId)) };
};
