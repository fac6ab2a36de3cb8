import type { Handler } from '../contract/operation.ts';
import type { kindSave } from '../contract/shop.ts';
import { writePlain } from '../record/entry.ts';
import { listKinds, saveKind } from '../record/kindStore.ts';
import { type Context, recordOf } from './context.ts';
import { refuseUnknownOrTaken } from './refuseUnknownOrTaken.ts';
import { refuseOddJoints } from './soundJoints.ts';
import { refuseOddLimits } from './soundLimits.ts';

/** Saves an assembly kind; assemblies laid out from it before keep their own positions and points. */
export const kindSaveHandler: Handler<typeof kindSave, Context> = (context, { kindId, kind }) => {
  const record = recordOf(context);
  refuseUnknownOrTaken(listKinds(record), { id: kindId, name: kind.name }, 'unknown-kind', 'kindId', 'kind.name');
  for (const [place, { points }] of kind.positions.entries()) {
    for (const [number, point] of points.entries())
      refuseOddLimits(point.wears, point, `kind.positions.${place}.points.${number}.`);
  }
  refuseOddJoints(kind.positions, kind.joints, 'kind');
  return { kindId: writePlain(record, (w) => saveKind(w, kindId, { name: kind.name, template: kind })) };
};
