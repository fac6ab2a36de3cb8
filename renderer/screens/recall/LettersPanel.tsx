import { useState } from 'react';
import { useLocation } from 'wouter';
import { contactAdd, type DueFarm, type DueMachine, type Letters, recallLetters } from '#core/contract/recall.ts';
import { slipMake } from '#core/contract/slip.ts';
import { copyText } from '#renderer/controls/CopyDetails.tsx';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { useToday } from '#renderer/record.tsx';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { bytesOfBase64, savePdf } from '#renderer/screens/slips/paperBytes.ts';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { unbroken, recallWords as words } from '#renderer/words/recallWords.ts';
import { ContactForm } from './ContactForm.tsx';
import type { Noted } from './NotedLine.tsx';

type Showing = 'email' | 'message' | 'script' | 'answer' | null;
/** What may have gone out: the person says whether it did. */
type Sent = { way: 'slip' | 'email' | 'message'; slipId: number | null };

/** One machine of a farm: its slip, letters and words for the telephone at one press, and what came of them. */
export function LettersPanel({
  farm,
  machine,
  onClose,
  onAnswered,
}: {
  farm: DueFarm['farm'];
  machine: DueMachine;
  onClose: () => void;
  onAnswered: (noted: Noted) => void;
}) {
  const { machineId } = machine;
  const { customerId } = farm;
  const today = useToday();
  const [, goTo] = useLocation();
  const letters = useAsk(recallLetters, { machineId });
  const make = useDo(slipMake);
  const note = useDo(contactAdd);
  const [by] = useBy();
  const [showing, setShowing] = useState<Showing>(null);
  const [made, setMade] = useState('');
  const [sent, setSent] = useState<Sent | null>(null);
  const makeSlip = async () => {
    const slip = await make.run({ machineId, by });
    if (!slip) return;
    savePdf(bytesOfBase64(slip.pdfBase64), slip.fileName);
    setMade(words.slipMade(slip.number, slip.fileName));
    setSent({ way: 'slip', slipId: slip.slipId });
  };
  const noteSent = async ({ way, slipId }: Sent) => {
    const reply = await note.run({
      ...{ customerId, machineIds: [machineId], madeOn: today, way, slipId, saidBy: '', note: '' },
      ...{ answer: null, answerOn: null, callBackOn: null, by },
    });
    if (reply) onAnswered({ text: words.noted, contactIds: reply.contactIds, booked: null });
  };
  const show = (next: Showing, going: Sent | null) => {
    setShowing(next);
    setSent(going);
    setMade('');
  };
  return (
    <div className="row-form">
      {letters.fault && <FaultBox fault={letters.fault} />}
      {!letters.value && !letters.fault && <FillingRule words={words.wait} />}
      {letters.value && (
        <>
          <h2>{words.readAloud}</h2>
          <p className="spoken">{unbroken(letters.value.spoken)}</p>
          <Keys>
            <Key letter="S" first disabled={make.busy} onPress={() => void makeSlip()}>
              {words.slip}
            </Key>
            <Key letter="E" onPress={() => show('email', { way: 'email', slipId: null })}>
              {words.email}
            </Key>
            <Key letter="M" onPress={() => show('message', { way: 'message', slipId: null })}>
              {words.message}
            </Key>
            <Key letter="P" onPress={() => show('script', null)}>
              {words.script}
            </Key>
            <Key letter="A" onPress={() => show('answer', null)}>
              {words.answer}
            </Key>
            <Key onPress={() => goTo(`/machine/${machineId}`)}>{words.toMachine}</Key>
            <Key letter="Escape" onPress={onClose}>
              {words.close}
            </Key>
          </Keys>
          {make.fault && <FaultBox fault={make.fault} />}
          {made && <p role="status">{made}</p>}
          <Shown letters={letters.value} showing={showing} />
          {showing === 'answer' && (
            <ContactForm
              customerId={customerId}
              machines={[{ machineId, name: machine.name }]}
              machineId={machineId}
              onDone={(answer, came) =>
                onAnswered({ text: answer === 'sold' ? `${words.noted} ${words.soldNext}` : words.noted, ...came })
              }
              onLeave={() => show(null, null)}
            />
          )}
          {sent && (
            <Question
              fact={words.sentQuestion}
              then={words.sentThen}
              keys={
                <>
                  <Key letter="Y" disabled={note.busy} onPress={() => void noteSent(sent)}>
                    {words.noteSent}
                  </Key>
                  <Key letter="N" onPress={() => setSent(null)}>
                    {words.notSent}
                  </Key>
                </>
              }
            />
          )}
          {note.fault && <FaultBox fault={note.fault} />}
        </>
      )}
    </div>
  );
}

/** The letter chosen, whole, with what can be done with it. */
function Shown({ letters, showing }: { letters: Letters; showing: Showing }) {
  const { email, message, script } = letters;
  switch (showing) {
    case 'email':
      return (
        <section className="letter-text">
          <h2>{words.email}</h2>
          {email.to === '' && <p className="second">{words.noAddress}</p>}
          <p>
            {words.subject}: <b>{email.subject}</b>
          </p>
          <pre>{email.body}</pre>
          <Keys>
            <a className="key first" href={email.mailto} target="_blank" rel="noreferrer">
              {words.openMail}
            </a>
            <CopyKey text={`${email.subject}\n\n${email.body}`} />
          </Keys>
        </section>
      );
    case 'message':
      return (
        <section className="letter-text">
          <h2>{words.message}</h2>
          <pre>{message}</pre>
          <p className="second">{words.characters(message.length)}</p>
          <Keys>
            <CopyKey text={message} />
          </Keys>
        </section>
      );
    case 'script':
      return (
        <section className="letter-text">
          <h2>{words.script}</h2>
          <ol>
            {script.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
        </section>
      );
    default:
      return null;
  }
}

function CopyKey({ text }: { text: string }) {
  const [copied, setCopied] = useState<boolean | null>(null);
  return (
    <>
      <Key letter="C" onPress={() => setCopied(copyText(text))}>
        {copied ? words.copied : words.copy}
      </Key>
      {copied === false && <span role="alert">{words.notCopied}</span>}
    </>
  );
}
