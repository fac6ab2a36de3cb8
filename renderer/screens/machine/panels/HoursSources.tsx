import { useState } from 'react';
import { hoursSource } from '#core/contract/hours.ts';
import type { HoursSourceRow, MachineSheet } from '#core/contract/machine.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { useMachineNames } from '#renderer/useMachines.ts';
import { sourceText, hoursFactsWords as words } from '#renderer/words/hoursFactsWords.ts';
import { FigureField } from '../../take-in/FigureField.tsx';
import { ByField, useBy } from './ByField.tsx';
import { sourceForm, sourceOf } from './hoursFactsForms.ts';
import { SaidForm, SaidRows } from './SaidRows.tsx';

/** From this day on, a share of the puller's hours, or so many a year. */
export function HoursSources({ sheet }: { sheet: MachineSheet }) {
  const writing = useWriting();
  const rowOf = (id: number | null) => sheet.hoursSources.find(({ hoursSourceId }) => hoursSourceId === id) ?? null;
  const pulls = sheet.pulls.map(({ name }) => name);
  return (
    <>
      <SaidRows
        head={words.sources}
        none={words.noSources}
        {...(sheet.hoursSources.some(({ kind }) => kind !== 'own') && { note: words.sourcesNote })}
        rows={sheet.hoursSources.map((row) => ({ ...row, id: row.hoursSourceId, text: sourceText(row, writing) }))}
        addKey={words.addSource}
        form={(id, onClose) => <SourceForm machineId={sheet.machineId} row={rowOf(id)} onClose={onClose} />}
      />
      {pulls.length > 0 && <p>{words.pulls(pulls)}</p>}
    </>
  );
}

const KINDS = (['pulled', 'yearly', 'own'] as const).map((value) => ({ value, text: words.sourceKinds[value] }));

type SourceFormProps = { machineId: number; row: HoursSourceRow | null; onClose: () => void };

function SourceForm({ machineId, row, onClose }: SourceFormProps) {
  const writing = useWriting();
  const today = useToday();
  const save = useDo(hoursSource);
  const [form, setForm] = useState(() => sourceForm(row, today, writing));
  const [tried, setTried] = useState(false);
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const { is, faults } = sourceOf(form);
  const shown = tried ? faults : null;
  const ask = { machineId, hoursSourceId: row?.hoursSourceId ?? null, reason, by };
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
          label={words.sourceKind}
          options={KINDS}
          value={form.kind}
          onChange={(kind) => setForm({ ...form, kind })}
        />
      }
    >
      <DayField
        label={words.from}
        value={form.from}
        onChange={(from) => setForm({ ...form, from })}
        today={today}
        fault={shown?.from ?? null}
      />
      <SourceFields
        form={form}
        machineId={machineId}
        faults={shown}
        onChange={(next) => setForm({ ...form, ...next })}
      />
      <TextField label={words.why} hint={words.whyHint} value={reason} onChange={setReason} maxLength={2000} />
      <ByField value={by} onChange={setBy} />
    </SaidForm>
  );
}

type SourceFormIs = ReturnType<typeof sourceForm>;

/** What the chosen kind of source needs: the machine that pulls it and a share, or hours a year. */
export function SourceFields({
  form,
  machineId,
  faults,
  onChange,
}: {
  form: SourceFormIs;
  /** not offered as its own puller; null: not on record yet */
  machineId: number | null;
  faults: ReturnType<typeof sourceOf>['faults'];
  onChange: (next: Partial<SourceFormIs>) => void;
}) {
  const machines = useMachineNames();
  const others = (machines.value?.machines ?? []).filter((machine) => machine.machineId !== machineId);
  if (form.kind === 'own') return null;
  return (
    <>
      {form.kind === 'pulled' ? (
        <>
          <PickBox
            label={words.puller}
            options={others.map(({ machineId: id, name, customer, place }) => ({
              id: String(id),
              text: name,
              second: [customer, place].filter(Boolean).join(', '),
            }))}
            value={form.pullerId === null ? null : String(form.pullerId)}
            onChange={(id) => onChange({ pullerId: id === null ? null : Number(id) })}
            hint={faults?.puller ?? words.pullerHint}
            opens="input"
          />
          <FigureField
            label={words.pulledShare}
            unit={words.percent}
            hint={words.pulledShareHint}
            text={form.shareText}
            onText={(shareText) => onChange({ shareText })}
            fault={faults?.share ?? null}
          />
        </>
      ) : (
        <FigureField
          label={words.hoursPerYear}
          unit={words.hoursPerYearUnit}
          text={form.hoursPerYearText}
          onText={(hoursPerYearText) => onChange({ hoursPerYearText })}
          fault={faults?.hoursPerYear ?? null}
        />
      )}
      <FigureField
        label={words.errorShare}
        unit={words.percent}
        text={form.errorText}
        onText={(errorText) => onChange({ errorText })}
        hint={words.errorHint}
        fault={faults?.errorShare ?? null}
      />
    </>
  );
}
