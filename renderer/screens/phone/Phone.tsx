import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { type PhoneMachine, type PhoneSheet, phoneFind, phoneRead } from '#core/contract/recall.ts';
import type { Day } from '#core/units/day.ts';
import { FieldFrame } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox, Notice } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useRecord } from '#renderer/record.tsx';
import { openHours } from '#renderer/screens/hours/openHours.ts';
import { ContactForm } from '#renderer/screens/recall/ContactForm.tsx';
import { type Noted, NotedLine } from '#renderer/screens/recall/NotedLine.tsx';
import { Reach } from '#renderer/screens/recall/Reach.tsx';
import { SeverityMark } from '#renderer/screens/recall/SeverityMark.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { useMachineNames } from '#renderer/useMachines.ts';
import { shared } from '#renderer/words/english.ts';
import { findingText } from '#renderer/words/findingText.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { phoneWords as words } from '#renderer/words/phoneWords.ts';
import { aboutText, comeInText, recallWords, unbroken } from '#renderer/words/recallWords.ts';
import { Contacts } from './Contacts.tsx';
import '../recall/recall.css';

/** A farmer rings: who it is, and then all that is asked on the telephone. */
export default function Phone() {
  const customerId = useIdInAddress('customerId');
  return customerId ? <Caller key={customerId} customerId={customerId} /> : <WhoRings />;
}

