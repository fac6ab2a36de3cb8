import { useState } from 'react';
import { type Rebuild, rebuildBored } from '#core/contract/rebuild.ts';
import { decimalFigure, pointOf } from '#core/words/quantityText.ts';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { StaysInMm } from '#renderer/controls/StaysInMm.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';

type Line = Rebuild['lines'][number];

/** The cuts of the work agreed: limits, and the size each really came to. */
export function Cuts({ job, isOpen }: { job: Rebuild; isOpen: boolean }) {
  const writing = pointOf(useWriting());
  const cuts = job.lines
    .filter(({ stands }) => stands === 'agreed')
    .flatMap((line) => line.cuts.map((cut, place) => ({ line, cut, place })));
  if (cuts.length === 0) return null;
  const limits = (cut: Line['cuts'][number]) =>
    `${decimalFigure(cut.lowerMm, 3, writing)} to ${decimalFigure(cut.upperMm, 3, writing)}`;
  return (
    <section>
      <h2>{words.cuts}</h2>
      <StaysInMm />
      <table className="table">
        <thead>
          <tr>
            <th>{words.heads.cut}</th>
            <th>{words.cutCentre}</th>
            <th className="figures">{words.heads.limits}</th>
            <th className="figures">{words.heads.bored}</th>
          </tr>
        </thead>
        <tbody>
          {cuts.map(({ line, cut, place }) => (
            <tr key={`${line.lineId} ${place}`}>
              <td>{cut.what}</td>
              <td>{cut.centre}</td>
              <td className="figures nw">{limits(cut)}</td>
              <td className="figures">
                {isOpen ? (
                  <Bored line={line} place={place} what={cut.what} limits={limits(cut)} />
                ) : (
                  line.boredMm[place] != null && decimalFigure(line.boredMm[place], 2, writing)
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Bored({ line, place, what, limits }: { line: Line; place: number; what: string; limits: string }) {
  const writing = pointOf(useWriting());
  const bored = useDo(rebuildBored);
  const [by] = useBy();
  const [sizeMm, setSizeMm] = useState<number | null>(line.boredMm[place] ?? null);
  const keep = (sure: boolean) => {
    if (sizeMm !== null) void bored.run({ lineId: line.lineId, cut: place, sizeMm, sure, by });
  };
  const isOut = bored.fault?.code === 'out-of-limits';
  return (
    <form
      className="bored"
      onSubmit={(event) => {
        event.preventDefault();
        keep(false);
      }}
    >
      <NumberField label={words.boredLabel(what)} unit="mm" value={sizeMm} onChange={setSizeMm} writing={writing} />
      <Keys>
        <Key
          type="submit"
          disabled={sizeMm === null || sizeMm === line.boredMm[place] || bored.busy}
          onPress={() => {}}
        >
          {words.keep}
        </Key>
      </Keys>
      {isOut && sizeMm !== null && (
        <Question
          fact={words.outOfLimits(decimalFigure(sizeMm, 2, writing), limits)}
          then={words.outOfLimitsThen}
          keys={<Key onPress={() => keep(true)}>{words.keepAll}</Key>}
        />
      )}
      {bored.fault && !isOut && <FaultBox fault={bored.fault} />}
    </form>
  );
}
