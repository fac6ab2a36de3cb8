import type { z } from 'zod';
import type { zCustomer } from '#core/contract/machine.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { takeInWords as words } from '#renderer/words/takeInWords.ts';
import type { CustomerForm, TakeInForm } from './form.ts';

export type Customer = z.infer<typeof zCustomer>;

/** Whose it is: part of a name finds a customer on record, any other name makes a new one. */
export function CustomerPart({
  form,
  customers,
  fault,
  onChange,
}: {
  form: TakeInForm;
  customers: readonly Customer[];
  fault: string | null;
  onChange: (next: Pick<TakeInForm, 'customerId' | 'customer'>) => void;
}) {
  const known = customers.find(({ customerId }) => customerId === form.customerId);
  const set = (next: Partial<CustomerForm>) => onChange({ customerId: null, customer: { ...form.customer, ...next } });
  return (
    <section className="form-part" aria-label={words.customer}>
      <h2>{words.customer}</h2>
      <PickBox
        label={words.customerName}
        autoFocus
        opens="input"
        options={customers.map((customer) => ({
          id: String(customer.customerId),
          text: customer.name,
          second: customer.place,
        }))}
        value={known ? String(known.customerId) : null}
        onChange={(id) => onChange({ customerId: id === null ? null : Number(id), customer: form.customer })}
        onOther={(name) => {
          // the name of a customer on record, put in by the list, is not a new one
          if (name !== known?.name) onChange({ customerId: null, customer: { ...form.customer, name } });
        }}
        hint={fault ?? (known ? words.known : form.customer.name.trim() === '' ? words.customerHint : words.isNew)}
      />
      {known ? (
        <dl className="known">
          {[known.place, known.address, known.phone, known.email].filter(Boolean).map((line) => (
            <dd key={line}>{line}</dd>
          ))}
        </dl>
      ) : (
        <>
          <TextField
            label={words.place}
            value={form.customer.place}
            onChange={(place) => set({ place })}
            maxLength={200}
          />
          <div className="pair">
            <TextField
              label={words.phone}
              value={form.customer.phone}
              onChange={(phone) => set({ phone })}
              maxLength={60}
            />
            <TextField
              label={words.email}
              value={form.customer.email}
              onChange={(email) => set({ email })}
              maxLength={200}
            />
          </div>
          <TextField
            label={words.address}
            value={form.customer.address}
            onChange={(address) => set({ address })}
            lines={2}
            maxLength={500}
          />
        </>
      )}
    </section>
  );
}
