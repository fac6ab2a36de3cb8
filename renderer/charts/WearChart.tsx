import { Area, ComposedChart, Line, XAxis, YAxis } from 'recharts';
import type { HoursScale } from '#core/axis/scale.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { useHatch } from '#renderer/marks/Picture.tsx';
import { ChartLabels } from './ChartLabels.tsx';
import { type BandSlice, type ChartedPoint, type WearChartData, wearChartData } from './wearChartData.ts';
import './wear-chart.css';

export type WearChartProps = {
  point: ChartedPoint;
  /** the scale of the axis above: pixels coincide exactly */
  hours: HoursScale;
  heightPx: number;
  /** of the whole picture; labels stand beside the plot */
  widthPx: number;
  nowHours: number | null;
  writing: Writing;
  /** limit labels right of the plot, or inside it where there is no room beside it */
  labels: 'beside' | 'inside';
};

/**
 * The wear of one measuring point on the hours of the axis above it.
 * recharts draws the curves; it is given no margins and no axes of its own, so that its plot is the axis' stretch
 * of pixels and its scale the same straight line. Bars, labels and ticks come from core/axis.
 */
export function WearChart(props: WearChartProps) {
  const data = wearChartData(props.point, props);
  return (
    <div className="wear-chart" style={{ width: props.widthPx, height: props.heightPx }}>
      <Plot data={data} hours={props.hours} heightPx={props.heightPx} />
      <ChartLabels data={data} {...props} />
    </div>
  );
}

/**
 * Limits, bands and joined readings, in the order they are laid over each other. What the library does for each curve is done
 * again for all with every further one: limits, which are no curves, are lines of their own, and all earlier parts one curve.
 */
function Plot({ data, hours, heightPx }: { data: WearChartData; hours: HoursScale; heightPx: number }) {
  const widthPx = hours.toPx - hours.fromPx;
  const { chart, fitted, fan, joined } = data;
  const [bandHatch, fanHatch] = [useHatch('band'), useHatch('fan')];
  return (
    <div className="wear-plot" aria-hidden="true" style={{ left: hours.fromPx }}>
      <ComposedChart
        width={widthPx}
        height={heightPx}
        margin={NO_MARGIN}
        accessibilityLayer={false}
        className="picture"
      >
        {bandHatch.pattern}
        {fanHatch.pattern}
        <XAxis type="number" dataKey="hours" domain={[hours.fromHours, hours.toHours]} allowDataOverflow hide />
        <YAxis type="number" domain={[chart.size.fromMm, chart.size.toMm]} allowDataOverflow hide />
        {chart.limits.map(({ kind, y }) => (
          <path key={kind} className={`l-${kind}`} d={`M0 ${y}H${widthPx}`} />
        ))}
        {band('fitted', fitted, bandHatch.fill)}
        {band('fan', fan, fanHatch.fill)}
        {joined.length > 1 && (
          <Line
            {...CURVE}
            className="wear-joined"
            data={joined}
            dataKey="size"
            stroke="var(--ink2)"
            strokeWidth={1.2}
          />
        )}
      </ComposedChart>
    </div>
  );
}

const NO_MARGIN = { top: 0, right: 0, bottom: 0, left: 0 };

/** Curves as they are: no dots, nothing that moves or follows a pointer, in their own order. */
const CURVE = { dot: false, activeDot: false, isAnimationActive: false, tooltipType: 'none', zIndex: 0 } as const;

/** A band with its middle: edges thin, hatched between. */
function band(name: 'fitted' | 'fan', slices: BandSlice[], fill: string) {
  if (slices.length < 2) return null;
  return [
    <Area
      {...CURVE}
      key={`${name}-span`}
      className={`wear-${name}`}
      data={slices}
      dataKey="span"
      fill={fill}
      fillOpacity={1}
      stroke="var(--ink)"
      strokeWidth={0.9}
    />,
    <Line
      {...CURVE}
      key={`${name}-middle`}
      className={`wear-${name}-middle`}
      data={slices}
      dataKey="middle"
      stroke="var(--ink)"
      strokeWidth={1.9}
    />,
  ];
}
