import type { assemblyAdd } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { writeEntry } from '../record/entry.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import { pastDay } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { layOutAssembly, refuseOddAssembly } from './layOutAssembly.ts';

export const assemblyAddHandler: Handler<typeof assemblyAdd, Context> = (context, request) => {
  const record = recordOf(context);
  const { machineId, assembly } = request;
  machineOrRefuse(record, machineId);
  const from = request.from === null ? null : pastDay(context, request.from, 'from');
  refuseOddAssembly(assembly, 'assembly');
  const assemblyId = writeEntry(record, entryNow(context, 'assembly/add', ''), (w, entryId) =>
    layOutAssembly(w, entryId, { machineId, from, enteredBy: '' }, assembly),
  );
  return { assemblyId };
};
