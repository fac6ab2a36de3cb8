import { useState } from 'react';
import { type CustomerSheet, customerChange } from '#core/contract/customer.ts';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
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
    <form
      className="row-form"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <p>{words.changeFact}</p>
      <DetailFields details={details} onChange={setDetails} />
      <ByField value={by} onChange={setBy} />
      {change.fault && <FaultBox fault={change.fault} />}
      <Keys>
        <Key first type="submit" disabled={!complete || change.busy} onPress={() => {}}>
          {words.save}
        </Key>
        <Key letter="Escape" onPress={onDone}>
          {words.leave}
        </Key>
      </Keys>
    </form>
  );
}
