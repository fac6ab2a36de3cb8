import { useState } from 'react';
import { type CustomerSheet, customerChange } from '#core/contract/customer.ts';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { customersWords as words } from '#renderer/words/customersWords.ts';
import { DetailFields, detailsOf } from './DetailFields.tsx';

/** A customer's particulars, put anew; the old ones stay in the record. */
export function ChangeCustomer({ customer, onDone }: { customer: CustomerSheet; onDone: () => void }) {
  const change = useDo(customerChange);
  const [details, setDetails] = useState(detailsOf(customer));
  const [by, setBy] = useBy();
  const complete = details.name.trim() !== '';
  const send = async () => {
    if (complete && (await change.run({ customerId: customer.customerId, ...details, by }))) onDone();
  };
  return (
    <RowForm
      fact={words.changeFact}
      complete={complete}
      doing={change}
      send={words.save}
      onSend={send}
      onLeave={onDone}
      above={<DetailFields details={details} onChange={setDetails} />}
    >
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}
