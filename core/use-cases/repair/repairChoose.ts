import type { Handler } from '../../contract/operation.ts';
import type { repairChoose } from '../../contract/repair.ts';
import { RefusedError } from '../../outcome.ts';
import { writeEntry } from '../../record/entry.ts';
import { saveRepairChoice, strikeRepairChoice } from '../../record/repairStore.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { shopAroundPosition } from '../shopNow.ts';
import { repairSheet } from './repairSheet.ts';

/** Keeps a choice with its sizes as they stand now; a closed one is refused with why. */
export const repairChooseHandler: Handler<typeof repairChoose, Context> = (context, { positionId, choice, by }) => {
  const record = recordOf(context);
  const sheet = repairSheet(record, shopAroundPosition(context, positionId), positionId);
  const made = entryNow(context, 'repair/choose', by);
  if (choice === null) {
    writeEntry(record, made, (w, entryId) => strikeRepairChoice(w, entryId, positionId));
    return { saved: true };
  }
  const option = sheet.options.find((one) => one.choice === choice);
  if (!option) throw new RefusedError({ code: 'repair-not-worked-out', facts: { missing: sheet.missing.join(', ') } });
  const [closed] = option.closed;
  if (closed)
    throw new RefusedError({ code: 'repair-closed', facts: { ...closed.facts, choice, because: closed.code } });
  writeEntry(record, made, (w, entryId) =>
    saveRepairChoice(w, entryId, { positionId, chosenOn: context.today(), choice, option }),
  );
  return { saved: true };
};
