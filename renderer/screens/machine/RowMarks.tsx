import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { historyLine } from '#core/axis/historyLine.ts';
import { intervalBar, pastStub, thinInterval } from '#core/axis/intervalBar.ts';
import { clampToScale, hoursToPx } from '#core/axis/scale.ts';
import { hoursFigure } from '#core/words/quantityText.ts';
import { DoNotUseBox } from '#renderer/marks/DoNotUseBox.tsx';
import { HistoryLine } from '#renderer/marks/History.tsx';
import { IntervalBar, PastStub, ThinInterval } from '#renderer/marks/IntervalBar.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { pastLimitText } from '#renderer/words/markWords.ts';
import type { PictureLayout } from './pictureLayout.ts';
import type { PictureProps, PictureRow } from './pictureProps.ts';

type RowMarksProps = { row: PictureRow; props: PictureProps; layout: PictureLayout };

/** What stands on the axis in one row: its history, and the bar or what takes its place. */
export function RowMarks({ row, props, layout }: RowMarksProps) {
  const { hours, barY, rowPx, widthPx } = layout;
  const nowHours = props.nowHours ?? 0;
  const history = historyLine(
    { renewals: row.renewals, readings: row.readings, meterChanges: props.meterChanges, untilHours: nowHours },
    hours,
  );
  return (
    <Picture width={widthPx} height={rowPx} label={null} className="row-marks">
      {history && <HistoryLine line={history} y={barY} />}
      {row.doNotUse !== null ? (
        <DoNotUseBox
          x={hoursToPx(hours, nowHours) + 2}
          y={barY}
          width={widthPx - 14 - hoursToPx(hours, nowHours) - 2}
          finding={row.doNotUse}
        />
      ) : (
        <Forecast row={row} nowHours={nowHours} layout={layout} writing={props.writing} />
      )}
    </Picture>
  );
}

function Forecast({
  row,
  nowHours,
  layout,
  writing,
}: {
  row: PictureRow;
  nowHours: number;
  layout: PictureLayout;
  writing: PictureProps['writing'];
}) {
  const { hours, barY } = layout;
  if (row.pastLimit) {
    const stub = pastStub(row.pastLimit.readAtHours, hours);
    return stub && <PastStub stub={stub} y={barY} text={pastLimitText(row.pastLimit.mm, writing)} />;
  }
  if (row.atLimit.low === null && row.atLimit.middle === null) return null;
  const bar = intervalBar({ ...row.atLimit, nowHours, decides: row.decides, ownReadings: row.ownReadings }, hours);
  const before = row.before && thinInterval(row.before, hours);
  const beside = bar.wholly === 'off-right' && row.atLimit.low !== null ? hoursFigure(row.atLimit.low) : null;
  return (
    <>
      {before && <ThinInterval interval={before} y={barY + 9} />}
      <Sliding byPx={row.before ? slide(row, layout) : 0}>
        <IntervalBar bar={bar} y={barY} />
      </Sliding>
      {beside && (
        <text x={bar.endX - 36} y={barY + 5} className="end second rimmed">
          {beside}
        </text>
      )}
    </>
  );
}

/** How far the bar's middle has moved [px]. */
function slide(row: PictureRow, { hours }: PictureLayout): number {
  const middle = (at: PictureRow['atLimit']) => clampToScale(hours, at.middle ?? at.low ?? hours.toHours);
  return row.before ? middle(row.before) - middle(row.atLimit) : 0;
}

/** A bar slides once from its old to its new place, unless the system asks for less motion. */
function Sliding({ byPx, children }: { byPx: number; children: ReactNode }) {
  const group = useRef<SVGGElement>(null);
  useLayoutEffect(() => {
    if (byPx === 0 || window.matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    group.current?.animate([{ transform: `translateX(${byPx}px)` }, { transform: 'none' }], {
      duration: 200,
      easing: 'ease-out',
    });
  }, [byPx]);
  return <g ref={group}>{children}</g>;
}
