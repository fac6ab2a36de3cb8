import type { customersList } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { listCustomers } from '../record/customerStore.ts';
import { type Context, recordOf } from './context.ts';

export const customersListHandler: Handler<typeof customersList, Context> = (context) => ({
  customers: listCustomers(recordOf(context)).map(({ id: customerId, erased: _, ...customer }) => ({
    customerId,
    ...customer,
  })),
});
