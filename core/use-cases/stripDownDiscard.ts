import type { Handler } from '../contract/operation.ts';
import { type stripDownDiscard, zStripDownDraft } from '../contract/stripDown.ts';
import { dropDraft, readDraft } from '../record/draftStore.ts';
import { writePlain } from '../record/entry.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import { dropPhoto } from '../record/photoStore.ts';
import { type Context, recordOf } from './context.ts';
import { refuseTypedMeanwhile } from './typedMeanwhile.ts';

/** @throws RefusedError unknown-machine, typed-meanwhile */
export const stripDownDiscardHandler: Handler<typeof stripDownDiscard, Context> = (context, request) => {
  const { machineId } = request;
  const record = recordOf(context);
  machineOrRefuse(record, machineId);
  refuseTypedMeanwhile(context, request);
  const draft = zStripDownDraft.safeParse(readDraft(record, machineId)?.draft).data;
  const photoIds = draft?.findings.flatMap((finding) => finding.photoIds) ?? [];
  return {
    discarded: writePlain(record, (w) => {
      for (const photoId of photoIds) dropPhoto(w, photoId);
      return dropDraft(w, machineId);
    }),
  };
};
