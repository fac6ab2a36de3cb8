import type { CustomerSheet } from '#core/contract/customer.ts';
import { matches } from '#renderer/controls/PickBox.tsx';

/** Customers with every word typed somewhere in name, place, address, telephone, mail address or machines. */
export const findCustomers = (customers: readonly CustomerSheet[], typed: string): CustomerSheet[] =>
  typed.trim() === ''
    ? [...customers]
    : customers.filter((its) =>
        matches(
          {
            text: [its.name, its.place, its.address, its.phone, its.phone.replace(/\D/g, ''), its.email].join(' '),
            second: [...its.owned.map(({ machine }) => machine), ...its.merged.map(({ name }) => name)].join(' '),
          },
          typed.trim(),
        ),
      );
