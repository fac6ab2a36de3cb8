import { useState } from 'react';
import { useLocation } from 'wouter';
import { type CutGroup, repairCutList } from '#core/contract/repair.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { StaysInMm } from '#renderer/controls/StaysInMm.tsx';
import { GoesBy } from '#renderer/screens/shop-figures/GoesBy.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { repairWords } from '#renderer/words/repairWords.ts';

const words = repairWords.cutList;

/** Parts to make for the repairs chosen, by the bar they come from, and how to cut it: of one machine, or of all. */
export function CutList({ machineId, writing }: { machineId: number; writing: Writing }) {
  const [, goTo] = useLocation();
  const [of, setOf] = useState<'machine' | 'whole'>('machine');
  const asked = useAsk(repairCutList, { machineId: of === 'machine' ? machineId : null });
  const groups = asked.value?.groups ?? [];
  return (
    <section className="cut-list">
      <h2>{words.head}</h2>
      <StaysInMm />
      <Choice
        label={words.head}
        labelled={false}
        options={[
          { value: 'machine', text: words.machine },
          { value: 'whole', text: words.whole },
        ]}
        value={of}
        onChange={setOf}
      />
      {asked.fault && <FaultBox fault={asked.fault} />}
      {asked.value && groups.length === 0 && <p>{words.none}</p>}
      {asked.value && groups.length > 0 && (
        <>
          <table className="table">
            <thead>
              <tr>
                {[words.bar, words.parts, words.cuts, words.waste].map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {groups.map((group) => (
                <GroupRow key={group.bar} group={group} writing={writing} />
              ))}
            </tbody>
          </table>
          <GoesBy names={['barLengthMm', 'sawKerfMm', 'sawTrimMm', 'keepFromMm', 'facedEachEndMm', 'turnedOffMm']} />
          <Keys>
            <Key onPress={() => goTo(`/cut-list/${of === 'machine' ? machineId : 'all'}`)}>{words.onPaper}</Key>
          </Keys>
        </>
      )}
    </section>
  );
}

function GroupRow({ group: { bar, parts, plan }, writing }: { group: CutGroup; writing: Writing }) {
  const lines = (texts: readonly string[]) =>
    texts.map((text, i) => (
      <div key={`${text} ${i}`}>
        <Figures>{text}</Figures>
      </div>
    ));
  return (
    <tr>
      <th scope="row">{bar}</th>
      <td>{lines(parts.map((part) => words.part(part, writing)))}</td>
      <td>{lines(plan.bars.map((cut) => words.cut(cut, writing)))}</td>
      <td>{words.wasteSaid(plan.wasteMm, plan.proven, writing)}</td>
    </tr>
  );
}
