import { barBasis } from '#core/axis/intervalBar.ts';
import type { RepairOptionShown } from '#core/contract/repair.ts';
import { hoursLeftFigure, hoursLeftSentence } from '#core/words/quantityText.ts';
import { Picture, useHatch } from '#renderer/marks/Picture.tsx';
import { repairWords } from '#renderer/words/repairWords.ts';

export const LIFE_HIGH = 124;
const TOP = 14;
const FOOT = LIFE_HIGH - 10;

/** One scale for all choices: from 0 h up to the latest high, in whole thousands. */
export function lifeScaleTo(options: readonly RepairOptionShown[]): number {
  const known = options.flatMap(({ life }) => [life?.low, life?.middle, life?.high]).filter((hours) => hours != null);
  const step = 1000;
  return Math.max(step, Math.ceil(Math.max(0, ...known) / step) * step);
}

const yOf = (hours: number, toHours: number): number => FOOT - (Math.max(0, hours) / toHours) * (FOOT - TOP);

/** How long a choice lasts: low to high upright, the middle a long tick, figures beside. */
export function LifeBar({
  option,
  toHours,
  width,
  own,
}: {
  option: RepairOptionShown;
  toHours: number;
  width: number;
  own: number;
}) {
  const { life, choice } = option;
  if (!life || life.low === null) return <p className="second">{life ? repairWords.beyond : repairWords.noForecast}</p>;
  const [low, high] = [yOf(life.low, toHours), life.high === null ? TOP : yOf(life.high, toHours)];
  const middle = life.middle === null ? null : yOf(life.middle, toHours);
  const said = repairWords.lifeSaid(choice, hoursLeftSentence(life));
  return (
    <Picture width={width} height={LIFE_HIGH} label={said} className="life-bar">
      <Rules toHours={toHours} width={width} />
      <LifeFace kind={barBasis(own)} top={high} bottom={Math.max(low, high + 1)} />
      {middle !== null && <path className="life-middle" d={`M4 ${middle}H28`} />}
      <Figure y={middle ?? low} text={hoursLeftFigure(life.middle ?? life.low)} heavy />
      {low - (middle ?? low) > 15 && <Figure y={low} text={hoursLeftFigure(life.low)} />}
      {life.high !== null && (middle ?? low) - high > 15 && <Figure y={high} text={hoursLeftFigure(life.high)} />}
    </Picture>
  );
}

function LifeFace({ kind, top, bottom }: { kind: ReturnType<typeof barBasis>; top: number; bottom: number }) {
  const part = useHatch('part');
  const path = `M10 ${top}H22V${bottom}H10Z`;
  return (
    <>
      {kind === 'part' && part.pattern}
      <path className="paper" d={path} />
      <path className={`bar-${kind}`} style={kind === 'part' ? { fill: part.fill } : undefined} d={path} />
    </>
  );
}

const Figure = ({ y, text, heavy = false }: { y: number; text: string; heavy?: boolean }) => (
  <text x={36} y={Math.min(LIFE_HIGH - 4, Math.max(12, y + 5))} className={heavy ? 'heavy rimmed' : 'ink2 rimmed'}>
    {text}
  </text>
);

const Rules = ({ toHours, width }: { toHours: number; width: number }) => (
  <path
    className="l-hair"
    d={[0, 0.25, 0.5, 0.75, 1].map((share) => `M0 ${yOf(share * toHours, toHours)}H${width}`).join('')}
  />
);

/** Figures of the scale, beside the first column. */
export const LifeScaleFigures = ({ toHours }: { toHours: number }) => (
  <Picture width={84} height={LIFE_HIGH} label={null}>
    {[0, 0.5, 1].map((share) => (
      <text key={share} x={78} y={yOf(share * toHours, toHours) + 5} className="end ink2">
        {share === 0 ? repairWords.hoursAbout(0) : hoursLeftFigure(share * toHours)}
      </text>
    ))}
  </Picture>
);
