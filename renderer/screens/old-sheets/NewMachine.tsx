import { useRef, useState } from 'react';
import { customersList, machineTakeIn } from '#core/contract/machine.ts';
import type { AssemblyKind } from '#core/contract/shop.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { newMachine } from './newMachine.ts';
import { useDeskDo } from './useDesk.ts';
import { useEnterTakes } from './useEnterTakes.ts';

const BY_HAND = '';
const FITTED = [
  { value: 'not-known' as const, text: words.fittedNotKnown },
  { value: 'as-built' as const, text: words.fittedAsBuilt },
];

/** A machine the paper names and the record does not: taken in with the least, so that the sheet can be typed. */
export function NewMachine({
  name: called,
  kinds,
  onTaken,
  onLeave,
}: {
  name: string;
  kinds: readonly AssemblyKind[];
  onTaken: (machineId: number) => void;
  onLeave: () => void;
}) {
  const customers = useAsk(customersList, {});
  const takeIn = useDeskDo(machineTakeIn);
  const [name, setName] = useState(called);
  const [customer, setCustomer] = useState('');
  const [kind, setKind] = useState(kinds[0]?.name ?? BY_HAND);
  const [fitted, setFitted] = useState<'not-known' | 'as-built'>('not-known');
  const [tried, setTried] = useState(false);
  const strip = useRef<HTMLElement>(null);
  const send = async () => {
    setTried(true);
    if (customer.trim() === '') return;
    const known = customers.value?.customers ?? [];
    const reply = await takeIn.run(
      newMachine({ name, customer, kind: kinds.find((one) => one.name === kind) ?? null, fitted }, known),
    );
    if (reply) onTaken(reply.machineId);
  };
  const onKeyDown = useEnterTakes(strip, () => void send(), onLeave);
  return (
    <section ref={strip} className="desk-strip" aria-label={words.newMachine(name)} onKeyDownCapture={onKeyDown}>
      <h2>{words.newMachine(called)}</h2>
      <p className="second">{words.newMachineNote}</p>
      <div className="desk-fields">
        <TextField label={words.newName} value={name} onChange={setName} maxLength={120} />
        <TextField
          label={words.customer}
          value={customer}
          onChange={setCustomer}
          offered={customers.value?.customers.map((one) => one.name) ?? []}
          fault={tried && customer.trim() === '' ? words.needsCustomer : null}
          maxLength={120}
          autoFocus
        />
        <Choice
          label={words.kind}
          options={[
            ...kinds.map((one) => ({ value: one.name, text: one.name })),
            { value: BY_HAND, text: words.byHand },
          ]}
          value={kind}
          onChange={setKind}
        />
        <Choice label={words.fitted} options={FITTED} value={fitted} onChange={setFitted} />
      </div>
      {takeIn.fault && <FaultBox fault={takeIn.fault} />}
      <div className="keys">
        <Key first letter="Enter" disabled={takeIn.busy} onPress={() => void send()}>
          {words.takeIn}
        </Key>
        <Key letter="Escape" onPress={onLeave}>
          {words.leave}
        </Key>
      </div>
    </section>
  );
}
