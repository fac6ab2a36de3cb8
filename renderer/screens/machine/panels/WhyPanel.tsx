import { forecastWhy } from '#core/contract/forecast.ts';
import type { PointSheet } from '#core/contract/machine.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { Picture, useHatch } from '#renderer/marks/Picture.tsx';
import { useDecimalMark } from '#renderer/record.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { cautionText } from '#renderer/words/cautionText.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { pointName } from '#renderer/words/machinesWords.ts';
import { shareText, whyStep, whyWords, widthSource } from '#renderer/words/whyWords.ts';

/** What a forecast rests on, step by step, and what each source brings to the width of its range. */
export function WhyPanel({ point }: { point: PointSheet }) {
  const why = useAsk(forecastWhy, { pointId: point.pointId });
  return (
    <>
      <h2 className="panel-head">{whyWords.head(`${point.item} ${pointName(point)}`)}</h2>
      {why.fault && <FaultBox fault={why.fault} />}
      {why.waiting && <FillingRule words={whyWords.working} />}
      {why.value && (
        <div className="why">
          <Steps why={why.value} />
          <Width width={why.value.width} />
        </div>
      )}
    </>
  );
}

type Why = ReplyOf<typeof forecastWhy>;

function Steps({ why: { steps, forecast } }: { why: Why }) {
  const mark = useDecimalMark();
  const doubts = forecast.cautionFacts.map(({ code, facts }) => cautionText(code, facts, mark));
  return (
    <dl className="why-steps">
      {steps.map((step) => {
        const { head, sentence } = whyStep(step, mark);
        return (
          <div key={step.code}>
            <dt>{head}</dt>
            <dd>
              <Figures>{sentence}</Figures>
            </dd>
          </div>
        );
      })}
      {doubts.length > 0 && (
        <div>
          <dt>{whyWords.doubts}</dt>
          <dd>
            <Figures>{doubts.join(' ')}</Figures>
          </dd>
        </div>
      )}
    </dl>
  );
}

/** Shares as bars on one scale, the largest first; those too small to see are left out. */
function Width({ width }: { width: Why['width'] }) {
  const shown = width.filter(({ share }) => share >= LEAST_SHARE).sort((a, b) => b.share - a.share);
  if (shown.length === 0) return <p className="why-width second">{whyWords.noWidth}</p>;
  return (
    <figure className="why-width">
      <figcaption>{whyWords.width}</figcaption>
      <ul>
        {shown.map(({ source, share }) => (
          <li key={source}>
            <span>{widthSource(source)}</span>
            <Picture width={BAR_PX + 2} height={16} label={null}>
              <ShareBar share={share} />
            </Picture>
            <span className="share">{shareText(share)}</span>
          </li>
        ))}
      </ul>
      <p>{whyWords.widthNote}</p>
    </figure>
  );
}

const LEAST_SHARE = 0.005;
const BAR_PX = 160;

function ShareBar({ share }: { share: number }) {
  const fan = useHatch('fan');
  return (
    <>
      <path className="l-hair" d={`M1 14.5H${BAR_PX + 1}`} />
      <rect className="share-bar" style={{ fill: fan }} x={1} y={2} width={Math.max(2, share * BAR_PX)} height={12} />
    </>
  );
}
