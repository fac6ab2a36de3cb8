import { useState } from 'react';
import { type Day, day } from '#core/units/day.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { Question } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { controlsPageWords as words } from '#renderer/words/controlsPageWords.ts';

const TODAY = day('2026-10-19');

/** Every control, for the office and for the bench, on an invented form. */
export default function Controls() {
  const [bench, setBench] = useState(false);
  const [pressed, setPressed] = useState('');
  const [asked, setAsked] = useState(true);
  return (
    <div className="window" style={{ paddingTop: 8 }}>
      <Sheet
        title={words.title}
        sub={pressed === '' ? words.sub : words.pressed(pressed)}
        bench={bench}
        block={[planningAidCell]}
        actions={
          <>
            <Key onPress={() => setPressed(words.cannot)} disabled letter="C">
              {words.cannot}
            </Key>
            <Key onPress={() => setPressed(words.discard)} red letter="T">
              {words.discard}
            </Key>
            <Key onPress={() => setPressed(words.save)} first letter="S">
              {words.save}
            </Key>
          </>
        }
      >
        <Choice
          label={words.title}
          labelled={false}
          options={[
            { value: 'office', text: words.office, letter: 'O' },
            { value: 'bench', text: words.bench, letter: 'B' },
          ]}
          value={bench ? 'bench' : 'office'}
          onChange={(value) => setBench(value === 'bench')}
        />
        <Form />
        {asked && (
          <Question
            fact={words.question}
            then={words.kept}
            keys={
              <>
                <Key onPress={() => setPressed(words.again)} letter="M">
                  {words.again}
                </Key>
                <Key onPress={() => setAsked(false)} letter="K">
                  {words.right}
                </Key>
              </>
            }
          />
        )}
        <Keys>
          <FillingRule words={words.opening} share={0.4} />
        </Keys>
      </Sheet>
    </div>
  );
}

function Form() {
  const [size, setSize] = useState<number | null>(10.19);
  const [dial, setDial] = useState<number | null>(null);
  const [on, setOn] = useState<Day | null>(TODAY);
  const [name, setName] = useState('');
  const [note, setNote] = useState('');
  const [event, setEvent] = useState<'as-found' | 'as-left'>('as-found');
  const [machine, setMachine] = useState<string | null>(null);
  return (
    <div className="fields">
      <NumberField label={words.size} unit="mm" value={size} onChange={setSize} />
      <NumberField label={words.dial} unit="h" value={dial} onChange={setDial} needed />
      <DayField label={words.day} value={on} onChange={setOn} today={TODAY} />
      <TextField label={words.name} value={name} onChange={setName} hint={words.nameHint} />
      <Choice
        label={words.event}
        options={[
          { value: 'as-found', text: words.asFound },
          { value: 'as-left', text: words.asLeft },
        ]}
        value={event}
        onChange={setEvent}
      />
      <PickBox
        label={words.machine}
        options={words.machines.map((text, i) => ({ id: String(i), text, second: words.farm }))}
        value={machine}
        onChange={setMachine}
      />
      <TextField label={words.note} value={note} onChange={setNote} lines={3} />
    </div>
  );
}
