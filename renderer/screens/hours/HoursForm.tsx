import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { hoursAdd } from '#core/contract/hours.ts';
import type { MachineLine, MachineNames } from '#core/contract/machine.ts';
import type { Question as Asks } from '#core/contract/shapes.ts';
import { day, isDay } from '#core/units/day.ts';
import { dayText, hoursFigure, hoursText } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { useMachineLines, useMachineNames } from '#renderer/useMachines.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { hoursWords as words } from '#renderer/words/hoursWords.ts';
import { answerText, questionText } from '#renderer/words/questionText.ts';
import { readNumber } from '#renderer/words/readNumber.ts';
import { FigureField } from '../take-in/FigureField.tsx';
import { answered, emptyHoursForm, type HoursForm as Form, type HoursField, hoursRequest } from './hoursForm.ts';
import type { HoursOpening } from './openHours.ts';

/** Machine, dial, day, who said so; a question opens under them, and nothing typed is lost by it. */
export function HoursForm({ opening, onClose }: { opening: HoursOpening; onClose: () => void }) {
  const today = useToday();
  const writing = useWriting();
  const machines = useMachineNames();
  const add = useDo(hoursAdd);
  const [form, setForm] = useState<Form>(() => opened(opening, today));
  const [question, setQuestion] = useState<Asks | null>(null);
  const [remarked, setRemarked] = useState(false);
  const [kept, setKept] = useState<KeptHours | null>(null);
  const strip = useRef<HTMLElement>(null);
  const named = machines.value?.machines.find(({ machineId }) => machineId === form.machineId);
  const machine = useMachineLines(form.machineId === null ? null : [form.machineId]).value?.lines[0];
  const { remarks } = hoursRequest(form);
  const missing = (field: HoursField) =>
    remarked && remarks.some((remark) => remark.field === field && SAID_HERE.includes(remark.why))
      ? words.missing[field]
      : null;

  // where the machine is known the dial is what is typed
  const [dialAsked, setDialAsked] = useState(opening.machineId === undefined ? 0 : 1);
  // after the boxes stand: an answer may have put other ones there
  useEffect(() => {
    if (dialAsked > 0) strip.current?.querySelector<HTMLElement>('input.number')?.focus();
  }, [dialAsked]);
  const focusDial = () => setDialAsked((times) => times + 1);

  const change = (next: Partial<Form>) => {
    setForm({ ...form, ...next });
    setQuestion(null);
    setKept(null);
    add.clear();
  };
  const send = async (toSend: Form, sure: boolean) => {
    const { request, remarks: wrong } = hoursRequest(toSend, sure);
    setRemarked(true);
    if (!request) {
      if (wrong[0]?.field === 'dialHours') focusDial();
      return;
    }
    const reply = await add.run(request);
    if (!reply) return;
    setQuestion(reply.kept ? null : reply.question);
    if (!reply.kept) return;
    // kept, though it cannot be: it stands aside till somebody puts it right
    setKept({ machine: named?.name ?? '', machineHours: reply.machineHours, aside: reply.question !== null });
    setForm(emptyHoursForm(today, toSend.saidBy));
    setRemarked(false);
    strip.current?.querySelector<HTMLElement>('.pick input')?.focus();
  };
  const answer = (choice: string) => {
    const next = answered(form, choice);
    setForm(next.form);
    setQuestion(null);
    if (next.send) void send(next.form, next.send.sure);
    else focusDial();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && !event.defaultPrevented) {
      event.preventDefault();
      onClose();
    }
    if (event.key === 'Enter' && event.target instanceof HTMLInputElement && !event.defaultPrevented) {
      // Enter in the machine's own list takes its line; then the next Enter is the form's
      if (event.target.getAttribute('aria-expanded') === 'true') return;
      event.preventDefault();
      if (event.target.closest('.pick')) focusDial();
      else void send(form, false);
    }
  };
  const asked = question && questionText(question, { writing });
  return (
    <section ref={strip} className="hours-strip" aria-label={words.title} onKeyDown={onKey}>
      <StopBanner machineId={form.machineId} />
      <div className="hours-fields">
        <h2>{words.title}</h2>
        <div className="hours-machine">
          <PickBox
            label={words.machine}
            options={(machines.value?.machines ?? []).map(optionOf)}
            value={form.machineId === null ? null : String(form.machineId)}
            onChange={(id) => change({ machineId: id === null ? null : Number(id) })}
            hint={missing('machineId') ?? words.machineHint}
            autoFocus={opening.machineId === undefined}
            opens="input"
          />
        </div>
        <DialFields form={form} onChange={change} missing={missing} />
        <DayField
          label={words.day}
          today={today}
          value={isDay(form.takenOn) ? form.takenOn : null}
          onChange={(takenOn) => change({ takenOn: takenOn ?? '' })}
          fault={missing('takenOn')}
        />
        <TextField label={words.saidBy} value={form.saidBy} onChange={(saidBy) => change({ saidBy })} maxLength={120} />
      </div>
      <div className="hours-second">
        <Choice
          label={words.kind}
          labelled={false}
          options={KINDS}
          value={form.kind}
          onChange={(kind) => change({ kind })}
        />
        <p role="status">
          {kept ? (
            <>
              <b>
                <Figures>{keptText(kept)}</Figures>
              </b>{' '}
              {kept.aside ? words.keptAsideNote : words.keptNote}
            </>
          ) : (
            machine && <Figures>{standing(machine)}</Figures>
          )}
        </p>
        <div className="keys">
          <Key first letter="Enter" disabled={add.busy} onPress={() => void send(form, false)}>
            {words.enter}
          </Key>
          <Key letter={words.escape} onPress={onClose}>
            {words.close}
          </Key>
        </div>
      </div>
      {asked && question && (
        <Question
          fact={<Figures>{asked.fact}</Figures>}
          then={asked.meanwhile}
          keys={question.choices.map((choice, i) => {
            const { text, letter } = answerText(choice);
            return (
              <Key key={choice} letter={letter} autoFocus={i === 0} onPress={() => answer(choice)}>
                {text}
              </Key>
            );
          })}
        />
      )}
      {add.fault && <FaultBox fault={add.fault} />}
    </section>
  );
}

