import { useState } from 'react';
import { fitPress, LUBRICATIONS, MATERIAL_NAMES } from '#core/contract/fits.ts';
import { pointOf } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { fitsWords as words } from '#renderer/words/fitsWords.ts';
import { FigureFields, type FigureRow } from '../take-in/FigureFields.tsx';
import type { FitShown } from './FitPart.tsx';
import { PressAnswer } from './PressAnswer.tsx';
import { type PressForm, type PressText, pressRequest } from './pressForm.ts';
import { useKept } from './useKept.ts';

const MATERIALS = MATERIAL_NAMES.map((id) => ({ id, text: words.materials[id] }));
const WAYS = LUBRICATIONS.map((value) => ({ value, text: words.lubrications[value] }));

/** A bush pressed, shrunk or glued into a boss, with the fit above. */
export function PressPart({
  fit,
  of,
  onFit,
  start,
}: {
  fit: string;
  of: FitShown | null;
  onFit: (fit: string) => void;
  start: PressForm;
}) {
  const [form, setForm] = useState(start);
  const presses = of !== null && of.kind !== 'clearance';
  const request = presses ? pressRequest(fit, form) : null;
  const asked = useAsk(fitPress, request);
  const kept = useKept(asked.value, request === null || asked.fault !== null);
  return (
    <section className="form-part" id="fits-press">
      <h2>
        {words.pressHead} {of && <span className="second">{words.pressOf(fit.trim())}</span>}
      </h2>
      <div className="fits-part">
        <PressFields form={form} onChange={(next) => setForm({ ...form, ...next })} />
        <div className="fits-answer wide" aria-live="polite">
          {of && !presses && <NothingPresses of={of} onFit={onFit} />}
          {presses && request === null && <Empty head={words.pressNeeds} />}
          {asked.fault && <FaultBox fault={asked.fault} />}
          {kept && <PressAnswer of={kept} />}
        </div>
      </div>
    </section>
  );
}

const SIZES: readonly FigureRow<PressText>[] = [
  { name: 'bossOutsideText', label: words.bossOutside, unit: 'mm', hint: words.bossOutsideHint },
  { name: 'bushBoreText', label: words.bushBore, unit: 'mm', hint: words.bushBoreHint },
  { name: 'lengthText', label: words.length, unit: 'mm' },
  { name: 'roomText', label: words.room, unit: '°C' },
  { name: 'bossRzText', label: words.bossRz, unit: 'µm', hint: words.rzHint },
  { name: 'bushRzText', label: words.bushRz, unit: 'µm' },
];
const YIELDS: readonly FigureRow<PressText>[] = (['boss', 'bush'] as const).map((part) => ({
  ...{ name: `${part}YieldText`, label: words.ownYield[part], unit: 'MPa', hint: words.ownYieldHint },
}));

function PressFields({ form, onChange }: { form: PressForm; onChange: (next: Partial<PressForm>) => void }) {
  const figures = (rows: readonly FigureRow<PressText>[]) => (
    <FigureFields rows={rows} texts={form} onText={(name, text) => onChange({ [name]: text })} />
  );
  const classBox = (name: 'bushBoreClass' | 'wantedBoreClass', label: string, hint: string) => (
    <TextField
      label={label}
      value={form[name]}
      onChange={(text) => onChange({ [name]: text })}
      hint={hint}
      maxLength={8}
    />
  );
  const materialBox = (name: 'bossMaterial' | 'bushMaterial') => (
    <PickBox
      label={words[name]}
      options={MATERIALS}
      value={form[name]}
      onChange={(id) => onChange({ [name]: materialOf(id) })}
      opens="input"
    />
  );
  return (
    <div className="fits-form">
      <div className="pair">
        {figures(SIZES)}
        {classBox('bushBoreClass', words.boreBefore, words.boreBeforeHint)}
        {classBox('wantedBoreClass', words.boreWanted, words.boreWantedHint)}
        {materialBox('bossMaterial')}
        {materialBox('bushMaterial')}
        {figures(YIELDS)}
      </div>
      <Choice
        label={words.lubrication}
        options={WAYS}
        value={form.lubrication}
        onChange={(lubrication) => onChange({ lubrication })}
      />
    </div>
  );
}

const materialOf = (id: string | null) => MATERIAL_NAMES.find((name) => name === id) ?? 'structural-steel';

function NothingPresses({ of, onFit }: { of: FitShown; onFit: (fit: string) => void }) {
  const writing = useWriting();
  const bush = of.forRepair.find(({ use }) => use === 'bush-in-boss');
  const size = String(of.nominalMm).replace('.', pointOf(writing));
  return (
    <Empty
      head={words.nothingPresses}
      keys={bush && <Key onPress={() => onFit(`${size} ${bush.pair}`)}>{words.takeBushFit(bush.pair)}</Key>}
    >
      {words.nothingPressesNext}
    </Empty>
  );
}
