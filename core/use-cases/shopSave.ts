import type { Handler } from '../contract/operation.ts';
import type { shopSave } from '../contract/shop.ts';
import { writeEntry } from '../record/entry.ts';
import { saveSettings } from '../record/settingsStore.ts';
import { refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';

export const shopSaveHandler: Handler<typeof shopSave, Context> = (context, settings) => {
  if (settings.season.every((use) => use === 0)) refuseField('season', 'at least one month with some use');
  if (settings.winterFrom === settings.winterTo) refuseField('winterTo', 'another day than the winter begins on');
  writeEntry(recordOf(context), entryNow(context, 'shop/save', ''), (w, entryId) => saveSettings(w, entryId, settings));
  return { saved: true };
};
