import { useState } from 'react';
import { jointCompare } from '#core/contract/pinJoint.ts';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { pinJointWords as words } from '#renderer/words/pinJointWords.ts';
import { FigureFields, type FigureRow } from '../take-in/FigureFields.tsx';
import { PinJointAnswer } from './PinJointAnswer.tsx';
import { JOINT_SIZES, type JointSize, jointRequest, type PinJointForm } from './pinJointForm.ts';
import { useKept } from './useKept.ts';

/** A pin joint as drawn and as repaired, held beside one another. */
export function PinJointPart({ start }: { start: PinJointForm }) {
  const [form, setForm] = useState(start);
  const onChange = (next: Partial<PinJointForm>) => setForm({ ...form, ...next });
  const request = jointRequest(form);
  const asked = useAsk(jointCompare, request);
  const kept = useKept(asked.value, request === null || asked.fault !== null);
  return (
    <section className="form-part" id="fits-joint">
      <h2>{words.head}</h2>
      <div className="fits-part">
        <div className="fits-form">
          <SizeTable form={form} onChange={onChange} />
          <div className="pair">
            <FigureFields rows={FIGURES} texts={form} onText={(name, text) => onChange({ [name]: text })} />
          </div>
        </div>
        <div className="fits-answer wide" aria-live="polite">
          {request === null && <Empty head={words.needs}>{words.repairedHint}</Empty>}
          {asked.fault && <FaultBox fault={asked.fault} />}
          {kept && <PinJointAnswer of={kept} />}
        </div>
      </div>
    </section>
  );
}

const FIGURES: readonly FigureRow<'forceText' | 'lugYieldText' | 'pinYieldText' | 'pinUltimateText'>[] = [
  { name: 'forceText', label: words.force, unit: 'kN', hint: words.forceHint },
  { name: 'lugYieldText', label: words.steel.lugYield, unit: 'MPa' },
  { name: 'pinYieldText', label: words.steel.pinYield, unit: 'MPa' },
  { name: 'pinUltimateText', label: words.steel.pinUltimate, unit: 'MPa' },
];

function SizeTable({ form, onChange }: { form: PinJointForm; onChange: (next: Partial<PinJointForm>) => void }) {
  const set = (state: 'asDrawn' | 'repaired', name: JointSize, text: string) =>
    onChange({ [state]: { ...form[state], [name]: text } });
  return (
    <table className="table joint-sizes">
      <caption>{words.sizesCaption}</caption>
      <thead>
        <tr>
          <td />
          <th className="figures">{words.heads.asDrawn}</th>
          <th className="figures">{words.heads.repaired}</th>
        </tr>
      </thead>
      <tbody>
        {JOINT_SIZES.map((name) => (
          <tr key={name}>
            <th scope="row">{words.sizes[name]}</th>
            {(['asDrawn', 'repaired'] as const).map((state) => (
              <td key={state} className="figures">
                <input
                  className="number"
                  inputMode="decimal"
                  autoComplete="off"
                  aria-label={words.sizeOf(words.sizes[name], words.heads[state])}
                  value={form[state][name] ?? ''}
                  placeholder={state === 'repaired' ? form.asDrawn[name] : undefined}
                  onChange={(event) => set(state, name, event.target.value)}
                />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
