import { useState } from 'react';
import { contactTermsSave, type DueFarm, quietAdd, quietStrike } from '#core/contract/recall.ts';
import { type Day, day } from '#core/units/day.ts';
import { dayOfYearText, dayText } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { FigureField } from '#renderer/screens/take-in/FigureField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { recallWords as words } from '#renderer/words/recallWords.ts';
import { type ReachForm, reachFormOf, readReach } from './reachForm.ts';

type Farm = DueFarm['farm'];

/** What is to be kept to in reaching a customer: at all, how far, until when their season runs, in which days not. */
export function Reach({ farm, onDone }: { farm: Farm; onDone: () => void }) {
  const save = useDo(contactTermsSave);
  const [form, setForm] = useState<ReachForm>(() => reachFormOf(farm.terms));
  const [by, setBy] = useBy();
  const { terms, faults } = readReach(form);
  const change = (next: Partial<ReachForm>) => setForm({ ...form, ...next });
  const send = async () => {
    if (terms && (await save.run({ customerId: farm.customerId, ...terms, by }))) onDone();
  };
  return (
    <section className="recall-panel" aria-label={words.reach}>
      <h2>{words.reach}</h2>
      <RowForm
        complete={terms !== null}
        doing={save}
        send={words.save}
        onSend={send}
        onLeave={onDone}
        above={
          <Choice
            label={words.noContactLabel}
            options={[
              { value: 'may', text: words.may },
              { value: 'may-not', text: words.mayNot },
            ]}
            value={form.noContact ? 'may-not' : 'may'}
            onChange={(value) => change({ noContact: value === 'may-not' })}
          />
        }
        below={
          <TextField
            label={words.wish}
            value={form.words}
            onChange={(text) => change({ words: text })}
            maxLength={2000}
          />
        }
      >
        <FigureField
          label={words.km}
          unit="km"
          reads="mm"
          text={form.kmText}
          onText={(kmText) => change({ kmText })}
          fault={faults.km ? words.figureWrong : null}
        />
        <FigureField
          label={words.minutes}
          unit="min"
          text={form.minutesText}
          onText={(minutesText) => change({ minutesText })}
          fault={faults.minutes ? words.figureWrong : null}
        />
        <TextField
          label={words.seasonTo}
          value={form.seasonText}
          onChange={(seasonText) => change({ seasonText })}
          hint={terms?.seasonTo ? dayOfYearText(`2028-${terms.seasonTo}` as Day) : words.seasonHint}
          fault={faults.season ? words.seasonWrong : null}
        />
        <ByField value={by} onChange={setBy} />
      </RowForm>
      <Quiet farm={farm} by={by} />
    </section>
  );
}

function Quiet({ farm, by }: { farm: Farm; by: string }) {
  const today = useToday();
  const add = useDo(quietAdd);
  const strike = useDo(quietStrike);
  const [fromOn, setFrom] = useState<Day | null>(null);
  const [toOn, setTo] = useState<Day | null>(null);
  const [why, setWhy] = useState('');
  const whole = fromOn !== null && toOn !== null && fromOn <= toOn;
  const send = async () => {
    if (!whole || !(await add.run({ customerId: farm.customerId, fromOn, toOn, why, by }))) return;
    setFrom(null);
    setTo(null);
    setWhy('');
  };
  return (
    <RowForm
      complete={whole}
      doing={{ fault: add.fault ?? strike.fault, busy: add.busy }}
      send={words.quietAdd}
      meant="neither"
      onSend={send}
      above={
        <>
          <h2>{words.quiet}</h2>
          <p className="second">{words.quietRule}</p>
          {farm.quiet.length === 0 && <p>{words.quietNone}</p>}
          <ul>
            {farm.quiet.map((period) => {
              const text = `${dayText(day(period.fromOn))} to ${dayText(day(period.toOn))}${period.why && `: ${period.why}`}`;
              return (
                <li key={period.quietId}>
                  {text}{' '}
                  <button
                    type="button"
                    className="text-key"
                    aria-label={words.strikeLabel(text)}
                    onClick={() => void strike.run({ quietId: period.quietId, reason: '', by })}
                  >
                    {words.strike}
                  </button>
                </li>
              );
            })}
          </ul>
        </>
      }
    >
      <DayField label={words.quietFrom} value={fromOn} onChange={setFrom} today={today} future />
      <DayField label={words.quietTo} value={toOn} onChange={setTo} today={today} future />
      <TextField label={words.quietWhy} value={why} onChange={setWhy} maxLength={500} />
    </RowForm>
  );
}
