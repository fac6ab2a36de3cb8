import type { machineSellOn } from '../contract/customer.ts';
import type { Handler } from '../contract/operation.ts';
import { customerOfMachine, readCustomer } from '../record/customerStore.ts';
import { writeEntry } from '../record/entry.ts';
import { insertOwnership, machineOrRefuse } from '../record/machineStore.ts';
import { pastDay, refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { customerAsked, refuseOddCustomer } from './whoseMachine.ts';

/** From that day on it is theirs. Sizes, hours and findings are the machine's and stay; slips stay whose they were. */
export const machineSellOnHandler: Handler<typeof machineSellOn, Context> = (context, request) => {
  const record = recordOf(context);
  const { machineId, customerId, by } = request;
  machineOrRefuse(record, machineId);
  const fromOn = pastDay(context, request.fromOn, 'fromOn');
  refuseOddCustomer(record, request);
  const owner = customerOfMachine(record, machineId, fromOn);
  if (owner && customerId !== null && readCustomer(record, customerId)?.id === owner.id)
    refuseField('customerId', 'another customer than the one whose it is on that day');
  return writeEntry(record, entryNow(context, 'machine/sellOn', by), (w, entryId) => {
    const buyerId = customerAsked(w, request);
    return {
      customerId: buyerId,
      ownershipId: insertOwnership(w, entryId, { machineId, customerId: buyerId, fromOn }),
    };
  });
};
