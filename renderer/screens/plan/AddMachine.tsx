import { useState } from 'react';
import { machineRead } from '#core/contract/machine.ts';
import { type Plan, type PlanChange, planAdd } from '#core/contract/plan.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { useMachineNames } from '#renderer/useMachines.ts';
import { planWords as words } from '#renderer/words/planWords.ts';

type Props = { plan: Plan; onDone: (change: PlanChange) => void; onClose: () => void };

/** A machine the plan does not call in, put on it by hand with what is to be renewed. */
export function AddMachine({ plan, onDone, onClose }: Props) {
  const machines = useMachineNames();
  const add = useDo(planAdd);
  const [by] = useBy();
  const [machineId, setMachineId] = useState<number | null>(null);
  const [chosen, setChosen] = useState<ReadonlySet<number>>(new Set());
  const sheet = useAsk(machineRead, machineId === null ? null : { machineId });
  const on = new Set(
    plan.visits
      .filter(({ winterYear, stands }) => winterYear === plan.winter.winterYear && stands !== 'postponed')
      .map((visit) => visit.machineId),
  );
  const options = (machines.value?.machines ?? [])
    .filter((machine) => !on.has(machine.machineId))
    .map(({ machineId: id, name, customer }) => ({ id: String(id), text: name, second: customer }));
  const toggle = (positionId: number) =>
    setChosen((before) => {
      const after = new Set(before);
      if (!after.delete(positionId)) after.add(positionId);
      return after;
    });
  const run = async () => {
    if (machineId === null) return;
    const came = await add.run({ machineId, positionIds: [...chosen], weekFrom: null, by });
    if (came) onDone(came);
  };
  return (
    <section className="plan-panel" aria-label={words.keys.add}>
      <h2>{words.addHead}</h2>
      <PickBox
        label={words.addMachine}
        options={options}
        value={machineId === null ? null : String(machineId)}
        onChange={(id) => {
          setMachineId(id === null ? null : Number(id));
          setChosen(new Set());
        }}
        autoFocus
      />
      <div className="ticks">
        {sheet.value?.assemblies.flatMap(({ name, positions }) =>
          positions.map(({ positionId, item, name: position }) => (
            <label key={positionId} className="part-tick">
              <input type="checkbox" checked={chosen.has(positionId)} onChange={() => toggle(positionId)} />
              {item} {position} <span className="second">{name}</span>
            </label>
          )),
        )}
      </div>
      {add.fault && <FaultBox fault={add.fault} />}
      <div className="keys">
        <Key first disabled={add.busy || machineId === null} onPress={() => void run()}>
          {words.keys.add}
        </Key>
        <Key onPress={onClose}>{words.keys.close}</Key>
      </div>
    </section>
  );
}
