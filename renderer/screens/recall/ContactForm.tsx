import { useState } from 'react';
import { contactAdd } from '#core/contract/recall.ts';
import type { Day } from '#core/units/day.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { recallWords as words } from '#renderer/words/recallWords.ts';
import type { Noted } from './NotedLine.tsx';

type Way = keyof typeof words.ways;
type Answer = keyof typeof words.answers;

const WAYS = (Object.keys(words.ways) as Way[]).map((value) => ({ value, text: words.ways[value] }));
const ANSWERS = (Object.keys(words.answers) as Answer[]).map((value) => ({ value, text: words.answers[value] }));

/** What was said, the answer, and when to ring again: about one machine, or about the farm as a whole. */
export function ContactForm({
  customerId,
  machines,
  machineId,
  onDone,
  onLeave,
}: {
  customerId: number;
  /** which it may be about */
  machines: readonly { machineId: number; name: string }[];
  machineId: number | null;
  onDone: (answer: Answer, noted: Pick<Noted, 'contactIds' | 'booked'>) => void;
  onLeave?: () => void;
}) {
  const today = useToday();
  const add = useDo(contactAdd);
  const [way, setWay] = useState<Way>('phone');
  const [about, setAbout] = useState(String(machineId ?? ''));
  const [answer, setAnswer] = useState<Answer>('none');
  const [madeOn, setMadeOn] = useState<Day | null>(today);
  const [answerOn, setAnswerOn] = useState<Day | null>(null);
  const [callBackOn, setCallBackOn] = useState<Day | null>(null);
  const [saidBy, setSaidBy] = useState('');
  const [note, setNote] = useState('');
  const [by, setBy] = useBy();
  const hasDay = answer === 'booked' || answer === 'later';
  const send = async () => {
    if (madeOn === null || add.busy) return;
    const reply = await add.run({
      ...{ customerId, machineIds: about === '' ? [] : [Number(about)], madeOn, way, slipId: null, saidBy, note, by },
      answer: answer === 'none' ? null : answer,
      answerOn: hasDay ? answerOn : null,
      callBackOn,
    });
    if (!reply) return;
    const isBooked = answer === 'booked' && answerOn !== null && about !== '';
    const booked = isBooked ? { machineId: Number(about), on: answerOn, saidBy, note } : null;
    onDone(answer, { contactIds: reply.contactIds, booked });
  };
  return (
    <RowForm
      className="contact-form"
      complete={madeOn !== null}
      doing={add}
      send={words.noteIt}
      onSend={send}
      {...(onLeave && { onLeave })}
      above={
        <>
          <Choice label={words.answerHead} options={ANSWERS} value={answer} onChange={setAnswer} />
          <Choice label={words.way} options={WAYS} value={way} onChange={setWay} />
          {machines.length > 1 && (
            <Choice
              label={words.about_}
              options={[
                ...machines.map((machine) => ({ value: String(machine.machineId), text: machine.name })),
                { value: '', text: words.aboutAll },
              ]}
              value={about}
              onChange={setAbout}
            />
          )}
        </>
      }
      below={<TextField label={words.note} value={note} onChange={setNote} lines={2} maxLength={2000} />}
    >
      {hasDay && (
        <DayField
          label={answer === 'booked' ? words.booked : words.later}
          value={answerOn}
          onChange={setAnswerOn}
          today={today}
          future
          hint={words.dayHint}
        />
      )}
      <DayField
        label={words.callBack}
        value={callBackOn}
        onChange={setCallBackOn}
        today={today}
        future
        hint={words.dayHint}
      />
      <TextField label={words.saidBy} value={saidBy} onChange={setSaidBy} maxLength={120} />
      <DayField label={words.day} value={madeOn} onChange={setMadeOn} today={today} />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}
