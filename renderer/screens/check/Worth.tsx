import { useState } from 'react';
import { checkWorth } from '#core/contract/check.ts';
import { hoursFigure } from '#core/words/quantityText.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { PickBox } from '#renderer/controls/PickBox.tsx';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useMachineNames } from '#renderer/useMachines.ts';
import { checkWords as words } from '#renderer/words/checkWords.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { frameWords } from '#renderer/words/frameWords.ts';

/** Of a machine that comes in: which points tell most by being measured. */
export function Worth() {
  const machines = useMachineNames();
  const [machineId, setMachineId] = useState<number | null>(null);
  const asked = useAsk(checkWorth, machineId === null ? null : { machineId });
  const worth = asked.value?.machineId === machineId ? asked.value : undefined;
  const options = (machines.value?.machines ?? []).map((machine) => ({
    id: String(machine.machineId),
    text: machine.name,
    second: machine.customer,
  }));
  const best = worth?.best ?? null;
  const shown = worth?.points.filter(
    ({ pointId, narrowsHours }) => best?.pointIds.includes(pointId) || narrowsHours >= 1,
  );
  return (
    <section className="check-worth">
      <h2>{words.worthHead}</h2>
      <p className="second">{words.worthNote}</p>
      <PickBox
        label={words.worthPick}
        options={options}
        value={machineId === null ? null : String(machineId)}
        onChange={(id) => setMachineId(id === null ? null : Number(id))}
        opens="input"
      />
      {asked.fault && <FaultBox fault={asked.fault} keys={<Key onPress={asked.again}>{frameWords.tryAgain}</Key>} />}
      {machineId !== null && !worth && !asked.fault && <FillingRule words={words.worthLoading} />}
      {worth && (
        <p className="check-best" aria-live="polite">
          <Figures>{best ? words.worthBest(best) : words.worthNone}</Figures>
        </p>
      )}
      {worth && best && (
        <Across>
          <table className="check-gains wide-table">
            <caption className="said">{words.worthHead}</caption>
            <thead>
              <tr>
                <th scope="col">{words.where}</th>
                <th scope="col" className="figures">
                  {words.worthNarrows}
                </th>
              </tr>
            </thead>
            <tbody>
              {(shown ?? []).slice(0, 12).map((one) => (
                <tr key={one.pointId} data-chosen={best.pointIds.includes(one.pointId) || undefined}>
                  <th scope="row">
                    <div>
                      <RingSign item={one.item} state={best.pointIds.includes(one.pointId) ? 'now' : 'leave'} />
                      <span>{`${one.position}, ${one.point}`}</span>
                    </div>
                  </th>
                  <td className="figures">{hoursFigure(one.narrowsHours)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Across>
      )}
      {worth && best && <p className="second">{words.worthMinutes}</p>}
    </section>
  );
}
