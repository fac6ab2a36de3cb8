import { RefusedError } from '../outcome.ts';
import { type CustomerDetails, insertCustomer, readCustomer } from '../record/customerStore.ts';
import type { ReadableRecord, WritableRecord } from '../record/recordFile.ts';
import { refuseField } from './asked.ts';

export type AskedCustomer = { customerId: number | null; customer: CustomerDetails | null };

/** @throws RefusedError not-as-expected (none named, or two), unknown-customer, customer-erased */
export function refuseOddCustomer(record: ReadableRecord, { customerId, customer }: AskedCustomer): void {
  if (customerId === null && !customer) refuseField('customer', 'a customer on record, or a new one');
  if (customerId !== null && customer) refuseField('customer', 'either a customer on record or a new one');
  if (customerId === null) return;
  const known = readCustomer(record, customerId);
  const facts = { path: 'customerId', customerId };
  if (!known) throw new RefusedError({ code: 'unknown-customer', facts });
  if (known.erased) throw new RefusedError({ code: 'customer-erased', facts });
}

/** The customer asked for, put in when new. */
export const customerAsked = (w: WritableRecord, { customerId, customer }: AskedCustomer): number =>
  customerId ?? insertCustomer(w, customer!);
