import type { Handler } from '../../contract/operation.ts';
import type { planAwaySave, planAwayStrike, planSettingsSave, planWeekSave } from '../../contract/plan.ts';
import { RefusedError } from '../../outcome.ts';
import {
  defaultPlanSettings,
  isLegalPlanSetting,
  planSettingNames,
  planSettingNotes,
} from '../../plan/planSettings.ts';
import { mondayOf } from '../../plan/weeksOfWinter.ts';
import { writeEntry } from '../../record/entry.ts';
import { insertAway, listAway, savePlanSettings, savePlanWeek, strikeAway } from '../../record/planStore.ts';
import { refuseField } from '../asked.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { customerOrRefuse } from '../customerOrRefuse.ts';

/** What the plan goes by: its settings, hours of a week, times in which a customer's machines cannot come. */

/** @throws RefusedError not-as-expected: no such setting, beyond its bounds */
export const planSettingsSaveHandler: Handler<typeof planSettingsSave, Context> = (
  context,
  { changed, renewals, reason, by },
) => {
  const kept: Record<string, number> = {};
  for (const [name, value] of Object.entries(changed)) {
    const known = planSettingNames.find((one) => one === name);
    if (!known) return refuseField(`changed.${name}`, `one of ${planSettingNames.join(', ')}`);
    const { from, to, whole, unit } = planSettingNotes[known];
    if (!isLegalPlanSetting(known, value))
      refuseField(`changed.${name}`, `${whole ? 'a whole number from ' : ''}${from} to ${to} ${unit}`);
    if (value !== defaultPlanSettings[known]) kept[known] = value;
  }
  writeEntry(recordOf(context), entryNow(context, 'plan/settingsSave', by), (w, entryId) =>
    savePlanSettings(w, entryId, { changed: kept, renewals }, reason),
  );
  return { saved: true };
};

/** @throws RefusedError not-as-expected: not a Monday */
export const planWeekSaveHandler: Handler<typeof planWeekSave, Context> = (
  context,
  { weekFrom, benchHours, note, by },
) => {
  if (mondayOf(weekFrom) !== weekFrom) refuseField('weekFrom', 'a Monday');
  writeEntry(recordOf(context), entryNow(context, 'plan/weekSave', by), (w, entryId) =>
    savePlanWeek(w, entryId, { weekFrom, benchHours, note }),
  );
  return { saved: true };
};

/** @throws RefusedError unknown-customer; not-as-expected: the last day before the first */
export const planAwaySaveHandler: Handler<typeof planAwaySave, Context> = (context, { by, ...row }) => {
  const record = recordOf(context);
  customerOrRefuse(record, row.customerId);
  if (row.toOn < row.fromOn) refuseField('toOn', 'a day not before the first');
  return {
    awayId: writeEntry(record, entryNow(context, 'plan/awaySave', by), (w, entryId) => insertAway(w, entryId, row)),
  };
};

/** @throws RefusedError unknown-away */
export const planAwayStrikeHandler: Handler<typeof planAwayStrike, Context> = (context, { awayId, reason, by }) => {
  const record = recordOf(context);
  const row = listAway(record).find(({ id }) => id === awayId);
  if (!row) throw new RefusedError({ code: 'unknown-away', facts: { path: 'awayId', awayId } });
  writeEntry(record, entryNow(context, 'plan/awayStrike', by), (w, entryId) =>
    strikeAway(w, entryId, row.rowId, reason),
  );
  return { awayId };
};
