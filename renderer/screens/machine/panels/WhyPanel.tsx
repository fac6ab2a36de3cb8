import { forecastWhy } from '#core/contract/forecast.ts';
import type { PointSheet } from '#core/contract/machine.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { pointName } from '#renderer/words/machinesWords.ts';
import { whyStep, whyWords } from '#renderer/words/whyWords.ts';

/** What a forecast rests on, step by step, and what each source brings to its width. */
export function WhyPanel({ point }: { point: PointSheet }) {
  const why = useAsk(forecastWhy, { pointId: point.pointId });
  return (
    <>
      <h2 className="panel-head">{whyWords.head(`${point.item} ${pointName(point)}`)}</h2>
      {why.fault && <FaultBox fault={why.fault} />}
      {why.waiting && <FillingRule words={whyWords.working} />}
      {why.value && (
        <ol className="why-steps">
          {why.value.steps.map((step) => (
            <li key={step.code}>
              <Figures>{whyStep(step.code, step.facts)}</Figures>
            </li>
          ))}
        </ol>
      )}
    </>
  );
}
