import { useId } from 'react';
import { Area, ComposedChart, Line, ReferenceLine, Scatter, XAxis, YAxis } from 'recharts';
import type { HoursScale } from '#core/axis/scale.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { MarkDefs } from '#renderer/marks/Picture.tsx';
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
 * recharts draws curves and points; it is given no margins and no axes of its own, so that its plot is the axis' stretch
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

function Plot({ data, hours, heightPx }: { data: WearChartData; hours: HoursScale; heightPx: number }) {
  const prefix = `${useId().replace(/[^\w-]/g, '')}-`;
  const { size } = data.chart;
  return (
    <div className="wear-plot" aria-hidden="true" style={{ left: hours.fromPx }}>
      <ComposedChart
        width={hours.toPx - hours.fromPx}
        height={heightPx}
        margin={{ top: 0, right: 0, bottom: 0, left: 0 }}
        accessibilityLayer={false}
        className="picture"
      >
        <MarkDefs prefix={prefix} />
        <XAxis type="number" dataKey="hours" domain={[hours.fromHours, hours.toHours]} allowDataOverflow hide />
        <YAxis type="number" domain={[size.fromMm, size.toMm]} allowDataOverflow hide />
        {data.chart.limits.map((limit) => (
          <ReferenceLine key={limit.kind} y={limit.sizeMm} className={`l-${limit.kind}`} stroke="" strokeWidth="" />
        ))}
        {band('fitted', data.fitted, `url(#${prefix}band)`)}
        {band('fan', data.fan, `url(#${prefix}fan)`)}
        {[...data.earlier, data.joined].filter((life) => life.length > 0).map((life) => joined(life))}
      </ComposedChart>
    </div>
  );
}

/** A band with its middle: edges thin, hatched between. */
function band(name: 'fitted' | 'fan', slices: BandSlice[], fill: string) {
  if (slices.length < 2) return null;
  return [
    <Area
      key={`${name}-span`}
      className={`wear-${name}`}
      data={slices}
      dataKey="span"
      fill={fill}
      fillOpacity={1}
      stroke="var(--ink)"
      strokeWidth={0.9}
      dot={false}
      activeDot={false}
      isAnimationActive={false}
    />,
    <Line
      key={`${name}-middle`}
      className={`wear-${name}-middle`}
      data={slices}
      dataKey="middle"
      stroke="var(--ink)"
      strokeWidth={1.9}
      dot={false}
      activeDot={false}
      isAnimationActive={false}
    />,
  ];
}

function joined(life: { machineHours: number; sizeMm: number }[]) {
  const points = life.map((p) => ({ hours: p.machineHours, size: p.sizeMm }));
  return (
    <Scatter
      key={points[0]?.hours}
      className="wear-joined"
      data={points}
      dataKey="size"
      line={{ stroke: 'var(--ink2)', strokeWidth: 1.2 }}
      shape={() => <g />}
      isAnimationActive={false}
    />
  );
}
