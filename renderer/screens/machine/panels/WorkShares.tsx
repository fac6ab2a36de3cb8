import { useState } from 'react';
import { forecastSettingsRead } from '#core/contract/forecastSettings.ts';
import { hoursShare } from '#core/contract/hours.ts';
import type { MachineSheet, WorkShareRow } from '#core/contract/machine.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { shareText, hoursFactsWords as words } from '#renderer/words/hoursFactsWords.ts';
import { FigureField } from '../../take-in/FigureField.tsx';
import { ByField, useBy } from './ByField.tsx';
import { shareForm, shareOf } from './hoursFactsForms.ts';
import { SaidForm, SaidRows } from './SaidRows.tsx';

/** From this day on, this work and this share of its hours. */
export function WorkShares({ sheet }: { sheet: MachineSheet }) {
  const writing = useWriting();
  const rowOf = (id: number | null) => sheet.workShares.find(({ workShareId }) => workShareId === id) ?? null;
  return (
    <SaidRows
      head={words.shares}
      none={words.noShares}
      note={words.sharesNote}
      rows={sheet.workShares.map((row) => ({ ...row, id: row.workShareId, text: shareText(row, writing) }))}
      addKey={words.addShare}
      form={(id, onClose) => <ShareForm machineId={sheet.machineId} row={rowOf(id)} onClose={onClose} />}
    />
  );
}

const HOLDS = (['day', 'beginning'] as const).map((value) => ({ value, text: words.holdsFrom[value] }));

function ShareForm({ machineId, row, onClose }: { machineId: number; row: WorkShareRow | null; onClose: () => void }) {
  const writing = useWriting();
  const today = useToday();
  const save = useDo(hoursShare);
  const settings = useAsk(forecastSettingsRead, {});
  const [form, setForm] = useState(() => shareForm(row, today, writing));
  const [tried, setTried] = useState(false);
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const { is, faults } = shareOf(form);
  const shown = tried ? faults : null;
  const ask = { machineId, workShareId: row?.workShareId ?? null, reason, by };
  const send = async () => {
    setTried(true);
    if (is && (await save.run({ ...ask, is }))) onClose();
  };
  const strike = async () => {
    if (await save.run({ ...ask, is: null })) onClose();
  };
  return (
    <SaidForm
      isNew={row === null}
      doing={save}
      onSend={() => void send()}
      onStrike={row ? () => void strike() : undefined}
      onClose={onClose}
      above={
        <Choice
          label={words.holds}
          options={HOLDS}
          value={form.fromBeginning ? 'beginning' : 'day'}
          onChange={(holds) => setForm({ ...form, fromBeginning: holds === 'beginning' })}
        />
      }
    >
      {!form.fromBeginning && (
        <DayField
          label={words.from}
          value={form.from}
          onChange={(from) => setForm({ ...form, from })}
          today={today}
          fault={shown?.from ?? null}
        />
      )}
      <TextField
        label={words.workType}
        value={form.workType}
        onChange={(workType) => setForm({ ...form, workType })}
        offered={settings.value?.workTypes.map(({ name }) => name) ?? []}
        hint={words.workTypeHint}
        maxLength={120}
      />
      <FigureField
        label={words.share}
        unit={words.percent}
        hint={words.shareHint}
        text={form.shareText}
        onText={(typed) => setForm({ ...form, shareText: typed })}
        fault={shown?.share ?? null}
      />
      <TextField label={words.why} hint={words.whyHint} value={reason} onChange={setReason} maxLength={2000} />
      <ByField value={by} onChange={setBy} />
    </SaidForm>
  );
}
