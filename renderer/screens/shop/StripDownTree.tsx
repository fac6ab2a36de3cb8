import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { shopWords as words } from '#renderer/words/shopWords.ts';
import { FigureField } from '../take-in/FigureField.tsx';
import { EMPTY_STEP, type StepForm, type TreeForm } from './stripDownForm.ts';

/** What comes off to reach what, in assemblies of this kind: steps with their hours, and the steps that reach each position. */
export function StripDownTree({
  form,
  positions,
  odd,
  onChange,
}: {
  form: TreeForm;
  positions: readonly { item: number; name: string }[];
  /** number of the step or item that cannot be read; null: none */
  odd: string | null;
  onChange: (form: TreeForm) => void;
}) {
  const put = (place: number, changed: Partial<StepForm>) =>
    onChange({ ...form, steps: form.steps.with(place, { ...form.steps[place]!, ...changed }) });
  return (
    <section className="strip-down-tree">
      <h3>{words.tree}</h3>
      <p className="second">{words.treeNote}</p>
      {odd !== null && (
        <p className="below fault" role="alert">
          {words.treeOdd(odd)}
        </p>
      )}
      {form.steps.map((step, place) => (
        <fieldset key={place} className="fields tree-step">
          <legend>{place + 1}</legend>
          <TextField
            label={words.treeStep}
            value={step.name}
            onChange={(name) => put(place, { name })}
            maxLength={120}
          />
          <Choice
            label={words.treeWhen}
            value={step.when}
            onChange={(when) => put(place, { when })}
            options={[
              { value: 'off', text: words.treeOff },
              { value: 'back', text: words.treeBack },
            ]}
          />
          <FigureField label={words.treeLow} unit="h" text={step.low} onText={(low) => put(place, { low })} />
          <FigureField
            label={words.treeUsual}
            unit="h"
            text={step.typical}
            onText={(typical) => put(place, { typical })}
          />
          <FigureField label={words.treeHigh} unit="h" text={step.high} onText={(high) => put(place, { high })} />
          <TextField label={words.treeNeeds} value={step.needs} onChange={(needs) => put(place, { needs })} />
          <TextField label={words.treeBrings} value={step.brings} onChange={(brings) => put(place, { brings })} />
          <TextField label={words.treeSource} value={step.source} onChange={(source) => put(place, { source })} />
        </fieldset>
      ))}
      <Keys>
        <Key onPress={() => onChange({ ...form, steps: [...form.steps, EMPTY_STEP] })}>{words.treeAdd}</Key>
      </Keys>
      {form.steps.length > 0 && (
        <div className="fields">
          <TextField
            label={words.treeAlways}
            value={form.always}
            onChange={(always) => onChange({ ...form, always })}
          />
          {positions.map(({ item, name }) => (
            <TextField
              key={item}
              label={words.treeReach(item, name)}
              value={form.reach.get(item) ?? ''}
              onChange={(needs) => onChange({ ...form, reach: new Map([...form.reach, [item, needs]]) })}
            />
          ))}
        </div>
      )}
    </section>
  );
}
