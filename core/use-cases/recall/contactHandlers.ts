import type { Handler, RequestOf } from '../../contract/operation.ts';
import type {
  contactAdd,
  contactStrike,
  contactTermsSave,
  quietAdd,
  quietStrike,
  recallSaveLead,
} from '../../contract/recall.ts';
import { RefusedError } from '../../outcome.ts';
import {
  insertContact,
  insertQuiet,
  listContacts,
  listQuietPeriods,
  saveLeadDays,
  saveTerms,
  strikeContact,
  strikeQuiet,
} from '../../record/contactStore.ts';
import { writeEntry } from '../../record/entry.ts';
import { machineOrRefuse } from '../../record/machineStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { readSlip } from '../../record/slipStore.ts';
import { type Day, isDay } from '../../units/day.ts';
import { pastDay, refuseField } from '../asked.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { customerOrRefuse } from '../customerOrRefuse.ts';

/** Notes what was sent or said; of several machines at once it is one entry, and goes out together. */
export const contactAddHandler: Handler<typeof contactAdd, Context> = (context, request) => {
  const record = recordOf(context);
  const { machineIds, by, ...said } = request;
  customerOrRefuse(record, said.customerId);
  const row = {
    ...said,
    madeOn: pastDay(context, said.madeOn, 'madeOn'),
    answerOn: dayFrom(said.answerOn, said.madeOn, 'answerOn'),
    callBackOn: dayFrom(said.callBackOn, said.madeOn, 'callBackOn'),
  };
  refuseUnknownOfContact(record, request);
  const about = machineIds.length === 0 ? [null] : [...new Set(machineIds)];
  const contactIds = writeEntry(record, entryNow(context, 'contact/add', by), (w, entryId) =>
    about.map((machineId) => insertContact(w, entryId, { ...row, machineId })),
  );
  return { contactIds };
};

/** A promise is for a day to come, or for the day it is made. */
function dayFrom(asked: Day | null, madeOn: Day, path: string): Day | null {
  if (asked !== null && asked < madeOn) refuseField(path, `a day from ${madeOn} on`);
  return asked;
}

function refuseUnknownOfContact(record: ReadableRecord, { machineIds, slipId }: RequestOf<typeof contactAdd>): void {
  for (const [place, machineId] of machineIds.entries()) machineOrRefuse(record, machineId, `machineIds.${place}`);
  if (slipId !== null && !readSlip(record, slipId))
    throw new RefusedError({ code: 'unknown-slip', facts: { path: 'slipId', slipId } });
}

export const contactStrikeHandler: Handler<typeof contactStrike, Context> = (context, { contactId, reason, by }) => {
  const record = recordOf(context);
  if (!listContacts(record).some(({ id }) => id === contactId))
    throw new RefusedError({ code: 'unknown-contact', facts: { path: 'contactId', contactId } });
  writeEntry(record, entryNow(context, 'contact/strike', by), (w, entryId) =>
    strikeContact(w, entryId, contactId, reason),
  );
  return { contactId };
};

export const contactTermsSaveHandler: Handler<typeof contactTermsSave, Context> = (context, { by, ...terms }) => {
  const record = recordOf(context);
  customerOrRefuse(record, terms.customerId);
  if (terms.seasonTo !== null && !isDay(`2028-${terms.seasonTo}`)) refuseField('seasonTo', 'a day of the year');
  writeEntry(record, entryNow(context, 'contact/saveTerms', by), (w, entryId) =>
    saveTerms(w, entryId, { ...terms, saidOn: context.today() }),
  );
  return { customerId: terms.customerId };
};

export const quietAddHandler: Handler<typeof quietAdd, Context> = (context, { by, ...asked }) => {
  const record = recordOf(context);
  customerOrRefuse(record, asked.customerId);
  const quietId = writeEntry(record, entryNow(context, 'contact/addQuiet', by), (w, entryId) =>
    insertQuiet(w, entryId, asked),
  );
  return { quietId };
};

export const quietStrikeHandler: Handler<typeof quietStrike, Context> = (context, { quietId, reason, by }) => {
  const record = recordOf(context);
  if (!listQuietPeriods(record).some(({ id }) => id === quietId))
    throw new RefusedError({ code: 'unknown-quiet-period', facts: { path: 'quietId', quietId } });
  writeEntry(record, entryNow(context, 'contact/strikeQuiet', by), (w, entryId) =>
    strikeQuiet(w, entryId, quietId, reason),
  );
  return { quietId };
};

export const recallSaveLeadHandler: Handler<typeof recallSaveLead, Context> = (context, { leadDays, by }) => {
  writeEntry(recordOf(context), entryNow(context, 'recall/saveLead', by), (w, entryId) =>
    saveLeadDays(w, entryId, leadDays),
  );
  return { leadDays };
};
