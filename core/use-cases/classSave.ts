import type { Handler } from '../contract/operation.ts';
import type { classSave } from '../contract/partClass.ts';
import { RefusedError } from '../outcome.ts';
import { addKnowledge, ensureClass, listClasses, renameClass } from '../record/classStore.ts';
import { writeEntry } from '../record/entry.ts';
import { refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';

export const classSaveHandler: Handler<typeof classSave, Context> = (context, request) => {
  const record = recordOf(context);
  const { partClassId: asked, name, tradeWear, newSizeTolMm } = request;
  const classes = listClasses(record);
  if (asked !== null && !classes.some(({ id }) => id === asked))
    throw new RefusedError({ code: 'unknown-part-class', facts: { path: 'partClassId', partClassId: asked } });
  if (classes.some((one) => one.id !== asked && one.name.toLowerCase() === name.toLowerCase()))
    throw new RefusedError({ code: 'name-taken', facts: { path: 'name', name } });
  if (tradeWear) {
    if (tradeWear.wearFromMm <= 0) refuseField('tradeWear.wearFromMm', 'more than 0 mm');
    if (tradeWear.hoursFrom <= 0) refuseField('tradeWear.hoursFrom', 'more than 0 h');
    if (tradeWear.wearToMm < tradeWear.wearFromMm)
      refuseField('tradeWear.wearToMm', `at least ${tradeWear.wearFromMm} mm`);
    if (tradeWear.hoursTo < tradeWear.hoursFrom) refuseField('tradeWear.hoursTo', `at least ${tradeWear.hoursFrom} h`);
  }
  if (newSizeTolMm === 0) refuseField('newSizeTolMm', 'more than 0 mm, or empty');
  const partClassId = writeEntry(record, entryNow(context, 'class/save', ''), (w, entryId) => {
    if (asked !== null) renameClass(w, asked, name);
    const id = asked ?? ensureClass(w, entryId, name);
    addKnowledge(w, entryId, id, { tradeWear, newSizeTolMm });
    return id;
  });
  return { partClassId };
};
