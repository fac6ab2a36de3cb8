import { type CSSProperties, type RefObject, useLayoutEffect, useRef, useState } from 'react';
import { Later } from '#renderer/controls/Later.tsx';
import { pictureWords } from '#renderer/words/pictureWords.ts';
import { PictureFoot, PLAN_WORDS_PX } from './PictureFoot.tsx';
import { HEAD_PX, PictureHead } from './PictureHead.tsx';
import { PictureRows } from './PictureRows.tsx';
import { pictureLayout, ROWS_TOP_PX, rowPlaces } from './pictureLayout.ts';
import type { PictureProps } from './pictureProps.ts';
import { useItemNumber } from './useItemNumber.ts';
import './machine-picture.css';

const LEAST_CHART_PX = 210;
const MOST_CHART_PX = 640;
/** Rows that stay in sight beside the chart before they scroll. */
const LEAST_ROWS = 6;

/**
 * The picture at the centre: all parts of a machine on one hours axis, the chosen one's wear under it on the same hours.
 * It fills what it is given: a wider window lengthens the rule, a taller one shows more rows and a taller chart.
 */
export function MachinePicture(props: PictureProps) {
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box);
  useItemNumber(props.rows, props.chosenId, props.onChoose);
  return (
    <div ref={box} className="machine-picture">
      {size && <Parts props={props} widthPx={size.width} heightPx={size.height} />}
    </div>
  );
}

function Parts({ props, widthPx, heightPx }: { props: PictureProps; widthPx: number; heightPx: number }) {
  const layout = pictureLayout(props, widthPx);
  // no row is cut through
  const wholeRows = (px: number) => ROWS_TOP_PX + Math.floor((px - ROWS_TOP_PX) / layout.rowPx) * layout.rowPx;
  const { tops, heightPx: rowsPx } = rowPlaces(props.rows, layout);
  const roomPx = heightPx - HEAD_PX;
  const chartPx = Math.min(MOST_CHART_PX, Math.max(LEAST_CHART_PX, roomPx - rowsPx - PLAN_WORDS_PX));
  const footPx = (props.chosen || props.sketch ? chartPx : 0) + PLAN_WORDS_PX;
  const scrollPx = Math.min(rowsPx, Math.max(wholeRows(LEAST_ROWS * layout.rowPx), wholeRows(roomPx - footPx)));
  return (
    <>
      <PictureHead props={props} layout={layout} />
      {props.nowHours === null && <p className="no-hours">{pictureWords.noHoursYet}</p>}
      <div className="picture-scroll" style={{ '--rows-high': `${scrollPx}px` } as CSSProperties}>
        <PictureRows props={props} layout={layout} sightPx={scrollPx} />
      </div>
      {scrollPx < rowsPx && (
        <p className="rows-in-sight">
          {pictureWords.inSight(tops.filter((top) => top + layout.rowPx <= scrollPx).length, tops.length)}
        </p>
      )}
      <Later meanwhile={<div style={{ height: footPx }} />}>
        <PictureFoot props={props} layout={layout} heightPx={footPx} />
      </Later>
    </>
  );
}

function useSize(box: RefObject<HTMLDivElement | null>): { width: number; height: number } | null {
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = () => {
      const [width, height] = [Math.floor(element.clientWidth), Math.floor(element.clientHeight)];
      setSize((was) => (was?.width === width && was.height === height ? was : { width, height }));
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, [box]);
  return size;
}
