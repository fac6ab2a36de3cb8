import { Fragment, useState } from 'react';
import { machineSellOn, ownerPutRight } from '#core/contract/customer.ts';
import { customersList, type MachineSheet, type Owner } from '#core/contract/machine.ts';
import { type Day, day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday } from '#renderer/record.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { ownerWords as words } from '#renderer/words/customersWords.ts';
import { ByField, useBy } from './ByField.tsx';

/** Whose the machine was and is; sold on from a day, and put right. */
export function OwnersPanel({ sheet }: { sheet: MachineSheet }) {
  const [selling, setSelling] = useState(false);
  const [mending, setMending] = useState<number | null>(null);
  const last = sheet.owners.findLast(({ struck }) => !struck);
  return (
    <>
      {sheet.owners.length === 0 ? (
        <p className="second">{words.none}</p>
      ) : (
        <table className="table">
          <thead>
            <tr>
              <th>{words.owner}</th>
              <th>{words.from}</th>
              <th>{words.state}</th>
            </tr>
          </thead>
          <tbody>
            {sheet.owners.map((owner) => (
              <Fragment key={owner.ownershipId}>
                <OwnerLine owner={owner} isLast={owner === last} onMend={() => setMending(owner.ownershipId)} />
                {mending === owner.ownershipId && (
                  <tr className="form-row">
                    <td colSpan={3}>
                      <PutRight owner={owner} onDone={() => setMending(null)} />
                    </td>
                  </tr>
                )}
              </Fragment>
            ))}
          </tbody>
        </table>
      )}
      {selling ? (
        <SellOn machineId={sheet.machineId} onDone={() => setSelling(false)} />
      ) : (
        <Keys>
          <Key onPress={() => setSelling(true)}>{words.sellOn}</Key>
        </Keys>
      )}
    </>
  );
}

const nameOf = ({ name, place }: Owner): string =>
  name === '' ? words.erased : [name, place].filter(Boolean).join(', ');

function OwnerLine({ owner, isLast, onMend }: { owner: Owner; isLast: boolean; onMend: () => void }) {
  const { fromOn, struck, reason } = owner;
  const name = nameOf(owner);
  return (
    <tr className={isLast ? undefined : 'second'}>
      <td>{struck ? <s>{name}</s> : name}</td>
      <td className="nw">{fromOn === null ? words.fromBeginning : dayText(day(fromOn))}</td>
      <td>
        {struck ? words.never(reason) : isLast ? words.now : words.before}{' '}
        {!struck && (
          <button type="button" className="text-key" aria-label={words.putRightLabel(name)} onClick={onMend}>
            {words.putRight}
          </button>
        )}
      </td>
    </tr>
  );
}

function SellOn({ machineId, onDone }: { machineId: number; onDone: () => void }) {
  const today = useToday();
  const sell = useDo(machineSellOn);
  const customers = useAsk(customersList, {}).value?.customers ?? [];
  const [customerId, setCustomerId] = useState<number | null>(null);
  const [buyer, setBuyer] = useState({ name: '', place: '', address: '', phone: '', email: '' });
  const [fromOn, setFromOn] = useState<Day | null>(today);
  const [by, setBy] = useBy();
  const complete = fromOn !== null && (customerId !== null || buyer.name.trim() !== '');
  const send = async () => {
    if (!complete) return;
    const whose = customerId === null ? { customerId: null, customer: buyer } : { customerId, customer: null };
    if (await sell.run({ machineId, fromOn, ...whose, by })) onDone();
  };
  const known = customers.find((one) => one.customerId === customerId);
  return (
    <RowForm
      fact={words.sellOnFact}
      complete={complete}
      doing={sell}
      send={words.sellIt}
      onSend={send}
      onLeave={onDone}
    >
      <PickBox
        label={words.buyer}
        autoFocus
        opens="input"
        options={customers.map((one) => ({ id: String(one.customerId), text: one.name, second: one.place }))}
        value={customerId === null ? null : String(customerId)}
        onChange={(id) => setCustomerId(id === null ? null : Number(id))}
        onOther={(name) => {
          if (name === known?.name) return;
          setCustomerId(null);
          setBuyer({ ...buyer, name });
        }}
        hint={known ? words.buyerKnown : buyer.name.trim() === '' ? words.buyerHint : words.buyerNew}
      />
      <DayField label={words.from2} value={fromOn} onChange={setFromOn} today={today} />
      {!known && (
        <>
          <TextField
            label={words.place}
            value={buyer.place}
            onChange={(place) => setBuyer({ ...buyer, place })}
            maxLength={200}
          />
          <TextField
            label={words.phone}
            value={buyer.phone}
            onChange={(phone) => setBuyer({ ...buyer, phone })}
            maxLength={60}
          />
        </>
      )}
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}

function PutRight({ owner, onDone }: { owner: Owner; onDone: () => void }) {
  const today = useToday();
  const mend = useDo(ownerPutRight);
  const customers = useAsk(customersList, {}).value?.customers ?? [];
  const [customerId, setCustomerId] = useState<number | null>(owner.customerId);
  const [fromOn, setFromOn] = useState<Day | null>(owner.fromOn === null ? null : day(owner.fromOn));
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const complete = reason.trim() !== '';
  const send = async (struck: boolean) => {
    if (!complete || (!struck && customerId === null)) return;
    const ask = { ownershipId: owner.ownershipId, fromOn, customerId: struck ? null : customerId, reason, by };
    if (await mend.run(ask)) onDone();
  };
  return (
    <RowForm
      fact={words.putRightFact(nameOf(owner))}
      complete={complete && customerId !== null}
      doing={mend}
      send={words.savePutRight}
      onSend={() => send(false)}
      keys={
        <Key disabled={!complete || mend.busy} onPress={() => void send(true)}>
          {words.strike}
        </Key>
      }
      onLeave={onDone}
    >
      <PickBox
        label={words.owner}
        options={customers.map((one) => ({ id: String(one.customerId), text: one.name, second: one.place }))}
        value={customerId === null ? null : String(customerId)}
        onChange={(id) => setCustomerId(id === null ? null : Number(id))}
      />
      {owner.fromOn !== null && <DayField label={words.from2} value={fromOn} onChange={setFromOn} today={today} />}
      <TextField label={words.why} value={reason} onChange={setReason} maxLength={2000} />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}
