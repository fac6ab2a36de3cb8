import { useState } from 'react';
import { fitPress, LUBRICATIONS, MATERIAL_NAMES } from '#core/contract/fits.ts';
import { pointOf } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { useDecimalMark } from '#renderer/record.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { fitsWords as words } from '#renderer/words/fitsWords.ts';
import { FigureField } from '../take-in/FigureField.tsx';
import type { FitShown } from './FitPart.tsx';
import { PressAnswer } from './PressAnswer.tsx';
import { type PressForm, pressRequest } from './pressForm.ts';
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

function PressFields({ form, onChange }: { form: PressForm; onChange: (next: Partial<PressForm>) => void }) {
  return (
    <div className="fits-form">
      <div className="pair">
        <FigureField
          label={words.bossOutside}
          unit="mm"
          reads="mm"
          text={form.bossOutsideText}
          onText={(bossOutsideText) => onChange({ bossOutsideText })}
          hint={words.bossOutsideHint}
        />
        <FigureField
          label={words.bushBore}
          unit="mm"
          reads="mm"
          text={form.bushBoreText}
          onText={(bushBoreText) => onChange({ bushBoreText })}
          hint={words.bushBoreHint}
        />
        <FigureField
          label={words.length}
          unit="mm"
          reads="mm"
          text={form.lengthText}
          onText={(lengthText) => onChange({ lengthText })}
        />
        <FigureField
          label={words.room}
          unit="°C"
          reads="mm"
          text={form.roomText}
          onText={(roomText) => onChange({ roomText })}
        />
        <FigureField
          label={words.bossRz}
          unit="µm"
          reads="mm"
          text={form.bossRzText}
          onText={(bossRzText) => onChange({ bossRzText })}
          hint={words.rzHint}
        />
        <FigureField
          label={words.bushRz}
          unit="µm"
          reads="mm"
          text={form.bushRzText}
          onText={(bushRzText) => onChange({ bushRzText })}
        />
        <TextField
          label={words.boreBefore}
          value={form.bushBoreClass}
          onChange={(bushBoreClass) => onChange({ bushBoreClass })}
          hint={words.boreBeforeHint}
          maxLength={8}
        />
        <TextField
          label={words.boreWanted}
          value={form.wantedBoreClass}
          onChange={(wantedBoreClass) => onChange({ wantedBoreClass })}
          hint={words.boreWantedHint}
          maxLength={8}
        />
        <PickBox
          label={words.bossMaterial}
          options={MATERIALS}
          value={form.bossMaterial}
          onChange={(id) => onChange({ bossMaterial: materialOf(id) })}
          opens="input"
        />
        <PickBox
          label={words.bushMaterial}
          options={MATERIALS}
          value={form.bushMaterial}
          onChange={(id) => onChange({ bushMaterial: materialOf(id) })}
          opens="input"
        />
        {(['boss', 'bush'] as const).map((part) => (
          <FigureField
            key={part}
            label={words.ownYield[part]}
            unit="MPa"
            reads="mm"
            text={form[`${part}YieldText`]}
            onText={(text) => onChange({ [`${part}YieldText`]: text })}
            hint={words.ownYieldHint}
          />
        ))}
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
  const mark = useDecimalMark();
  const bush = of.forRepair.find(({ use }) => use === 'bush-in-boss');
  const size = String(of.nominalMm).replace('.', pointOf(mark));
  return (
    <Empty
      head={words.nothingPresses}
      keys={bush && <Key onPress={() => onFit(`${size} ${bush.pair}`)}>{words.takeBushFit(bush.pair)}</Key>}
    >
      {words.nothingPressesNext}
    </Empty>
  );
}
