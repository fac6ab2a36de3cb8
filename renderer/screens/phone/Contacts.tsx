import { useState } from 'react';
import { type Contact, contactStrike } from '#core/contract/recall.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { phoneWords } from '#renderer/words/phoneWords.ts';
import { contactText, recallWords as words } from '#renderer/words/recallWords.ts';

/** What was sent and said, newest first; one that never was is struck, and stays in the record. */
export function Contacts({ contacts }: { contacts: readonly Contact[] }) {
  const [striking, setStriking] = useState<number | null>(null);
  if (contacts.length === 0) return <p className="second">{phoneWords.noContacts}</p>;
  return (
    <ul className="contacts">
      {contacts.map((contact) => (
        <li key={contact.contactId}>
          {contactText(contact)}
          {contact.machine && <span className="second">, {contact.machine}</span>}
          {contact.note && <span className="line">{contact.note}</span>}{' '}
          <button
            type="button"
            className="text-key"
            aria-label={words.strikeLabel(contactText(contact))}
            onClick={() => setStriking(contact.contactId)}
          >
            {words.strike}
          </button>
          {striking === contact.contactId && (
            <StrikeForm contactId={contact.contactId} onDone={() => setStriking(null)} />
          )}
        </li>
      ))}
    </ul>
  );
}

function StrikeForm({ contactId, onDone }: { contactId: number; onDone: () => void }) {
  const strike = useDo(contactStrike);
  const [reason, setReason] = useState('');
  const [by] = useBy();
  const send = async () => {
    if (reason.trim() !== '' && (await strike.run({ contactId, reason, by }))) onDone();
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <TextField label={words.strikeWhy} value={reason} onChange={setReason} maxLength={2000} autoFocus />
      {strike.fault && <FaultBox fault={strike.fault} />}
      <Keys>
        <Key first type="submit" disabled={reason.trim() === '' || strike.busy} onPress={() => {}}>
          {words.strikeIt}
        </Key>
        <Key letter="Escape" onPress={onDone}>
          {words.leave}
        </Key>
      </Keys>
    </form>
  );
}