function WhoRings() {
  const [, goTo] = useLocation();
  const { counts } = useRecord();
  const [typed, setTyped] = useState('');
  const [stood, setAt] = useState(0);
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => box.current?.focus(), []);
  const found = useAsk(phoneFind, typed.trim() === '' ? null : { text: typed });
  const farms = typed.trim() === '' ? [] : (found.value?.farms ?? []);
  const at = Math.min(stood, farms.length - 1);
  const open = (place: number) => farms[place] && goTo(`/phone/${farms[place].customerId}`);
  return (
    <Sheet title={words.title} sub={words.sub}>
      <div className="phone-find" data-finds>
        <FieldFrame label={words.find} hint={words.findHint}>
          {({ id, describedBy }) => (
            <input
              ref={box}
              id={id}
              value={typed}
              autoComplete="off"
              spellCheck={false}
              aria-describedby={describedBy}
              onChange={(event) => {
                setTyped(event.target.value);
                setAt(0);
              }}
              onKeyDown={(event) => {
                const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
                if (by !== 0) setAt(Math.max(0, Math.min(farms.length - 1, at + by)));
                else if (event.key === 'Enter') open(at);
                else return;
                event.preventDefault();
              }}
            />
          )}
        </FieldFrame>
      </div>
      {found.fault && <FaultBox fault={found.fault} keys={<Key onPress={found.again}>{frameWords.tryAgain}</Key>} />}
      {counts?.machines === 0 ? (
        <Empty
          head={recallWords.emptyRecord}
          keys={
            <Key first onPress={() => goTo('/take-in')}>
              {recallWords.takeIn}
            </Key>
          }
        >
          {words.emptyNext}
        </Empty>
      ) : (
        typed.trim() === '' && <Empty head={words.start}>{words.startNext}</Empty>
      )}
      {typed.trim() !== '' && found.value && farms.length === 0 && <p className="second">{words.nothing(typed)}</p>}
      {farms.length > 0 && (
        <table className="table recall-table phone-found">
          <caption className="said">{words.find}</caption>
          <tbody>
            {farms.map((farm, place) => (
              <tr key={farm.customerId} className={place === at ? 'stood-on' : undefined}>
                <td>
                  <button type="button" className="row-key" onClick={() => open(place)}>
                    {farm.name}
                  </button>
                </td>
                <td>{farm.place}</td>
                <td className="nw">{farm.phone}</td>
                <td>{farm.machines.map(({ name, serial }) => [name, serial].filter(Boolean).join(' ')).join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {farms.length > 0 && (found.value?.more ?? 0) > 0 && (
        <p className="second">{words.more(found.value?.more ?? 0)}</p>
      )}
    </Sheet>
  );
}

function Caller({ customerId }: { customerId: number }) {
  useMachineNames(); // the hours strip then opens on its machine at once
  const [, goTo] = useLocation();
  const sheet = useAsk(phoneRead, { customerId });
  const [doing, setDoing] = useState<'say' | 'reach' | null>(null);
  const [noted, setNoted] = useState<Noted | null>(null);
  const another = (
    <Key letter="V" onPress={() => goTo('/phone')}>
      {words.another}
    </Key>
  );
  if (!sheet.value)
    return (
      <NotYetSheet
        title={words.title}
        of={sheet}
        words={words.looking}
        list={{ at: '/phone', words: words.another }}
        noSuch="unknown-customer"
      />
    );
  const { farm, machines, contacts, asOf } = sheet.value;
  const away = recallWords.away(farm.terms.distanceKm, farm.terms.driveMinutes);
  return (
    <Sheet
      title={farm.name}
      sub={[farm.place, farm.phone, away].filter(Boolean).join(', ')}
      actions={
        <>
          {another}
          <Key letter="R" onPress={() => setDoing('reach')}>
            {recallWords.reachKey}
          </Key>
          <Key first letter="A" onPress={() => setDoing('say')}>
            {words.say}
          </Key>
        </>
      }
      block={[
        { label: shared.asOf, value: asOf },
        { ...planningAidCell, grow: true },
      ]}
    >
      {farm.terms.noContact && (
        <Notice kind="waiting" head={recallWords.noContactIs}>
          {[recallWords.noContactRings, farm.terms.words].filter(Boolean).join(' ')}
        </Notice>
      )}
      {!farm.terms.noContact && farm.terms.words && <p className="second">{farm.terms.words}</p>}
      {noted && <NotedLine key={noted.contactIds.join(' ')} noted={noted} />}
      {doing === 'reach' && <Reach farm={farm} onDone={() => setDoing(null)} />}
      {doing === 'say' && (
        <section className="recall-panel" aria-label={words.say}>
          <ContactForm
            customerId={customerId}
            machines={machines}
            machineId={machines[0]?.machineId ?? null}
            onDone={(answer, came) => {
              setDoing(null);
              const text = answer === 'sold' ? `${recallWords.noted} ${recallWords.soldNext}` : recallWords.noted;
              setNoted({ text, ...came });
            }}
            onLeave={() => setDoing(null)}
          />
        </section>
      )}
      {machines.length === 0 && <Empty head={words.noMachines} />}
      {machines.map((machine, place) => (
        <Asked key={machine.machineId} machine={machine} farm={farm} asOf={asOf} first={place === 0} />
      ))}
      <h2>{words.contacts}</h2>
      <Contacts contacts={contacts} />
    </Sheet>
  );
}

/** One machine as it is asked about: the sentence first, in the size of a headline, then what it rests on. */
function Asked({
  machine,
  farm,
  asOf,
  first,
}: {
  machine: PhoneMachine;
  farm: PhoneSheet['farm'];
  asOf: Day;
  first: boolean;
}) {
  const [, goTo] = useLocation();
  const { machineId, name, makeModel, serial, spoken, comeInBy, openFindings, visits } = machine;
  return (
    <section className="phone-machine" aria-label={name}>
      <header>
        <h2>{name}</h2>
        <span className="second">{[makeModel, serial].filter(Boolean).join(', ')}</span>
        <Keys>
          <Key {...(first && { letter: 'D' })} onPress={() => openHours({ machineId, saidBy: farm.name })}>
            {words.dial}
          </Key>
          <Key {...(first && { letter: 'S' })} onPress={() => goTo(`/slip/${machineId}`)}>
            {words.slipKey}
          </Key>
          <Key {...(first && { letter: 'M' })} onPress={() => goTo(`/machine/${machineId}`)}>
            {words.machineKey}
          </Key>
        </Keys>
      </header>
      <p className="spoken">{unbroken(spoken)}</p>
      <dl className="phone-facts">
        <dt>{words.by}</dt>
        <dd>
          {comeInBy ? (
            <>
              <b className="deciding nw">{comeInText(comeInBy)}</b>
              {', '}
              {[aboutText(comeInBy, asOf), `${comeInBy.item} ${comeInBy.label}`].filter(Boolean).join(', ')}
              {comeInBy.guessed ? `; ${recallWords.guessed}` : ''}
            </>
          ) : (
            '–'
          )}
        </dd>
        <dt>{words.found}</dt>
        <dd>
          {openFindings.length === 0 && words.noFindings}
          {openFindings.map((finding) => (
            <div key={finding.findingId}>
              <SeverityMark severity={finding.severity} />{' '}
              {[finding.position, findingText(finding)].filter(Boolean).join(': ')}
            </div>
          ))}
        </dd>
        <dt>{words.visits}</dt>
        <dd>
          {visits.length === 0
            ? words.noVisits
            : visits
                .slice(0, 4)
                .map(({ on, kind, text }) => words.visit(on, kind, text))
                .join('; ')}
        </dd>
      </dl>
    </section>
  );
}
