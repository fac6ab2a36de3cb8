import { type HoursScale, hoursToPx, px, type SizeScale, sizeToPx } from '#core/axis/scale.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { type Hatch, Picture, useHatch } from '#renderer/marks/Picture.tsx';
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

/** The wear of one measuring point on the hours of the axis above it: curves in a plot of their own, the rest over it. */
export function WearChart(props: WearChartProps) {
  const data = wearChartData(props.point, props);
  return (
    <div className="wear-chart" style={{ width: props.widthPx, height: props.heightPx }}>
      <Plot data={data} hours={props.hours} heightPx={props.heightPx} />
      <ChartLabels data={data} {...props} />
    </div>
  );
}

type Scales = { hours: HoursScale; size: SizeScale };
type At = { hours: number; sizeMm: number | null };

/** The stretch of the axis; what runs beyond it is cut off. */
function Plot({ data, hours, heightPx }: { data: WearChartData; hours: HoursScale; heightPx: number }) {
  const { chart, fitted, fan, earlier, joined } = data;
  const widthPx = hours.toPx - hours.fromPx;
  const scales = { hours, size: chart.size };
  const lives = [...earlier, joined].filter((life) => life.length > 0);
  return (
    <Picture
      width={widthPx}
      height={heightPx}
      viewBox={`${hours.fromPx} 0 ${widthPx} ${heightPx}`}
      label={null}
      className="wear-plot"
      style={{ left: hours.fromPx }}
    >
      {chart.limits.map(({ kind, y }) => (
        <path key={kind} className={`l-${kind}`} d={`M${hours.fromPx} ${px(y)}H${hours.toPx}`} />
      ))}
      {fitted.length > 1 && <Band name="fitted" hatch="band" slices={fitted} scales={scales} />}
      {fan.length > 1 && <Band name="fan" hatch="fan" slices={fan} scales={scales} />}
      {lives.map((life, place) => (
        <path key={place} className="wear-joined" d={linePath(life.map(lifeAt), scales)} />
      ))}
    </Picture>
  );
}

const lifeAt = ({ machineHours, sizeMm }: { machineHours: number; sizeMm: number }): At => ({
  hours: machineHours,
  sizeMm,
});

/** A band with its middle: edges thin, hatched between. */
function Band({ name, hatch, slices, scales }: { name: string; hatch: Hatch; slices: BandSlice[]; scales: Scales }) {
  const fill = useHatch(hatch);
  const edge = (side: 0 | 1) => slices.map(({ hours, span }): At => ({ hours, sizeMm: span[side] }));
  const [lower, upper] = [edge(0), edge(1)];
  const middle = slices.map(({ hours, middle }): At => ({ hours, sizeMm: middle }));
  return (
    <g className={`wear-${name}`}>
      <path fill={fill} d={`${linePath([...upper, ...lower.toReversed()], scales)}Z`} />
      <path className="wear-edge" d={`${linePath(upper, scales)}${linePath(lower, scales)}`} />
      <path className="wear-middle" d={linePath(middle, scales)} />
    </g>
  );
}

/** Through the points in turn; lifted where no size is known. */
function linePath(points: readonly At[], { hours, size }: Scales): string {
  let drawn = false;
  return points
    .map((point) => {
      const step = drawn ? 'L' : 'M';
      drawn = point.sizeMm !== null;
      return point.sizeMm === null
        ? ''
        : `${step}${px(hoursToPx(hours, point.hours))} ${px(sizeToPx(size, point.sizeMm))}`;
    })
    .join('');
}
