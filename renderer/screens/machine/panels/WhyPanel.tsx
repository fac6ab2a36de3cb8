import { forecastWhy, type Why } from '#core/contract/forecast.ts';
import type { PointSheet } from '#core/contract/machine.ts';
import { cautionText } from '#core/words/cautionText.ts';
import { hoursText } from '#core/words/quantityText.ts';
import { useSentence, whyStep, widthLines, widthSentence } from '#core/words/whyText.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { HelpMark } from '#renderer/help/HelpMark.tsx';
import { Picture, useHatch } from '#renderer/marks/Picture.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { pointName } from '#renderer/words/machinesWords.ts';
import { whyWords } from '#renderer/words/whyWords.ts';

/** What a forecast rests on, step by step, and what each source brings to the width of its range. */
export function WhyPanel({ point }: { point: PointSheet }) {
  const why = useAsk(forecastWhy, { pointId: point.pointId });
  return (
    <>
      <h2 className="panel-head">
        {whyWords.head(`${point.item} ${pointName(point)}`)} <HelpMark about="which-decides" />
      </h2>
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

function Steps({ why: { steps, forecast } }: { why: Why }) {
  const writing = useWriting();
  const doubts = forecast.cautionFacts.map(({ code, facts }) => cautionText(code, facts, writing));
  return (
    <dl className="why-steps">
      {steps.map((step) => {
        const { head, sentence } = whyStep(step, writing);
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

/** What the range would be without each source, as a bar within the whole; the one that would narrow it most first. */
function Width({ width }: { width: Why['width'] }) {
  if (!width) return <p className="why-width second">{whyWords.noWidth}</p>;
  const use = useSentence(width);
  return (
    <figure className="why-width">
      <figcaption>
        {whyWords.width} <HelpMark about="wide" />
      </figcaption>
      <p>
        <Figures>{widthSentence(width)}</Figures>
      </p>
      <ul>
        {widthLines(width).map(({ source, name, withoutHours, narrowerShare }) => (
          <li key={source}>
            <span>{name}</span>
            <Picture width={BAR_PX + 2} height={16} label={null}>
              <RangeLeft share={1 - narrowerShare} />
            </Picture>
            <span className="share">
              <Figures>{hoursText(withoutHours)}</Figures>
            </span>
          </li>
        ))}
      </ul>
      <p>{whyWords.widthNote}</p>
      {use && (
        <p>
          <Figures>{use}</Figures>
        </p>
      )}
    </figure>
  );
}

const BAR_PX = 160;

/** The whole range as a line, what is left of it as a bar. */
function RangeLeft({ share }: { share: number }) {
  const fan = useHatch('fan');
  return (
    <>
      {fan.pattern}
      <path className="l-hair" d={`M1 14.5H${BAR_PX + 1}`} />
      <rect
        className="share-bar"
        style={{ fill: fan.fill }}
        x={1}
        y={2}
        width={Math.max(2, share * BAR_PX)}
        height={12}
      />
    </>
  );
}
