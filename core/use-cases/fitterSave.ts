import type { Handler } from '../contract/operation.ts';
import type { fitterSave } from '../contract/shop.ts';
import { writePlain } from '../record/entry.ts';
import { listFitters, saveFitter } from '../record/fitterStore.ts';
import { type Context, recordOf } from './context.ts';
import { refuseUnknownOrTaken } from './refuseUnknownOrTaken.ts';

export const fitterSaveHandler: Handler<typeof fitterSave, Context> = (context, { fitterId, ...fitter }) => {
  const record = recordOf(context);
  refuseUnknownOrTaken(listFitters(record), { id: fitterId, name: fitter.name }, 'unknown-fitter', 'fitterId');
  return { fitterId: writePlain(record, (w) => saveFitter(w, fitterId, fitter)) };
};
