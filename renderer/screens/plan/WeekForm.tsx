import { useState } from 'react';
import { type Plan, planWeekSave } from '#core/contract/plan.ts';
import type { Day } from '#core/units/day.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { planWords as words } from '#renderer/words/planWords.ts';

/** A week with other hours than usual: a holiday, a fitter away. */
export function WeekForm({ plan, weekFrom, onClose }: { plan: Plan; weekFrom: Day; onClose: () => void }) {
  const writing = useWriting();
  const save = useDo(planWeekSave);
  const [by] = useBy();
  const week = plan.weeks.find((one) => one.weekFrom === weekFrom);
  const [hours, setHours] = useState<number | null>(week?.benchHours ?? null);
  const [note, setNote] = useState(week?.note ?? '');
  const write = async (benchHours: number | null) => {
    if (await save.run({ weekFrom, benchHours, note, by })) onClose();
  };
  return (
    <RowForm
      className="week-form"
      fact={<b>{words.weekForm.head(weekFrom)}</b>}
      complete={hours !== null}
      doing={save}
      send={words.keys.save}
      onSend={() => write(hours)}
      keys={week?.note !== null && <Key onPress={() => void write(null)}>{words.weekForm.usual}</Key>}
      onLeave={onClose}
      leave={words.keys.leave}
    >
      <NumberField
        label={words.weekForm.hours}
        unit="h"
        value={hours}
        onChange={setHours}
        writing={writing}
        autoFocus
      />
      <TextField label={words.weekForm.note} value={note} onChange={setNote} maxLength={200} />
    </RowForm>
  );
}
