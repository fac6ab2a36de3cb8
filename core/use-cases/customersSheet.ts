import type { CustomerSheet, customersSheet } from '../contract/customer.ts';
import type { Handler } from '../contract/operation.ts';
import { doubleCustomers } from '../exchange/doubleCustomers.ts';
import { customersKnown, mergesOf, ownedStretches } from '../record/customerStore.ts';
import { erasuresOf } from '../record/eraseCustomer.ts';
import { machineNames } from '../record/machineStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { slipsByCustomer } from '../record/slipStore.ts';
import { type Context, recordOf } from './context.ts';

export const customersSheetHandler: Handler<typeof customersSheet, Context> = (context) => {
  const customers = customerSheets(recordOf(context));
  const living = customers.filter(({ erased }) => erased === null);
  return { customers, doubles: doubleCustomers(living.map((one) => ({ id: one.customerId, ...one }))) };
};

/** Every customer that stands for itself, by name; those whose data were erased come last. */
export function customerSheets(record: ReadableRecord): CustomerSheet[] {
  const known = customersKnown(record);
  const machines = machineNames(record);
  const erasures = erasuresOf(record);
  const stretches = Map.groupBy(ownedStretches(record), ({ customerId }) => known.survivorOf(customerId));
  const slips = Map.groupBy(slipsByCustomer(record), ([customerId]) => known.survivorOf(customerId));
  const merges = Map.groupBy(mergesOf(record), ({ customerId }) => known.survivorOf(customerId));
  return [...known.own.values()]
    .filter(({ id }) => known.survivorOf(id) === id)
    .map(({ id, erased: _, ...details }) => ({
      customerId: id,
      ...details,
      owned: (stretches.get(id) ?? []).map(({ machineId, fromOn, untilOn }) => ({
        ...{ machineId, machine: machines.get(machineId) ?? '', fromOn, untilOn },
      })),
      slips: (slips.get(id) ?? []).reduce((sum, [, count]) => sum + count, 0),
      merged: (merges.get(id) ?? []).map((merge) => {
        const { name = '', place = '' } = known.own.get(merge.customerId) ?? {};
        return { mergeId: merge.id, customerId: merge.customerId, name, place, madeAt: merge.madeAt };
      }),
      erased: erasures.get(id) ?? null,
    }))
    .sort(
      (a, b) =>
        Number(a.erased !== null) - Number(b.erased !== null) ||
        a.name.localeCompare(b.name, 'en', { sensitivity: 'base' }) ||
        a.customerId - b.customerId,
    );
}
