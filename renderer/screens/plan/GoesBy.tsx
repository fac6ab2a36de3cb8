import { useState } from 'react';

import { customersList } from '#core/contract/machine.ts';
import { type Plan, planAwaySave, planAwayStrike, planSettingsSave } from '#core/contract/plan.ts';
import { type Day, day } from '#core/units/day.ts';
import { dayText, decimalFigure } from '#core/words/quantityText.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { SettingRows } from '#renderer/screens/forecast-settings/SettingRows.tsx';
import { readSetting } from '#renderer/screens/forecast-settings/settingsForm.ts';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { valueText } from '#renderer/words/forecastSettingsWords.ts';
import { planSettingName, planWords } from '#renderer/words/planWords.ts';
import { readNumber } from '#renderer/words/readNumber.ts';
import '../forecast-settings/forecast-settings.css';

const words = planWords.goesBy;

/** Everything the plan goes by: costs and times with their sources, work and parts by class, customers away. */
export function GoesBy({ plan, onClose }: { plan: Plan; onClose: () => void }) {
  const writing = useWriting();
  const [by] = useBy();
  const save = useDo(planSettingsSave);
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(plan.settings.map(({ name, value }) => [name, valueText(value, writing)])),
  );
  const [parts, setParts] = useState(() =>
    plan.renewals.map((one) => ({
      ...one,
      own: valueText(one.ownHours, writing),
      price: valueText(one.partsHours, writing),
    })),
  );
  const hours = (text: string) => {
    const read = readNumber(text, 'h');
    return read.ok && read.value >= 0 && read.value <= 10_000 ? read.value : null;
  };
  const values = plan.settings.map((setting) => ({ setting, value: readSetting(setting, texts[setting.name] ?? '') }));
  const typed = parts.map((one) => ({ ...one, ownHours: hours(one.own), partsHours: hours(one.price) }));
  const sound =
    values.every(({ value }) => value !== null) &&
    typed.every(({ ownHours, partsHours }) => ownHours !== null && partsHours !== null);
  const write = () => {
    const changed = Object.fromEntries(
      values.flatMap(({ setting, value }) =>
        value !== null && value !== setting.usual ? [[setting.name, value]] : [],
      ),
    );
    const renewals = typed.flatMap(({ partClass, ownHours, partsHours, usualOwnHours, usualPartsHours }) =>
      ownHours === null || partsHours === null || (ownHours === usualOwnHours && partsHours === usualPartsHours)
        ? []
        : [{ partClass, ownHours, partsHours }],
    );
    void save.run({ changed, renewals, reason: '', by });
  };
  const set = (place: number, next: { own?: string; price?: string }) =>
    setParts(parts.map((one, at) => (at === place ? { ...one, ...next } : one)));
  return (
    <section className="plan-panel" aria-label={words.head}>
      <h2>{words.head}</h2>
      <p className="second">{words.hoursElsewhere}</p>
      <SettingRows
        head={words.settings}
        settings={plan.settings}
        texts={texts}
        onChange={(name, text) => setTexts({ ...texts, [name]: text })}
        nameOf={planSettingName}
      />
      {plan.renewals.length > 0 && (
        <section className="form-part" aria-label={words.parts}>
          <h2>{words.parts}</h2>
          <table className="table">
            <thead>
              <tr>
                <th scope="col">{words.partClass}</th>
                <th scope="col" className="figures">
                  {words.own}
                </th>
                <th scope="col" className="figures">
                  {words.partsHours}
                </th>
                {plan.rates && (
                  <th scope="col" className="figures">
                    {words.money(plan.rates.currency)}
                  </th>
                )}
                <th scope="col">{words.source}</th>
              </tr>
            </thead>
            <tbody>
              {typed.map((one, place) => (
                <tr key={one.partClass}>
                  <th scope="row">{one.partClass}</th>
                  <td className="figures">
                    <input
                      className="cell"
                      inputMode="decimal"
                      value={one.own}
                      aria-label={`${words.own}: ${one.partClass}`}
                      aria-invalid={one.ownHours === null || undefined}
                      onChange={(event) => set(place, { own: event.target.value })}
                    />
                  </td>
                  <td className="figures">
                    <input
                      className="cell"
                      inputMode="decimal"
                      value={one.price}
                      aria-label={`${words.partsHours}: ${one.partClass}`}
                      aria-invalid={one.partsHours === null || undefined}
                      onChange={(event) => set(place, { price: event.target.value })}
                    />
                  </td>
                  {plan.rates && (
                    <td className="figures">
                      {decimalFigure((one.partsHours ?? 0) * plan.rates.hourPrice, 2, writing)}
                    </td>
                  )}
                  <td className="second">{one.usual ? one.source : words.ofShop}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {!plan.rates && <p className="second">{words.noRate}</p>}
        </section>
      )}
      {save.fault && <FaultBox fault={save.fault} />}
      <div className="keys">
        <Key first disabled={!sound || save.busy} onPress={write}>
          {planWords.keys.save}
        </Key>
        <Key onPress={onClose}>{planWords.keys.close}</Key>
      </div>
      <Away plan={plan} />
    </section>
  );
}

function Away({ plan }: { plan: Plan }) {
  const today = useToday();
  const [by] = useBy();
  const customers = useAsk(customersList, {});
  const save = useDo(planAwaySave);
  const strike = useDo(planAwayStrike);
  const [customerId, setCustomerId] = useState<string | null>(null);
  const [fromOn, setFromOn] = useState<Day | null>(null);
  const [toOn, setToOn] = useState<Day | null>(null);
  const [note, setNote] = useState('');
  const write = async () => {
    if (customerId === null || fromOn === null || toOn === null) return;
    if (await save.run({ customerId: Number(customerId), fromOn, toOn, note, by })) {
      setCustomerId(null);
      setNote('');
    }
  };
  return (
    <section className="form-part" aria-label={words.away}>
      <h2>{words.away}</h2>
      {plan.away.length === 0 && <p className="second">{words.noneAway}</p>}
      <ul className="away-list">
        {plan.away.map((one) => (
          <li key={one.awayId}>
            <span>
              <b>{one.customer}</b>, {dayText(day(one.fromOn))} to {dayText(day(one.toOn))}
              {one.note && `: ${one.note}`}
            </span>
            <Key onPress={() => void strike.run({ awayId: one.awayId, reason: '', by })}>{words.strike}</Key>
          </li>
        ))}
      </ul>
      <div className="fields">
        <PickBox
          label={words.customer}
          options={(customers.value?.customers ?? []).map((one) => ({
            ...{ id: String(one.customerId), text: one.name, second: one.place },
          }))}
          value={customerId}
          onChange={setCustomerId}
          opens="input"
        />
        <DayField label={words.from} value={fromOn} onChange={setFromOn} today={today} future />
        <DayField label={words.to} value={toOn} onChange={setToOn} today={today} future />
        <TextField label={words.why} value={note} onChange={setNote} maxLength={200} />
      </div>
      {(save.fault ?? strike.fault) && <FaultBox fault={(save.fault ?? strike.fault)!} />}
      <div className="keys">
        <Key
          disabled={customerId === null || fromOn === null || toOn === null || save.busy}
          onPress={() => void write()}
        >
          {words.addAway}
        </Key>
      </div>
    </section>
  );
}
