import { useState } from 'react';
import type { z } from 'zod';
import { fitterSave, type zFitter } from '#core/contract/shop.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { shopWords as words } from '#renderer/words/shopWords.ts';

/** Who measures. One who has left keeps the sizes taken, and is offered no more. */
export function Fitters({ fitters }: { fitters: readonly z.infer<typeof zFitter>[] }) {
  const save = useDo(fitterSave);
  const [name, setName] = useState('');
  const add = async () => {
    if (name.trim() === '') return;
    if (await save.run({ fitterId: null, name: name.trim(), active: true })) setName('');
  };
  return (
    <>
      {fitters.length === 0 && <p className="second">{words.nobody}</p>}
      <ul className="fitters">
        {fitters.map((fitter) => (
          <li key={fitter.fitterId}>
            <label>
              <input
                type="checkbox"
                className="tick-box"
                checked={fitter.active}
                disabled={save.busy}
                onChange={(event) =>
                  void save.run({ fitterId: fitter.fitterId, name: fitter.name, active: event.target.checked })
                }
              />
              <b>{fitter.name}</b>
              <span className="second">{fitter.active ? words.fitterActive : words.fitterGone}</span>
            </label>
          </li>
        ))}
      </ul>
      <form
        className="one-line"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <TextField label={words.fitter} value={name} onChange={setName} maxLength={120} />
        <Key disabled={save.busy || name.trim() === ''} onPress={() => void add()}>
          {words.fitterAdd}
        </Key>
      </form>
      {save.fault && <FaultBox fault={save.fault} />}
    </>
  );
}