/** Other remarks are those of reading a number: its own box says them. */
const SAID_HERE: readonly string[] = ['missing', 'out-of-bounds'];

const KINDS = (['reading', 'new-meter', 'rollover', 'estimate'] as const).map((value) => ({
  value,
  text: words.kinds[value],
}));

function DialFields({
  form,
  onChange,
  missing,
}: {
  form: Form;
  onChange: (next: Partial<Form>) => void;
  missing: (field: HoursField) => string | null;
}) {
  const writing = useWriting();
  const figure = (text: string) => {
    const read = readNumber(text, 'h');
    return read.ok ? read.value : null;
  };
  const newMeter = form.kind === 'new-meter';
  return (
    <>
      <NumberField
        key={form.kind}
        label={newMeter ? words.oldDial : form.kind === 'estimate' ? words.estimate : words.dial}
        unit="h"
        writing={writing}
        value={figure(form.dialText)}
        onChange={(_, dialText) => onChange({ dialText })}
        fault={missing('dialHours')}
        {...(newMeter && { hint: words.oldDialHint })}
      />
      {newMeter && (
        <NumberField
          label={words.newDial}
          unit="h"
          writing={writing}
          value={figure(form.newDialText)}
          onChange={(_, newDialText) => onChange({ newDialText })}
          fault={missing('newDialHours')}
        />
      )}
      {newMeter && (
        <FigureField
          label={words.clock}
          unit={words.clockUnit}
          text={form.clockText}
          onText={(clockText) => onChange({ clockText })}
          hint={words.clockHint}
          fault={missing('clock')}
        />
      )}
      {newMeter && form.clockText.trim() !== '' && (
        <TextField
          label={words.clockWhy}
          value={form.clockReason}
          onChange={(clockReason) => onChange({ clockReason })}
          fault={missing('clockWhy')}
          maxLength={2000}
        />
      )}
      {form.kind === 'estimate' && (
        <NumberField
          label={words.error}
          unit="h"
          writing={writing}
          value={figure(form.errorText)}
          onChange={(_, errorText) => onChange({ errorText })}
          hint={words.errorHint}
        />
      )}
    </>
  );
}

const optionOf = (machine: MachineNames) => ({
  id: String(machine.machineId),
  text: machine.name,
  second: [machine.customer, machine.place, machine.serial].filter(Boolean).join(', '),
});

type KeptHours = { machine: string; machineHours: number | null; aside: boolean };

function keptText({ machine, machineHours, aside }: KeptHours): string {
  if (aside) return words.keptAside(machine);
  return machineHours === null ? words.keptUnknown(machine) : words.kept(machine, hoursFigure(machineHours));
}

/** Where the machine's hours stand: what a person on the telephone checks the new figure against. */
function standing({ hours }: MachineLine): string {
  if (hours.dialMachine && hours.dialHours !== null)
    return words.goesBy(hours.dialMachine.name, hoursText(hours.dialHours));
  if (hours.readOn === null || hours.machineHoursRead === null) return words.neverRead;
  const read = words.lastRead(hoursText(hours.machineHoursRead), dayText(day(hours.readOn)));
  return hours.dialHours === null ? read : `${read} ${words.shouldShow(hoursText(hours.dialHours))}`;
}

function opened(opening: HoursOpening, today: string): Form {
  const form = emptyHoursForm(today, opening.saidBy ?? '', opening.machineId ?? null);
  const typed = opening.dialHours === undefined ? '' : String(opening.dialHours);
  if (opening.kind === 'new-meter') return { ...form, kind: 'new-meter', newDialText: typed };
  return { ...form, kind: opening.kind ?? 'reading', dialText: typed };
}
