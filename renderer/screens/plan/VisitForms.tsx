import { useState } from 'react';
import { type PlanChange, planAgree, planPostpone, planSplit, type VisitLine } from '#core/contract/plan.ts';
import type { Day } from '#core/units/day.ts';
import { day } from '#core/units/day.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { planWords as words } from '#renderer/words/planWords.ts';

type FormProps = { visit: VisitLine; onDone: (change: PlanChange) => void; onClose: () => void };

/** A visit is agreed with its customer: with whom, and what was promised. */
export function AgreeForm({ visit, onDone, onClose }: FormProps) {
  const agree = useDo(planAgree);
  const today = useToday();
  const [by, setBy] = useBy();
  const [saidBy, setSaidBy] = useState(visit.saidBy || visit.customer);
  const [promisedOn, setPromisedOn] = useState<Day | null>(visit.promisedOn === null ? null : day(visit.promisedOn));
  const [note, setNote] = useState(visit.note);
  const write = async () => {
    const came = await agree.run({ visitId: visit.visitId, saidBy, promisedOn, note, by });
    if (came) onDone(came);
  };
  return (
    <RowForm
      className="visit-form"
      fact={<b>{words.agree.head(visit.machine)}</b>}
      complete
      doing={agree}
      send={words.agree.write}
      onSend={write}
      onLeave={onClose}
      leave={words.keys.leave}
    >
      <TextField label={words.agree.saidBy} value={saidBy} onChange={setSaidBy} maxLength={120} autoFocus />
      <DayField
        label={words.agree.promised}
        value={promisedOn}
        onChange={setPromisedOn}
        today={today}
        future
        hint={words.agree.promisedHint}
      />
      <TextField label={words.agree.note} value={note} onChange={setNote} maxLength={1000} />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}

/** A visit is left out of this winter; an agreed one only once more asked. */
export function PostponeForm({ visit, onDone, onClose }: FormProps) {
  const postpone = useDo(planPostpone);
  const [by] = useBy();
  const [reason, setReason] = useState('');
  const leave = async (sure: boolean) => {
    const came = await postpone.run({ visitId: visit.visitId, reason, sure, by });
    if (came) onDone(came);
  };
  const isAgreed = postpone.fault?.code === 'visit-agreed';
  return (
    <RowForm
      className="visit-form"
      complete
      doing={postpone}
      send={isAgreed ? words.keys.allTheSame : words.keys.postpone}
      onSend={() => leave(isAgreed)}
      onLeave={onClose}
      leave={words.keys.leave}
    >
      <TextField label={words.postponeWhy} value={reason} onChange={setReason} maxLength={1000} autoFocus />
    </RowForm>
  );
}

/** Which positions go into a visit of their own. */
export function SplitForm({ visit, onDone, onClose }: FormProps) {
  const split = useDo(planSplit);
  const [by] = useBy();
  const [chosen, setChosen] = useState<ReadonlySet<number>>(new Set());
  const isAgreed = split.fault?.code === 'visit-agreed';
  const toggle = (positionId: number) =>
    setChosen((before) => {
      const after = new Set(before);
      if (!after.delete(positionId)) after.add(positionId);
      return after;
    });
  const run = async () => {
    const came = await split.run({ visitId: visit.visitId, positionIds: [...chosen], sure: isAgreed, by });
    if (came) onDone(came);
  };
  return (
    <RowForm
      className="visit-form"
      complete={chosen.size > 0}
      doing={split}
      send={isAgreed ? words.keys.allTheSame : words.splitDo}
      onSend={run}
      onLeave={onClose}
      leave={words.keys.leave}
      above={
        <fieldset>
          <legend>{words.splitHead(visit.machine)}</legend>
          {visit.positions.map(({ positionId, item, position, assembly }) => (
            <label key={positionId} className="part-tick">
              <input type="checkbox" checked={chosen.has(positionId)} onChange={() => toggle(positionId)} />
              {item} {position}
              <span className="second">{assembly}</span>
            </label>
          ))}
        </fieldset>
      }
    />
  );
}
