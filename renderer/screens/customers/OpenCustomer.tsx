import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { type CustomerSheet, customerExport, customerPart } from '#core/contract/customer.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { saveBytes } from '#renderer/screens/exchange/saveBytes.ts';
import { momentText } from '#renderer/screens/history/momentText.ts';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { StopMark } from '#renderer/screens/machine/StopBanner.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { customersWords as words } from '#renderer/words/customersWords.ts';
import { ChangeCustomer } from './ChangeCustomer.tsx';
import { EraseCustomer } from './EraseCustomer.tsx';
import { MergeCustomer } from './MergeCustomer.tsx';

type Doing = 'change' | 'merge' | 'erase' | { part: number } | null;

/** A customer under its row: what is on record, and what can be done. */
export function OpenCustomer({
  customer,
  others,
  compareWith,
  onClose,
  onMerged,
}: {
  customer: CustomerSheet;
  others: readonly CustomerSheet[];
  compareWith: number | null;
  onClose: () => void;
  onMerged: (intoCustomerId: number) => void;
}) {
  const [doing, setDoing] = useState<Doing>(compareWith === null ? null : 'merge');
  const [, goTo] = useLocation();
  const giveOut = useDo(customerExport);
  const [given, setGiven] = useState('');
  const done = () => setDoing(null);
  const give = async () => {
    const reply = await giveOut.run({ customerId: customer.customerId });
    if (!reply) return;
    saveBytes(reply.fileName, reply.zipBase64, 'application/zip');
    setGiven(reply.fileName);
  };
  if (doing === 'change') return <ChangeCustomer customer={customer} onDone={done} />;
  if (doing === 'merge')
    return <MergeCustomer customer={customer} others={others} with={compareWith} onLeave={done} onMerged={onMerged} />;
  if (doing === 'erase') return <EraseCustomer customer={customer} onDone={done} />;
  return (
    <div className="row-form">
      <Particulars customer={customer} />
      {customer.merged.length > 0 && (
        <section>
          <h2>{words.mergedHead}</h2>
          <ul>
            {customer.merged.map(({ mergeId, name, place }) => (
              <li key={mergeId}>
                {words.merged(name, place)}{' '}
                {customer.erased === null && (
                  <button
                    type="button"
                    className="text-key"
                    aria-label={words.partLabel(name)}
                    onClick={() => setDoing({ part: mergeId })}
                  >
                    {words.part}
                  </button>
                )}
                {typeof doing === 'object' && doing?.part === mergeId && (
                  <PartAgain mergeId={mergeId} name={name} onDone={done} />
                )}
              </li>
            ))}
          </ul>
        </section>
      )}
      {given !== '' && <p role="status">{words.given(given)}</p>}
      {giveOut.fault && <FaultBox fault={giveOut.fault} />}
      <Keys>
        {customer.erased === null && (
          <>
            <Key letter="C" onPress={() => setDoing('change')}>
              {words.change}
            </Key>
            <Key letter="M" disabled={others.length === 0} onPress={() => setDoing('merge')}>
              {words.merge}
            </Key>
            <Key letter="G" disabled={giveOut.busy} onPress={() => void give()}>
              {words.giveOut}
            </Key>
            <Key letter="R" onPress={() => goTo(`/phone/${customer.customerId}`)}>
              {words.reach}
            </Key>
            <Key onPress={() => setDoing('erase')}>{words.erase}</Key>
          </>
        )}
        <Key letter="Escape" onPress={onClose}>
          {words.close}
        </Key>
      </Keys>
    </div>
  );
}

function Particulars({ customer }: { customer: CustomerSheet }) {
  const { address, email, owned, slips, erased } = customer;
  return (
    <>
      {erased && <p>{words.erasedOn(momentText(erased.madeAt), erased.madeBy, erased.texts)}</p>}
      {(address || email) && (
        <p className="customer-lines">{[...address.split('\n'), email].filter(Boolean).join(', ')}</p>
      )}
      <h2>{words.owned}</h2>
      {owned.length === 0 ? (
        <p className="second">{words.noMachines}</p>
      ) : (
        <ul>
          {owned.map(({ machineId, machine, fromOn, untilOn }) => (
            <li key={`${machineId} ${fromOn}`}>
              <Link href={`/machine/${machineId}`}>{machine}</Link>
              <StopMark machineId={machineId} />{' '}
              <span className="second">
                {words.since(fromOn)}
                {words.until(untilOn)}
              </span>
            </li>
          ))}
        </ul>
      )}
      {slips > 0 && <p>{words.slipsMade(slips)}</p>}
    </>
  );
}

function PartAgain({ mergeId, name, onDone }: { mergeId: number; name: string; onDone: () => void }) {
  const part = useDo(customerPart);
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const complete = reason.trim() !== '';
  const send = async () => {
    if (complete && (await part.run({ mergeId, reason, by }))) onDone();
  };
  return (
    <RowForm
      fact={words.partFact(name)}
      complete={complete}
      doing={part}
      send={words.partIt}
      onSend={send}
      onLeave={onDone}
    >
      <TextField label={words.partReason} value={reason} onChange={setReason} maxLength={2000} autoFocus />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}
