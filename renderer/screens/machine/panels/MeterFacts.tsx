import { useState } from 'react';
import { hoursMeter } from '#core/contract/hours.ts';
import type { MachineSheet } from '#core/contract/machine.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { meterFacts, hoursFactsWords as words } from '#renderer/words/hoursFactsWords.ts';
import { FigureField } from '../../take-in/FigureField.tsx';
import { ByField, useBy } from './ByField.tsx';
import { meterForm, meterOf } from './hoursFactsForms.ts';
import { SaidForm } from './SaidRows.tsx';

/** What is known of the meter besides what it shows: digits, hours before it, the pace of its clock. */
export function MeterFacts({ sheet }: { sheet: MachineSheet }) {
  const writing = useWriting();
  const [changing, setChanging] = useState(false);
  return (
    <section className="said-rows" aria-label={words.meter}>
      <h2 className="panel-head">{words.meter}</h2>
      <dl className="facts">
        {meterFacts(sheet, writing).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <Figures>{value}</Figures>
            </dd>
          </div>
        ))}
      </dl>
      {changing ? (
        <MeterForm sheet={sheet} onClose={() => setChanging(false)} />
      ) : (
        <Keys>
          <Key onPress={() => setChanging(true)}>{words.changeMeter}</Key>
        </Keys>
      )}
    </section>
  );
}

function MeterForm({ sheet, onClose }: { sheet: MachineSheet; onClose: () => void }) {
  const writing = useWriting();
  const save = useDo(hoursMeter);
  const [form, setForm] = useState(() => meterForm(sheet, writing));
  const [tried, setTried] = useState(false);
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const { is, faults } = meterOf(form, reason);
  const shown = tried ? faults : null;
  const send = async () => {
    setTried(true);
    if (is && (await save.run({ machineId: sheet.machineId, ...is, reason, by }))) onClose();
  };
  return (
    <SaidForm
      isNew
      doing={save}
      onSend={() => void send()}
      onClose={onClose}
      below={<p className="second">{words.meterNote}</p>}
    >
      <FigureField
        label={words.digits}
        text={form.digitsText}
        onText={(digitsText) => setForm({ ...form, digitsText })}
        hint={words.digitsHint}
        fault={shown?.digits ?? null}
      />
      <FigureField
        label={words.hoursBefore}
        unit="h"
        text={form.hoursBeforeText}
        onText={(hoursBeforeText) => setForm({ ...form, hoursBeforeText })}
        hint={words.hoursBeforeHint}
        fault={shown?.hours ?? null}
      />
      <FigureField
        label={words.clock}
        unit={words.clockUnit}
        text={form.clockText}
        onText={(clockText) => setForm({ ...form, clockText })}
        hint={words.clockHint}
        fault={shown?.clock ?? null}
      />
      <TextField
        label={words.clockWhy}
        hint={words.clockWhyHint}
        value={reason}
        onChange={setReason}
        fault={shown?.why ?? null}
        maxLength={2000}
      />
      <ByField value={by} onChange={setBy} />
    </SaidForm>
  );
}
