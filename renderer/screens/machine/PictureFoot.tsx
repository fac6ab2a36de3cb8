import { hoursToPx, onScale } from '#core/axis/scale.ts';
import { textWidth } from '#core/axis/textWidth.ts';
import { WearChart } from '#renderer/charts/WearChart.tsx';
import { wearChartData } from '#renderer/charts/wearChartData.ts';
import { Picture } from '#renderer/marks/Picture.tsx';
import { Sketch } from '#renderer/marks/Sketch.tsx';
import { pictureWords } from '#renderer/words/pictureWords.ts';
import { ChosenNote } from './ChosenNote.tsx';
import { Ground } from './Ground.tsx';
import { type PictureLayout, rowName } from './pictureLayout.ts';
import type { PictureProps } from './pictureProps.ts';
import { sketchStates } from './sketchStates.ts';
import { pointOfItem } from './useItemNumber.ts';

export const PLAN_WORDS_PX = 22;

/** Under the rows: the words of the blue line, the chosen point's wear on the same hours, the drawing left of it. */
export function PictureFoot({
  props,
  layout,
  heightPx,
}: {
  props: PictureProps;
  layout: PictureLayout;
  heightPx: number;
}) {
  const chartPx = Math.max(120, heightPx - PLAN_WORDS_PX);
  const { chosen } = props;
  const chart = chosen && props.nowHours !== null;
  return (
    <div className="picture-foot" style={{ height: heightPx, width: layout.widthPx }}>
      {props.nowHours !== null && (
        <Picture width={layout.widthPx} height={heightPx} label={null} className="picture-ground">
          <Ground
            props={props}
            layout={layout}
            y0={0}
            y1={chart ? heightPx : PLAN_WORDS_PX}
            planTo={PLAN_WORDS_PX - 3}
          />
          <PlanWords props={props} layout={layout} />
        </Picture>
      )}
      {layout.kind === 'wide' && <Drawing props={props} layout={layout} chartPx={chartPx} />}
      {chosen && props.nowHours !== null && (
        <div className="picture-chart" style={{ top: PLAN_WORDS_PX }}>
          <Chart chosen={chosen} props={props} layout={layout} chartPx={chartPx} />
        </div>
      )}
    </div>
  );
}

/** The chosen point's wear, and what is said of it in the room its limits' labels leave. */
function Chart({
  chosen,
  props,
  layout,
  chartPx,
}: {
  chosen: NonNullable<PictureProps['chosen']>;
  props: PictureProps;
  layout: PictureLayout;
  chartPx: number;
}) {
  const { hours, kind, widthPx } = layout;
  const { nowHours, writing } = props;
  const data = wearChartData(chosen, { hours, heightPx: chartPx, nowHours, writing });
  return (
    <>
      <WearChart
        point={chosen}
        data={data}
        hours={hours}
        heightPx={chartPx}
        widthPx={widthPx}
        writing={writing}
        labels={kind === 'wide' ? 'beside' : 'inside'}
      />
      {kind === 'wide' && (
        <ChosenNote
          chosen={chosen}
          labelYs={data.chart.limits.map(({ labelY }) => labelY)}
          layout={layout}
          chartPx={chartPx}
        />
      )}
    </>
  );
}

/** Right of the blue line where there is room, else left of it. */
function PlanWords({ props, layout }: { props: PictureProps; layout: PictureLayout }) {
  const { planLineHours } = props;
  if (planLineHours === null || !onScale(layout.hours, planLineHours)) return null;
  const x = hoursToPx(layout.hours, planLineHours);
  const fits = x + 6 + textWidth(pictureWords.planLine, 14) < layout.widthPx - 14;
  return (
    <text x={fits ? x + 6 : x - 6} y={PLAN_WORDS_PX - 7} className={`blue rimmed heavy ${fits ? '' : 'end'}`}>
      {pictureWords.planLine}
    </text>
  );
}

function Drawing({ props, layout, chartPx }: { props: PictureProps; layout: PictureLayout; chartPx: number }) {
  const { sketch, chosen, chosenId } = props;
  if (!sketch) return null;
  const rows = props.rows.filter((row) => !row.elsewhere);
  // left of the mm figures, no taller than the chart
  const roomPx = layout.hours.fromPx - 52 - 14;
  const widthPx = Math.round(Math.min(roomPx, (chartPx * sketch.width) / sketch.height));
  return (
    <div className="picture-sketch" style={{ top: PLAN_WORDS_PX, height: chartPx }}>
      <Sketch
        sketch={sketch}
        states={sketchStates(rows)}
        chosen={chosen?.item ?? null}
        width={widthPx}
        label={pictureWords.sketch(chosen ? rowName(chosen) : '')}
        onChoose={(item) => {
          const row = pointOfItem(rows, item, chosenId);
          if (row) props.onChoose(row.pointId);
        }}
      />
    </div>
  );
}
