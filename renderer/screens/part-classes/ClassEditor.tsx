import { useState } from 'react';
import { classSave } from '#core/contract/partClass.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Letter } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useWriting } from '#renderer/record.tsx';
import { FigureField } from '#renderer/screens/take-in/FigureField.tsx';
import { useFormKeys } from '#renderer/screens/take-in/useFormKeys.ts';
import { useDo } from '#renderer/useAsk.ts';
import { numberFaultWords } from '#renderer/words/fieldWords.ts';
import { partClassWords as words } from '#renderer/words/partClassWords.ts';
import { type ClassForm, type ClassRemark, classRequest } from './classForm.ts';

/** What the trade says of a class, to change; under its row. */
export function ClassEditor({ initial, onLeave }: { initial: ClassForm; onLeave: () => void }) {
  const writing = useWriting();
  const save = useDo(classSave);
  const [form, setForm] = useState(initial);
  const [tried, setTried] = useState(false);
  const [saved, setSaved] = useState(false);
  const { request, remarks } = classRequest(form, writing);
  const set = (next: Partial<ClassForm>) => {
    setForm({ ...form, ...next });
    setSaved(false);
    save.clear();
  };
  const send = async () => {
    setTried(true);
    if (request && (await save.run(request))) setSaved(true);
  };
  useFormKeys(() => void send());
  const text = (field: keyof ClassForm) => (value: string) => set({ [field]: value });
  return (
    <div className="class-editor">
      <div className="class-fields">
        <TextField label={words.name} value={form.name} onChange={text('name')} maxLength={120} />
        <FigureField label={words.wearFrom} reads="length" text={form.wearFromText} onText={text('wearFromText')} />
        <FigureField label={words.wearTo} reads="length" text={form.wearToText} onText={text('wearToText')} />
        <FigureField label={words.hoursFrom} unit="h" text={form.hoursFromText} onText={text('hoursFromText')} />
        <FigureField label={words.hoursTo} unit="h" text={form.hoursToText} onText={text('hoursToText')} />
        <TextField
          label={words.source}
          value={form.source}
          onChange={text('source')}
          hint={words.tradeHint}
          maxLength={2000}
        />
        <FigureField
          label={words.tolerance}
          reads="length"
          text={form.toleranceText}
          onText={text('toleranceText')}
          hint={words.toleranceHint}
        />
      </div>
      {tried && remarks.length > 0 && (
        <p className="remark" role="alert">
          {remarks.map((remark) => remarkWords(remark, writing)).join(' ')}
        </p>
      )}
      {save.fault && <FaultBox fault={save.fault} />}
      <div className="keys">
        <Key first disabled={save.busy} onPress={() => void send()}>
          {words.save}
          <Letter>{words.saveKeys}</Letter>
        </Key>
        <Key letter="Escape" onPress={onLeave}>
          {words.leave}
        </Key>
        <span role="status">{saved && words.saved}</span>
      </div>
    </div>
  );
}

const remarkWords = (remark: ClassRemark, writing: Writing): string =>
  remark === 'not-a-number' ? `${numberFaultWords('not-a-number', 'mm', writing)}.` : words[remark];
