import { z } from 'zod';
import { zCustomer, zNewCustomer } from './machine.ts';
import { operation } from './operation.ts';
import { zDay, zId, zName, zNote } from './shapes.ts';

const zBy = z.string().max(120);
const zReason = zNote.min(1);

/** A machine in the time it was this customer's. */
export const zOwned = z.object({
  machineId: zId,
  machine: z.string(),
  fromOn: zDay.nullable(),
  /** first day it was somebody else's; null: it is still theirs */
  untilOn: zDay.nullable(),
});

export const zCustomerSheet = zCustomer.extend({
  owned: z.array(zOwned),
  slips: z.int(),
  /** rows of the same person that were merged into this one */
  merged: z.array(z.object({ mergeId: zId, customerId: zId, name: z.string(), place: z.string(), madeAt: z.string() })),
  /** personal data were erased on request: when, by whom, how many texts */
  erased: z.object({ madeAt: z.string(), madeBy: z.string(), texts: z.int() }).nullable(),
});
export type CustomerSheet = z.infer<typeof zCustomerSheet>;

/** Two rows that may be one person, and what is alike in them. */
export const zDouble = z.object({
  oneId: zId,
  otherId: zId,
  alike: z.array(z.enum(['name', 'phone', 'email', 'place', 'address'])),
});
export type Double = z.infer<typeof zDouble>;

export const customersSheet = operation(
  'customers/sheet',
  z.object({}),
  z.object({ customers: z.array(zCustomerSheet), doubles: z.array(zDouble) }),
  { title: 'All customers with their machines and slips, and rows that may be one person' },
);

export const customerChange = operation(
  'customer/change',
  zNewCustomer.extend({ customerId: zId, by: zBy }),
  z.object({ customerId: zId }),
  { title: "Change a customer's name, address or telephone; the old ones stay in the record" },
);

export const customerMerge = operation(
  'customer/merge',
  z.object({
    customerId: zId,
    /** who stays */
    intoCustomerId: zId,
    /** what is right of the two */
    details: zNewCustomer,
    by: zBy,
  }),
  z.object({ mergeId: zId }),
  { title: 'Merge two rows of one customer: machines and slips of the one are the other’s' },
);

export const customerPart = operation(
  'customer/part',
  z.object({ mergeId: zId, reason: zReason, by: zBy }),
  z.object({ customerId: zId }),
  { title: 'Part two customers again that were merged' },
);

export const customerExport = operation(
  'customer/export',
  z.object({ customerId: zId }),
  z.object({ fileName: z.string(), zipBase64: z.string(), files: z.array(z.string()) }),
  { title: 'Everything on record about a customer, as readable files' },
);

const zWords = z.array(z.string().trim().min(2).max(60)).max(20);

export const customerErasePreview = operation(
  'customer/erasePreview',
  z.object({ customerId: zId, words: zWords }),
  z.object({
    /** texts that would change, as they stand and as they would read */
    texts: z.array(z.object({ table: z.string(), column: z.string(), before: z.string(), after: z.string() })),
    /** words of the name that stand alone in texts: to be named too where they mean this person */
    alone: z.array(z.string()),
    slips: z.int(),
    owned: z.array(zOwned),
    /** copies of the record made before, which still hold it */
    backups: z.array(z.object({ file: z.string(), madeAt: z.string() })),
  }),
  { title: 'What erasing a customer’s personal data would change, and what remains' },
);

export const customerErase = operation(
  'customer/erase',
  z.object({
    customerId: zId,
    /** further words that name the person */
    words: zWords,
    /** the customer's name as it stands, typed: this cannot be taken back */
    typedName: z.string().max(120),
    by: zName,
  }),
  z.object({
    texts: z.int(),
    backups: z.array(z.object({ file: z.string(), madeAt: z.string() })),
    /** the record file was written anew, so that nothing of it is left between its rows */
    writtenAnew: z.boolean(),
  }),
  { title: 'Erase a customer’s personal data; machines, sizes and hours stay' },
);

const zWhose = {
  /** a customer on record, or a new one */
  customerId: zId.nullable(),
  customer: zNewCustomer.nullable(),
};

export const machineSellOn = operation(
  'machine/sellOn',
  z.object({ machineId: zId, fromOn: zDay, ...zWhose, by: zBy }),
  z.object({ ownershipId: zId, customerId: zId }),
  { title: 'A machine is another customer’s from a day on; what was before stays' },
);

export const ownerPutRight = operation(
  'owner/putRight',
  z.object({
    ownershipId: zId,
    /** null: from the beginning */
    fromOn: zDay.nullable(),
    /** null: strikes it out, the sale never was */
    customerId: zId.nullable(),
    reason: zReason,
    by: zBy,
  }),
  z.object({ ownershipId: zId }),
  { title: 'Put right whose a machine was, or from when' },
);
