import { useState } from 'react';
import { type Contact, contactStrike } from '#core/contract/recall.ts';
import { StrikeForm } from '#renderer/screens/machine/panels/StrikeForm.tsx';
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
          {striking === contact.contactId && <StrikeContact contact={contact} onDone={() => setStriking(null)} />}
        </li>
      ))}
    </ul>
  );
}

function StrikeContact({ contact, onDone }: { contact: Contact; onDone: () => void }) {
  const { run, ...doing } = useDo(contactStrike);
  const strike = (reason: string, by: string) => run({ contactId: contact.contactId, reason, by });
  const { strikeWhy: why, strikeIt: key } = words;
  return <StrikeForm words={{ fact: contactText(contact), why, key }} strike={strike} doing={doing} onDone={onDone} />;
}
