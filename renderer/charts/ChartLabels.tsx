import { datumPath, renewalShape } from '#core/axis/historyLine.ts';
import { hoursToPx, onScale } from '#core/axis/scale.ts';
import { textWidth } from '#core/axis/textWidth.ts';
import { day } from '#core/units/day.ts';
import { decimalFigure, hoursFigure, lengthUnit } from '#core/words/quantityText.ts';
import { Renewal } from '#renderer/marks/History.tsx';
import { IntervalBar } from '#renderer/marks/IntervalBar.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { PutRight, ReadingDot } from '#renderer/marks/ReadingDot.tsx';
import { chartWords } from '#renderer/words/chartWords.ts';
import type { WearChartProps } from './WearChart.tsx';
import type { WearChartData } from './wearChartData.ts';

/** Readings, bar, mm axis and words over the plot. */
export function ChartLabels(props: WearChartProps) {
  const { data, widthPx, heightPx } = props;
  const { chart } = data;
  return (
    <Picture width={widthPx} height={heightPx} label={null} className="wear-labels">
      <SizeAxis {...props} />
      <LimitLabels {...props} />
      {chart.putRight.map((old) => (
        <g key={`${old.x}-${old.y}`}>
          <PutRight x={old.x} y={old.y} newY={old.newY} />
          <LabelText at={old.label} text={old.text} className="second rimmed" />
        </g>
      ))}
      {chart.bar && <HungBar bar={chart.bar} props={props} />}
      {chart.readings.map((reading, i) => (
        <g key={`${reading.x}-${reading.y}-${i}`} data-reading-x={reading.x}>
          <ReadingDot {...reading} />
          {reading.label && (
            <LabelText
              at={reading.label}
              text={reading.text}
              className={reading.questioned ? 'brass rimmed' : 'rimmed'}
            />
          )}
        </g>
      ))}
      <Renewals {...props} />
    </Picture>
  );
}

const LabelText = ({
  at,
  text,
  className,
}: {
  at: { x: number; y: number; height: number };
  text: string;
  className: string;
}) => (
  <text x={at.x} y={at.y + at.height - 2.5} className={className}>
    {text}
  </text>
);

function SizeAxis({ data, hours, heightPx, writing }: WearChartProps) {
  const x = hours.fromPx;
  const { ticks, tickDecimals } = data.chart;
  const shown = ticks.filter((tick) => tick.y > 4 && tick.y < heightPx - 4);
  return (
    <g>
      <path
        className="l-thin"
        d={`M${x} 0V${heightPx}${shown.map((tick) => `M${x} ${tick.y}h${tick.figure ? -8 : -4}`).join('')}`}
      />
      {shown
        .filter((tick) => tick.figure && tick.y > 20)
        .map((tick) => (
          <text key={tick.sizeMm} x={x - 12} y={tick.y + 5} className="end">
            {decimalFigure(tick.size, tickDecimals, writing)}
          </text>
        ))}
      <text x={x - 12} y={13} className="end second">
        {lengthUnit(writing)}
      </text>
    </g>
  );
}

function LimitLabels({ data, hours, point, writing, labels }: WearChartProps) {
  return data.chart.limits.map((limit) => {
    const tolMm = limit.kind === 'new-size' ? point.limits.newSizeTolMm : null;
    const words = chartWords.limit(limit.kind, limit.sizeMm, tolMm, writing);
    const red = limit.kind === 'new-size' ? 'second' : 'red heavy';
    return labels === 'beside' ? (
      <g key={limit.kind}>
        {limit.labelY !== limit.y && (
          <path className="l-dim" d={`M${hours.toPx + 1} ${limit.y}L${hours.toPx + 9} ${limit.labelY}`} />
        )}
        <text x={hours.toPx + 11} y={limit.labelY + 5} className={red}>
          {words}
        </text>
      </g>
    ) : (
      <text
        key={limit.kind}
        x={hours.toPx - 2}
        y={limit.kind === 'reject-at' ? limit.labelY + 15 : limit.labelY - 4}
        className={`end rimmed ${red}`}
      >
        {words}
      </text>
    );
  });
}

/** The bar where the fan meets the limit, with its hours under it; the one that decides is heavy. */
function HungBar({ bar, props }: { bar: NonNullable<WearChartData['chart']['bar']>; props: WearChartProps }) {
  const { low, middle, high } = props.point.forecast.machineHoursAtLimit;
  const decides = props.point.forecast.decides;
  const figures = spaced([
    { hours: low, x: bar.lowX, heavy: decides === 'low' },
    { hours: middle, x: bar.middleX, heavy: decides === 'middle' },
    { hours: high, x: bar.highX, heavy: false },
  ]);
  return (
    <g>
      <IntervalBar bar={bar.shape} y={bar.y} triangle={false} />
      {bar.shape.wholly === null &&
        figures.map((figure) => (
          <text
            key={figure.x}
            x={figure.x}
            y={bar.figuresY + 4}
            className={`middle rimmed ${figure.heavy ? 'heavy' : 'second'}`}
          >
            {figure.text}
          </text>
        ))}
    </g>
  );
}

/** Figures under a short bar: low moves left and high right until none touches; the middle stays under its tick. */
function spaced(figures: { hours: number | null; x: number | null; heavy: boolean }[]) {
  const shown = figures.flatMap(({ hours, x, heavy }) => {
    if (hours === null || x === null) return [];
    const text = hoursFigure(hours);
    return [{ text, x, heavy, half: textWidth(text, 14) / 2 + 4 }];
  });
  const middle = shown.find((_, i) => shown.length === 3 && i === 1);
  if (!middle) return shown;
  return shown.map((figure) => {
    if (figure === middle) return figure;
    const clear = figure.half + middle.half;
    return {
      ...figure,
      x: figure === shown[0] ? Math.min(figure.x, middle.x - clear) : Math.max(figure.x, middle.x + clear),
    };
  });
}

/** Where parts were renewed, on the foot of the chart, and when the present one was fitted. */
function Renewals({ point, hours, heightPx }: WearChartProps) {
  const foot = heightPx - 1;
  const last = point.renewals.at(-1);
  return (
    <g>
      <path className="l-history" d={`M${hours.fromPx} ${foot}H${hours.toPx}`} />
      {point.renewals
        .filter((renewal) => onScale(hours, renewal.machineHours))
        .map((renewal) => (
          <g key={renewal.takenOn} transform={`translate(0 ${foot})`}>
            {renewal.known ? (
              <path className="ink" d={datumPath(hoursToPx(hours, renewal.machineHours), 7, 10)} />
            ) : (
              <Renewal
                renewal={renewalShape(
                  {
                    hours: renewal.machineHours,
                    known: false,
                    fromHours: renewal.fromMachineHours,
                    toHours: renewal.toMachineHours,
                  },
                  hours,
                )}
              />
            )}
          </g>
        ))}
      {last && onScale(hours, last.machineHours) && (
        <text x={hoursToPx(hours, last.machineHours) + 13} y={foot - 4} className="second rimmed">
          {fittedWords(last)}
        </text>
      )}
    </g>
  );
}

/** Fitted before the machine had run this long: it came with it, and its day means nothing [h]. */
const AS_BUILT_HOURS = 1;

function fittedWords(renewal: WearChartProps['point']['renewals'][number]): string {
  const { known, machineHours, takenOn, fromMachineHours, toMachineHours } = renewal;
  if (!known) return chartWords.fittedSomeTime(fromMachineHours, toMachineHours);
  return machineHours < AS_BUILT_HOURS ? chartWords.asBuilt : chartWords.fitted(machineHours, day(takenOn));
}
