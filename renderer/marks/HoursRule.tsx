import type { HoursRule as Rule } from '#core/axis/hoursRule.ts';
import { wholeFigure } from '#core/words/quantityText.ts';

/** Base line this far below the top of the rule; figures above it, ticks standing on it [px]. */
export const RULE_BASE_PX = 32;
const FIGURES_ABOVE_BASE_PX = 15;

/** The hours axis as a rule: ticks of one, five and ten units on a base line, figures above. */
export function HoursRule({ rule, y = 0 }: { rule: Rule; y?: number }) {
  const base = y + RULE_BASE_PX;
  const ticks = (past: boolean) =>
    rule.ticks
      .filter((tick) => tick.past === past)
      .map((tick) => `M${tick.x} ${base}v${-tick.lengthPx}`)
      .join('');
  return (
    <g>
      <path className="l-rule" d={`M${rule.fromPx} ${base}H${rule.toPx}`} />
      <path className="l-thin" d={ticks(false)} />
      <path className="l-red" style={{ strokeWidth: 1.2 }} d={ticks(true)} />
      {rule.figures.map((figure) => (
        <text
          key={figure.hours}
          x={figure.x}
          y={base - FIGURES_ABOVE_BASE_PX}
          className={`middle ${figure.rank === 'major' ? 'heavy' : 'second'} ${figure.past ? 'red' : ''}`}
          style={{ fontSize: 15 }}
        >
          {wholeFigure(figure.hours)}
        </text>
      ))}
    </g>
  );
}
