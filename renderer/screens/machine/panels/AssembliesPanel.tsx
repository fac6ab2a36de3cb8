import { useState } from 'react';
import { assemblyHalves, type MachineSheet } from '#core/contract/machine.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { jointWords } from '#renderer/words/jointWords.ts';
import { moveWords as words } from '#renderer/words/moveWords.ts';
import { MoveForm } from '../moves/MoveForm.tsx';
import { JointsForm } from './JointsForm.tsx';

/** The assemblies of a machine, those taken off it to the shelf among them; each can be moved, whole or half. */
export function AssembliesPanel({ sheet }: { sheet: MachineSheet }) {
  const ids = [...new Set([...sheet.assemblies, ...sheet.points].map(({ assemblyId }) => assemblyId))];
  if (ids.length === 0) return <Empty head={words.none}>{words.noneNext}</Empty>;
  return (
    <div className="assemblies-panel">
      {ids.map((assemblyId) => (
        <OneAssembly key={assemblyId} assemblyId={assemblyId} sheet={sheet} />
      ))}
    </div>
  );
}

function OneAssembly({ assemblyId, sheet }: { assemblyId: number; sheet: MachineSheet }) {
  const asked = useAsk(assemblyHalves, { assemblyId });
  const [doing, setDoing] = useState<'move' | 'joints' | null>(null);
  const halves = asked.value;
  if (!halves) return asked.fault ? <FaultBox fault={asked.fault} /> : <FillingRule words={words.loading} />;
  const serial = sheet.assemblies.find((assembly) => assembly.assemblyId === assemblyId)?.serial ?? '';
  return (
    <section aria-label={halves.assembly}>
      <h2 className="panel-head">{halves.assembly}</h2>
      <dl className="facts">
        {[
          [words.kind, halves.kind ?? ''],
          [words.serial, serial],
          [words.sits, halves.machineId === sheet.machineId ? words.here : (halves.machine ?? words.onShelf)],
        ]
          .filter(([, value]) => value !== '')
          .map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
      </dl>
      {doing === 'move' && <MoveForm halves={halves} onClose={() => setDoing(null)} />}
      {doing === 'joints' && <JointsForm assemblyId={assemblyId} onClose={() => setDoing(null)} />}
      {doing === null && (
        <Keys>
          <Key onPress={() => setDoing('move')}>
            {words.move}
            <span className="said"> {halves.assembly}</span>
          </Key>
          <Key onPress={() => setDoing('joints')}>
            {jointWords.key}
            <span className="said"> {halves.assembly}</span>
          </Key>
        </Keys>
      )}
    </section>
  );
}
