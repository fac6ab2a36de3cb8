import { useState } from 'react';
import { type Gauge, gaugeSave } from '#core/contract/shop.ts';
import { lengthUnit } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { shopWords as words } from '#renderer/words/shopWords.ts';
import { measuresWords } from '#renderer/words/stripDownWords.ts';
import { emptyGaugeForm, type GaugeForm, gaugeForm, gaugeRequest } from './gaugeForm.ts';

const MEASURES = Object.keys(measuresWords) as Gauge['measures'];

/** The shop's gauges, a row each: what it measures, and how far a reading of it may be off. */
export function Gauges({ gauges }: { gauges: readonly Gauge[] }) {
  const writing = useWriting();
  const [adding, setAdding] = useState(false);
  return (
    <>
      <p className="second">{`${words.gaugeUHint} ${words.gaugeNote}`}</p>
      <table className="table gauges">
        <caption className="said">{words.parts.gauges}</caption>
        <thead>
          <tr>
            <th scope="col">{words.gauge}</th>
            <th scope="col" className="figures">
              {words.gaugeU(lengthUnit(writing))}
            </th>
            <th scope="col" className="figures">
              {words.gaugeStep(lengthUnit(writing))}
            </th>
            <th scope="col">{words.gaugeMeasures}</th>
            <th scope="col">{words.gaugeUsed}</th>
            <th scope="col">
              <span className="said">{words.gaugeSave}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {gauges.map((gauge) => (
            <GaugeRow key={gauge.gaugeId} initial={gaugeForm(gauge, writing)} onSaved={() => undefined} />
          ))}
          {adding && <GaugeRow initial={emptyGaugeForm} onSaved={() => setAdding(false)} />}
        </tbody>
      </table>
      {!adding && (
        <div className="keys">
          <Key onPress={() => setAdding(true)}>{words.gaugeAdd}</Key>
        </div>
      )}
    </>
  );
}

function GaugeRow({ initial, onSaved }: { initial: GaugeForm; onSaved: () => void }) {
  const writing = useWriting();
  const save = useDo(gaugeSave);
  const [form, setForm] = useState(initial);
  const [tried, setTried] = useState(false);
  const set = (next: Partial<GaugeForm>) => setForm({ ...form, ...next });
  const request = gaugeRequest(form, writing);
  const changed = JSON.stringify(form) !== JSON.stringify(initial);
  const row = form.name || words.newGauge;
  const send = async () => {
    setTried(true);
    if (request && (await save.run(request))) onSaved();
  };
  const box = (what: string, field: 'name' | 'uText' | 'stepText') => (
    <input
      className="cell"
      value={form[field]}
      aria-label={words.rowOf(what, row)}
      aria-invalid={(tried && !request && field !== 'stepText') || undefined}
      autoComplete="off"
      onChange={(event) => set({ [field]: event.target.value })}
      onKeyDown={(event) => event.key === 'Enter' && changed && void send()}
    />
  );
  return (
    <>
      <tr>
        <td>{box(words.gauge, 'name')}</td>
        <td className="figures">{box(words.gaugeU(lengthUnit(writing)), 'uText')}</td>
        <td className="figures">{box(words.gaugeStep(lengthUnit(writing)), 'stepText')}</td>
        <td>
          <fieldset aria-label={words.rowOf(words.gaugeMeasures, row)}>
            {MEASURES.map((measures) => (
              <label key={measures}>
                <input
                  type="checkbox"
                  className="tick-box"
                  checked={form.measures.includes(measures)}
                  onChange={(event) =>
                    set({
                      measures: event.target.checked
                        ? [...form.measures, measures]
                        : form.measures.filter((one) => one !== measures),
                    })
                  }
                />
                {measuresWords[measures]}
              </label>
            ))}
          </fieldset>
        </td>
        <td>
          <input
            type="checkbox"
            className="tick-box"
            checked={form.active}
            aria-label={words.rowOf(words.gaugeUsed, row)}
            onChange={(event) => set({ active: event.target.checked })}
          />
        </td>
        <td className="row-save">
          {changed && (
            <Key disabled={save.busy} onPress={() => void send()}>
              {words.gaugeSave}
            </Key>
          )}
        </td>
      </tr>
      {((tried && !request) || save.fault) && (
        <tr>
          <td colSpan={6}>
            {save.fault ? <FaultBox fault={save.fault} /> : <p className="remark">{words.gaugeFault}</p>}
          </td>
        </tr>
      )}
    </>
  );
}
