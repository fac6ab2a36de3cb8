import type { Handler } from '../contract/operation.ts';
import type { findingAdd } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { positionsOf, readAssembly } from '../record/assemblyStore.ts';
import { writeEntry } from '../record/entry.ts';
import { insertFinding } from '../record/findingStore.ts';
import { insertPhotoAt } from '../record/photoStore.ts';
import { pastDay, refuseUnknownPhotos } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';

export const findingAddHandler: Handler<typeof findingAdd, Context> = (context, request) => {
  const record = recordOf(context);
  const { assemblyId, positionId, kind, severity, note, by } = request;
  const takenOn = pastDay(context, request.takenOn, 'takenOn');
  if (!readAssembly(record, assemblyId))
    throw new RefusedError({ code: 'unknown-assembly', facts: { path: 'assemblyId', assemblyId } });
  if (positionId !== null && !positionsOf(record, assemblyId).some(({ id }) => id === positionId))
    throw new RefusedError({ code: 'unknown-position', facts: { path: 'positionId', positionId } });
  refuseUnknownPhotos(record, request.photoIds, 'photoIds');
  const findingId = writeEntry(record, entryNow(context, 'finding/add', by), (w, entryId) => {
    const id = insertFinding(w, entryId, {
      assemblyId,
      positionId,
      stripDownId: null,
      takenOn,
      kind,
      severity,
      note,
      foundBy: by,
    });
    for (const photoId of request.photoIds) insertPhotoAt(w, entryId, { at: 'finding', id }, photoId);
    return id;
  });
  return { findingId };
};
