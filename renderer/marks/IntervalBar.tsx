import {
  type IntervalBar as Bar,
  type BarStretch,
  MIDDLE_TICK,
  type ThinInterval as Thin,
} from '#core/axis/intervalBar.ts';
import { type Hatch, useHatch } from './Picture.tsx';

/** The bar from low to high, about the middle of its row; without its triangle where the figures stand under it. */
export function IntervalBar({ bar, y, triangle = true }: { bar: Bar; y: number; triangle?: boolean }) {
  return (
    <g transform={`translate(0 ${y})`}>
      {bar.ahead &&
        (bar.basis === 'part' ? (
          <HatchedStretch stretch={bar.ahead} className="bar-part" hatch="part" />
        ) : (
          <path className={`bar-${bar.basis}`} d={bar.ahead.path} />
        ))}
      {bar.past && <HatchedStretch stretch={bar.past} className="bar-past" hatch="past" />}
      {bar.middleX !== null && <MiddleTick x={bar.middleX} />}
      {triangle && bar.decides && <path className="ink" d={bar.decides.path} />}
      {bar.arrow && (
        <path
          className={bar.wholly === 'off-left' ? 'l-red' : 'l-thin'}
          style={{ fill: bar.wholly === 'off-left' ? 'var(--red)' : 'var(--ink)' }}
          d={bar.arrow.path}
        />
      )}
    </g>
  );
}

/** A hatch is laid on paper, so that bands and lines below do not show through it. */
function HatchedStretch({ stretch, className, hatch }: { stretch: BarStretch; className: string; hatch: Hatch }) {
  const { fill, pattern } = useHatch(hatch);
  return (
    <>
      {pattern}
      <path className="paper" d={stretch.path} />
      <path className={className} style={{ fill }} d={stretch.path} />
    </>
  );
}

/** The middle: a long tick with a gap of paper at either side. */
export function MiddleTick({ x, halfPx = MIDDLE_TICK.halfPx }: { x: number; halfPx?: number }) {
  const { widthPx, gapPx } = MIDDLE_TICK;
  const wide = widthPx + 2 * gapPx;
  return (
    <>
      <rect className="paper" x={x - wide / 2} y={-7} width={wide} height={14} />
      <rect className="ink" x={x - widthPx / 2} y={-halfPx} width={widthPx} height={2 * halfPx} />
    </>
  );
}

/** A further position, or where a bar stood before a reading: a thin line with a short tick. */
export function ThinInterval({ interval, y }: { interval: Thin; y: number }) {
  const ends = [
    interval.offLeft ? `M${interval.x0 + 4} -3L${interval.x0} 0L${interval.x0 + 4} 3` : '',
    interval.offRight ? `M${interval.x1 - 4} -3L${interval.x1} 0L${interval.x1 - 4} 3` : '',
  ];
  return (
    <g transform={`translate(0 ${y})`}>
      <path className="l-thin" d={`M${interval.x0} 0H${interval.x1}${ends.join('')}`} />
      {interval.middleX !== null && <rect className="ink" x={interval.middleX - 1.2} y={-3.5} width={2.4} height={7} />}
    </g>
  );
}

/** A part past at its own last size: a red stub at that reading, and how far past. */
export function PastStub({ stub, y, text }: { stub: BarStretch; y: number; text: string }) {
  const past = useHatch('past');
  return (
    <g transform={`translate(0 ${y})`}>
      {past.pattern}
      <path className="paper" d={stub.path} />
      <path className="bar-past" style={{ fill: past.fill, strokeWidth: 2 }} d={stub.path} />
      <text x={stub.x1 + 8} y={5} className="red heavy rimmed">
        {text}
      </text>
    </g>
  );
}
