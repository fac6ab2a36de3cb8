import type { machineTakeIn } from '#core/contract/machine.ts';
import type { AskOf } from '#core/contract/operation.ts';
import type { AssemblyKind } from '#core/contract/shop.ts';

export type NewMachineForm = {
  name: string;
  customer: string;
  /** null: laid out by hand, point by point as the sheet has them */
  kind: Omit<AssemblyKind, 'kindId'> | null;
  fitted: 'not-known' | 'as-built';
};

/** A machine with the least that is needed to type a sheet of it. A customer on record is taken by name. */
export function newMachine(
  { name, customer, kind, fitted }: NewMachineForm,
  known: readonly { customerId: number; name: string }[],
): AskOf<typeof machineTakeIn> {
  const called = customer.trim();
  const customerId = known.find((one) => one.name.toLowerCase() === called.toLowerCase())?.customerId ?? null;
  return {
    customerId,
    customer: customerId === null ? { name: called, place: '', address: '', phone: '', email: '' } : null,
    machine: {
      name: name.trim(),
      make: '',
      model: '',
      serial: '',
      builtYear: null,
      note: '',
      meterDigits: null,
      hoursBefore: null,
      workShare: 1,
    },
    dial: null,
    assemblies:
      kind === null
        ? []
        : [
            {
              kind: kind.name,
              name: kind.name,
              serial: '',
              fittedMachineHours: fitted === 'as-built' ? 0 : null,
              positions: kind.positions,
            },
          ],
  };
}
