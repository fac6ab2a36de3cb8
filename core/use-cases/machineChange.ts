import type { machineChange } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { writeEntry } from '../record/entry.ts';
import { changeMachine, machineOrRefuse } from '../record/machineStore.ts';
import { type Context, entryNow, recordOf } from './context.ts';

export const machineChangeHandler: Handler<typeof machineChange, Context> = (context, { machineId, ...changed }) => {
  const record = recordOf(context);
  machineOrRefuse(record, machineId);
  writeEntry(record, entryNow(context, 'machine/change', ''), (w) => changeMachine(w, machineId, changed));
  return { machineId };
};
