import { useState } from 'react';
import type { Plan, PlanAccount, PlanSum, WhatIf as Tried } from '#core/contract/plan.ts';
import { day } from '#core/units/day.ts';
import { dayOfYearText, decimalFigure } from '#core/words/quantityText.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { useWriting } from '#renderer/record.tsx';
import type { useJob } from '#renderer/screens/exchange/useJob.ts';
import { useMachineNames } from '#renderer/useMachines.ts';
import { changedText, differenceText, planWords } from '#renderer/words/planWords.ts';

const words = planWords.whatIf;

type Props = { plan: Plan; job: ReturnType<typeof useJob>; busy: boolean; onClose: () => void };

/** Tries other hours, prices and use on the plan, and sets both beside each other; nothing is saved. */
export function WhatIf({ plan, job, busy, onClose }: Props) {
  const writing = useWriting();
  const machines = useMachineNames();
  const [hoursPerWeek, setHoursPerWeek] = useState<number | null>(null);
  const [off, setOff] = useState<number | null>(null);
  const [offFrom, setOffFrom] = useState(plan.weeks[0]?.weekFrom ?? plan.asOf);
  const [offWeeks, setOffWeeks] = useState(2);
  const [times, setTimes] = useState<number | null>(null);
  const [partClass, setPartClass] = useState('');
  const [use, setUse] = useState<number | null>(null);
  const [machineId, setMachineId] = useState<string | null>(null);
  const asked: Tried = {
    hoursPerWeek,
    fitterOff: off === null ? null : { weekFrom: offFrom, weeks: offWeeks, benchHours: off },
    parts: times === null ? null : { partClass, times },
    use: use === null || machineId === null ? null : { machineId: Number(machineId), times: use },
  };
  const nothing = Object.values(asked).every((one) => one === null);
  const running = job.state?.state === 'running' && !busy;
  const account = job.state?.state === 'done' && job.state.plan?.saved === false ? job.state.plan : null;
  return (
    <section className="plan-panel" aria-label={words.head}>
      <h2>{words.head}</h2>
      <p className="second">{words.note}</p>
      <div className="fields">
        <NumberField
          label={words.hours}
          unit="h"
          value={hoursPerWeek}
          onChange={setHoursPerWeek}
          writing={writing}
          autoFocus
        />
        <NumberField label={words.off} unit="h" value={off} onChange={setOff} writing={writing} />
        <label className="field">
          {words.offFrom}
          <select value={offFrom} onChange={(event) => setOffFrom(event.target.value as typeof offFrom)}>
            {plan.weeks.map(({ weekFrom }) => (
              <option key={weekFrom} value={weekFrom}>
                {dayOfYearText(day(weekFrom))}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          {words.offWeeks}
          <select value={offWeeks} onChange={(event) => setOffWeeks(Number(event.target.value))}>
            {[1, 2, 3, 4, 6, 8].map((weeks) => (
              <option key={weeks}>{weeks}</option>
            ))}
          </select>
        </label>
        <TimesField label={words.times} value={times} onChange={setTimes} />
        <label className="field">
          {words.ofClass}
          <select value={partClass} onChange={(event) => setPartClass(event.target.value)}>
            <option value="">{words.everyClass}</option>
            {plan.renewals.map((one) => (
              <option key={one.partClass}>{one.partClass}</option>
            ))}
          </select>
        </label>
        <TimesField label={words.use} value={use} onChange={setUse} />
        <PickBox
          label={words.ofMachine}
          options={(machines.value?.machines ?? []).map((one) => ({
            ...{ id: String(one.machineId), text: one.name, second: one.customer },
          }))}
          value={machineId}
          onChange={setMachineId}
          opens="input"
        />
      </div>
      <div className="keys">
        <Key
          first
          disabled={nothing || running || busy}
          onPress={() => void job.start({ kind: 'plan', ask: { by: '', whatIf: asked } })}
        >
          {planWords.keys.try}
        </Key>
        {running && <Key onPress={() => void job.breakOff()}>{planWords.breakOff}</Key>}
        <Key onPress={onClose}>{planWords.keys.close}</Key>
        {nothing && <span className="second">{words.nothing}</span>}
      </div>
      {running && <FillingRule words={planWords.planning(job.state?.step ?? '')} share={job.state?.share ?? 0} />}
      {account?.before && <Beside account={account} before={account.before} />}
    </section>
  );
}

/** A factor: twice, half. */
function TimesField({
  label,
  value,
  onChange,
}: {
  label: string;
  value: number | null;
  onChange: (to: number | null) => void;
}) {
  return (
    <label className="field">
      {label}
      <select
        value={value ?? ''}
        onChange={(event) => onChange(event.target.value === '' ? null : Number(event.target.value))}
      >
        <option value="">{words.as}</option>
        {[0.5, 0.75, 1.25, 1.5, 2, 3].map((times) => (
          <option key={times} value={times}>
            {times} ×
          </option>
        ))}
      </select>
    </label>
  );
}

function Beside({ account, before }: { account: PlanAccount; before: PlanSum }) {
  const writing = useWriting();
  return (
    <div className="beside">
      <table className="table">
        <thead>
          <tr>
            <th scope="col">
              <span className="said">{words.head}</span>
            </th>
            <th scope="col" className="figures">
              {words.as}
            </th>
            <th scope="col" className="figures">
              {words.tried}
            </th>
            <th scope="col" className="figures">
              {words.difference}
            </th>
          </tr>
        </thead>
        <tbody>
          {(Object.keys(words.rows) as (keyof typeof words.rows)[]).map((row) => {
            const whole = row === 'visits' || row === 'unplaced' || row === 'weeksLate';
            const figure = (value: number) => decimalFigure(value, whole ? 0 : 1, writing);
            const by = account.now[row] - before[row];
            return (
              <tr key={row}>
                <th scope="row">{words.rows[row]}</th>
                <td className="figures">{figure(before[row])}</td>
                <td className="figures">{figure(account.now[row])}</td>
                <td className="figures">
                  {Math.abs(by) < 0.05 ? '' : differenceText(by, writing).replace(/\s*h$/, '')}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <ul>
        {account.changed.length === 0 && <li>{words.same}</li>}
        {account.changed.map((one) => (
          <li key={one.machineId}>{changedText(one)}</li>
        ))}
      </ul>
    </div>
  );
}
