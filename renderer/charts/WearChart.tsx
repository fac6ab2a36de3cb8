import { Curve, Surface } from 'recharts';
import { type HoursScale, hoursToPx, sizeToPx } from '#core/axis/scale.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { useHatch } from '#renderer/marks/Picture.tsx';
import { ChartLabels } from './ChartLabels.tsx';
import type { BandSlice, ChartedPoint, WearChartData } from './wearChartData.ts';
import './wear-chart.css';

export type WearChartProps = {
  point: ChartedPoint;
  /** of that point, on these hours and this height */
  data: WearChartData;
  /** the scale of the axis above: pixels coincide exactly */
  hours: HoursScale;
  heightPx: number;
  /** of the whole picture; labels stand beside the plot */
  widthPx: number;
  writing: Writing;
  /** limit labels right of the plot, or inside it where there is no room beside it */
  labels: 'beside' | 'inside';
};

/**
 * The wear of one measuring point on the hours of the axis above it.
 * recharts draws the curves, on the axis' own straight scales: its own would be worked out anew, in a store of its own, for
 * each chart. Bars, labels and ticks come from core/axis.
 */
export function WearChart(props: WearChartProps) {
  const { data, hours, widthPx, heightPx } = props;
  return (
    <div className="wear-chart" style={{ width: widthPx, height: heightPx }}>
      <Plot data={data} hours={hours} heightPx={heightPx} />
      <ChartLabels {...props} />
    </div>
  );
}

/** Limits, bands and joined readings, in the order they are laid over each other. */
function Plot({ data, hours, heightPx }: { data: WearChartData; hours: HoursScale; heightPx: number }) {
  const widthPx = hours.toPx - hours.fromPx;
  const { chart, fitted, fan, joined } = data;
  const at: Placing = (machineHours, sizeMm) => ({
    x: hoursToPx(hours, machineHours) - hours.fromPx,
    y: sizeMm === null ? null : sizeToPx(chart.size, sizeMm),
  });
  return (
    <div className="wear-plot" aria-hidden="true" style={{ left: hours.fromPx }}>
      <Surface width={widthPx} height={heightPx} className="picture">
        {chart.limits.map(({ kind, y }) => (
          <path key={kind} className={`l-${kind}`} d={`M0 ${y}H${widthPx}`} />
        ))}
        <Band name="fitted" hatch="band" slices={fitted} at={at} />
        <Band name="fan" hatch="fan" slices={fan} at={at} />
        {joined.length > 1 && (
          <g className="wear-joined">
            <Curve
              points={joined.map(({ hours, size }) => at(hours, size))}
              {...LINE}
              strokeWidth={1.2}
              stroke="var(--ink2)"
            />
          </g>
        )}
      </Surface>
    </div>
  );
}

/** Hours and millimetres to pixels of the plot; where a line is lifted there is no size. */
type Placing = (machineHours: number, sizeMm: number | null) => { x: number; y: number | null };

const LINE = { fill: 'none', stroke: 'var(--ink)' } as const;

/** A band with its middle: edges thin, hatched between. */
function Band({
  name,
  hatch,
  slices,
  at,
}: {
  name: 'fitted' | 'fan';
  hatch: 'band' | 'fan';
  slices: readonly BandSlice[];
  at: Placing;
}) {
  const { pattern, fill } = useHatch(hatch);
  if (slices.length < 2) return null;
  const lower = slices.map(({ hours, span }) => at(hours, span[0]));
  const upper = slices.map(({ hours, span }) => at(hours, span[1]));
  return (
    <>
      {pattern}
      <g className={`wear-${name}`}>
        <Curve points={upper} baseLine={lower} fill={fill} stroke="none" />
        <Curve points={upper} {...LINE} strokeWidth={0.9} />
        <Curve points={lower} {...LINE} strokeWidth={0.9} />
      </g>
      <g className={`wear-${name}-middle`}>
        <Curve points={slices.map(({ hours, middle }) => at(hours, middle))} {...LINE} strokeWidth={1.9} />
      </g>
    </>
  );
}
