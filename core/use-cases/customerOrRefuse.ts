import { RefusedError } from '../outcome.ts';
import { type CustomerOnRecord, customersAmong } from '../record/customerStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';

/**
 * A customer that stands for itself and has a name.
 * @throws RefusedError unknown-customer; customer-merged (they go by another row now); customer-erased
 */
export function customerOrRefuse(record: ReadableRecord, customerId: number, path = 'customerId'): CustomerOnRecord {
  const known = customersAmong(record, [customerId]);
  const customer = known.own.get(customerId);
  const facts = { path, customerId };
  if (!customer) throw new RefusedError({ code: 'unknown-customer', facts });
  const survivorId = known.survivorOf(customerId);
  if (survivorId !== customerId) {
    const into = known.own.get(survivorId)?.name ?? '';
    throw new RefusedError({ code: 'customer-merged', facts: { ...facts, into } });
  }
  if (customer.erased) throw new RefusedError({ code: 'customer-erased', facts });
  return customer;
}
