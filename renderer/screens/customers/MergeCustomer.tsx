import { useState } from 'react';
import { type CustomerSheet, customerMerge } from '#core/contract/customer.ts';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { customersWords as words } from '#renderer/words/customersWords.ts';
import { DetailFields, type Details, detailsOf } from './DetailFields.tsx';

/** Two rows of one customer: who stays, what goes where, and what is right of the two; only then merged. */
export function MergeCustomer({
  customer,
  others,
  with: first,
  onLeave,
  onMerged,
}: {
  customer: CustomerSheet;
  others: readonly CustomerSheet[];
  with: number | null;
  onLeave: () => void;
  onMerged: (intoCustomerId: number) => void;
}) {
  const merge = useDo(customerMerge);
  const [intoId, setIntoId] = useState(first);
  const [typed, setTyped] = useState<Details | null>(null);
  const [by, setBy] = useBy();
  const into = others.find(({ customerId }) => customerId === intoId);
  const details = typed ?? (into ? filledUp(into, customer) : null);
  const send = async () => {
    if (!into || !details || details.name.trim() === '') return;
    const ask = { customerId: customer.customerId, intoCustomerId: into.customerId, details, by };
    if (await merge.run(ask)) onMerged(into.customerId);
  };
  return (
    <RowForm
      fact={words.mergeFact(words.merged(customer.name, customer.place))}
      complete={into !== undefined && details !== null && details.name.trim() !== ''}
      doing={merge}
      send={words.mergeIt}
      onSend={send}
      onLeave={onLeave}
      above={
        <>
          <PickBox
            label={words.mergeInto}
            hint={words.mergeIntoHint}
            autoFocus={first === null}
            options={others.map((one) => ({
              id: String(one.customerId),
              text: one.name,
              second: [one.place, one.phone].filter(Boolean).join(', '),
            }))}
            value={intoId === null ? null : String(intoId)}
            onChange={(id) => {
              setIntoId(id === null ? null : Number(id));
              setTyped(null);
            }}
          />
          {into && details && (
            <>
              <h2>{words.mergeGoes}</h2>
              <ul>
                <li>
                  {customer.owned.length === 0
                    ? words.goesNoMachines
                    : words.goesMachines(
                        [...new Set(customer.owned.map(({ machine }) => machine))].join(', '),
                        into.name,
                      )}
                </li>
                <li>{words.goesSlips(customer.slips, into.name)}</li>
              </ul>
              <h2>{words.mergeRight}</h2>
              <DetailFields details={details} onChange={setTyped} other={customer} />
            </>
          )}
        </>
      }
      below={into && <p className="second">{words.mergeUndo}</p>}
    >
      {into && <ByField value={by} onChange={setBy} />}
    </RowForm>
  );
}

/** What stays, its empty boxes filled from the other. */
function filledUp(into: CustomerSheet, from: CustomerSheet): Details {
  const [own, other] = [detailsOf(into), detailsOf(from)];
  return {
    name: own.name || other.name,
    place: own.place || other.place,
    address: own.address || other.address,
    phone: own.phone || other.phone,
    email: own.email || other.email,
  };
}
