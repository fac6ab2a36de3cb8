import { useId, useState } from 'react';
import { fitStraighten, PART_KIND_NAMES } from '#core/contract/fits.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { fitsWords as words } from '#renderer/words/fitsWords.ts';
import { FigureFields, type FigureRow } from '../take-in/FigureFields.tsx';
import { StraightAnswer } from './StraightAnswer.tsx';
import { emptyStraightForm, SHAPES, SIZES_OF, type StraightForm, straightRequest } from './straightForm.ts';
import { useKept } from './useKept.ts';

const SHAPE_OPTIONS = SHAPES.map((value) => ({ value, text: words.shapes[value] }));
const KINDS = PART_KIND_NAMES.map((id) => ({ id, text: words.kinds[id] }));
const STEELS = (['no', 'yes', 'unknown'] as const).map((value) => ({ value, text: words.steels[value] }));

/** A bent bar under the press: may it be straightened, with what force, and how far it springs back. */
export function StraightPart() {
  const [form, setForm] = useState(emptyStraightForm);
  const onChange = (next: Partial<StraightForm>) => setForm({ ...form, ...next });
  const asked = useAsk(fitStraighten, straightRequest(form));
  const kept = useKept(asked.value, asked.fault !== null);
  return (
    <section className="form-part" id="fits-straight">
      <h2>{words.straightHead}</h2>
      <div className="fits-part">
        <div className="fits-form">
          <BarFields form={form} onChange={onChange} />
          <BentPartFields form={form} onChange={onChange} procedure={(kept?.closedBecause.length ?? 0) > 0} />
        </div>
        <div className="fits-answer wide" aria-live="polite">
          {kept && kept.closedBecause.length === 0 && !kept.press && <Empty head={words.straightNeeds} />}
          {asked.fault && <FaultBox fault={asked.fault} />}
          {kept && (kept.press || kept.closedBecause.length > 0) && <StraightAnswer of={kept} />}
        </div>
      </div>
    </section>
  );
}

type FieldsProps = { form: StraightForm; onChange: (next: Partial<StraightForm>) => void };

/** Section, sizes, span, bow and yield of the bar. */
export function BarFields({ form, onChange }: FieldsProps) {
  return (
    <>
      <Choice
        label={words.shape}
        options={SHAPE_OPTIONS}
        value={form.shape}
        onChange={(shape) => onChange({ shape })}
      />
      <Sizes form={form} onChange={onChange} />
    </>
  );
}

const BAR_TEXTS: readonly FigureRow<'spanText' | 'bowText' | 'yieldText'>[] = [
  { name: 'spanText', label: words.span, unit: 'mm' },
  { name: 'bowText', label: words.bow, unit: 'mm', hint: words.bowHint },
  { name: 'yieldText', label: words.yieldStress, unit: 'MPa', hint: words.yieldHint },
];

const Sizes = ({ form, onChange }: FieldsProps) => (
  <div className="pair">
    <FigureFields
      rows={SIZES_OF[form.shape].map((name) => ({ name, label: words.sizes[name] ?? name, unit: 'mm' }))}
      texts={form.sizeTexts}
      onText={(name, text) => onChange({ sizeTexts: { ...form.sizeTexts, [name]: text } })}
    />
    <FigureFields rows={BAR_TEXTS} texts={form} onText={(name, text) => onChange({ [name]: text })} />
  </div>
);

/** What the bent part is: what closes straightening, and the maker's procedure that opens it. */
export function BentPartFields({ form, onChange, procedure }: FieldsProps & { procedure: boolean }) {
  return (
    <>
      <PickBox
        label={words.part}
        options={KINDS}
        value={form.kind}
        onChange={(id) => onChange({ kind: PART_KIND_NAMES.find((kind) => kind === id) ?? 'other' })}
        opens="input"
      />
      <Choice label={words.steel} options={STEELS} value={form.steel} onChange={(steel) => onChange({ steel })} />
      {form.kind === 'other' && <Tick text={words.tows} checked={form.tows} onChange={(tows) => onChange({ tows })} />}
      <Tick text={words.crack} checked={form.crack} onChange={(crack) => onChange({ crack })} />
      <Tick
        text={words.straightened}
        checked={form.straightened}
        onChange={(straightened) => onChange({ straightened })}
      />
      {(procedure || form.procedureBy !== '' || form.procedureReference !== '') && (
        <div className="procedure">
          <p className="label">{words.procedureHead}</p>
          <div className="pair">
            <TextField
              label={words.procedureBy}
              value={form.procedureBy}
              onChange={(procedureBy) => onChange({ procedureBy })}
              maxLength={120}
            />
            <TextField
              label={words.procedureReference}
              value={form.procedureReference}
              onChange={(procedureReference) => onChange({ procedureReference })}
              maxLength={120}
            />
          </div>
        </div>
      )}
    </>
  );
}

function Tick({ text, checked, onChange }: { text: string; checked: boolean; onChange: (checked: boolean) => void }) {
  const id = useId();
  return (
    <label className="tick" htmlFor={id}>
      <input id={id} type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      {text}
    </label>
  );
}
