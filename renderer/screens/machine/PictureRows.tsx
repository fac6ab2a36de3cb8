import { type KeyboardEvent, useEffect, useId, useRef } from 'react';
import { shortenMiddle } from '#core/axis/textWidth.ts';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { forecastSentence, ringWords } from '#renderer/words/markWords.ts';
import { pictureWords } from '#renderer/words/pictureWords.ts';
import { Ground } from './Ground.tsx';
import { ASSEMBLY_HEAD_PX, type PictureLayout, ROWS_TOP_PX, rowName, rowPlaces } from './pictureLayout.ts';
import type { PictureProps, PictureRow } from './pictureProps.ts';
import { RowFigures } from './RowFigures.tsx';
import { RowMarks } from './RowMarks.tsx';

/** The rows: name and ring, marks on the axis, figures. A list to be chosen from by arrows, item number or pointer. */
export function PictureRows({
  props,
  layout,
  sightPx,
}: {
  props: PictureProps;
  layout: PictureLayout;
  /** so much of them is in sight before they are scrolled */
  sightPx: number;
}) {
  const { rows, chosenId } = props;
  const listId = useId();
  const list = useRef<HTMLDivElement>(null);
  const { tops, heightPx } = rowPlaces(rows, layout);
  const chosenAt = rows.findIndex((row) => row.pointId === chosenId);
  const stood = useRef(false);
  useEffect(() => {
    // drawn in sight it is left there, and nothing is measured for it
    const inSight = !stood.current && (tops[chosenAt] ?? 0) + layout.rowPx <= sightPx;
    const row = list.current?.querySelectorAll<HTMLElement>('[role="option"]')[chosenAt];
    if (row && !inSight) intoSight(row, stood.current);
    stood.current = true;
  }, [chosenAt]);

  const onKeyDown = (event: KeyboardEvent) => {
    const to = keyTarget(event.key, chosenAt, rows.length);
    if (event.key === 'Enter' && chosenId !== null) props.onOpen?.(chosenId);
    const row = to === null ? undefined : rows[to];
    if (!row) return;
    event.preventDefault();
    props.onChoose(row.pointId);
  };
  return (
    <div className="picture-rows" style={{ height: heightPx, width: layout.widthPx }}>
      <Picture width={layout.widthPx} height={heightPx} label={null} className="picture-ground">
        <Washes rows={rows} tops={tops} chosenAt={chosenAt} layout={layout} />
        {props.nowHours !== null && <RowsGround props={props} layout={layout} tops={tops} heightPx={heightPx} />}
      </Picture>
      <div
        ref={list}
        className="picture-list"
        role="listbox"
        aria-label={pictureWords.picture}
        tabIndex={0}
        aria-activedescendant={chosenAt < 0 ? undefined : `${listId}-${chosenAt}`}
        onKeyDown={onKeyDown}
      >
        {rows.map((row, i) => (
          <Row key={row.pointId} row={row} top={tops[i] ?? 0} id={`${listId}-${i}`} props={props} layout={layout} />
        ))}
      </div>
      {rows.map((row, i) =>
        row.assemblyHead === undefined ? null : (
          <div key={row.pointId} className="assembly-head" style={{ top: (tops[i] ?? 0) - ASSEMBLY_HEAD_PX }}>
            {row.assemblyHead}
          </div>
        ),
      )}
    </div>
  );
}

/** Scrolls the rows' own box; the page itself only once somebody has moved along the rows. */
function intoSight(row: HTMLElement, moved: boolean): void {
  const box = row.closest('.picture-scroll');
  if (!box) return;
  if (box.scrollHeight <= box.clientHeight + 1) {
    if (moved) row.scrollIntoView({ block: 'nearest' });
    return;
  }
  const top = row.offsetTop - ROWS_TOP_PX;
  const bottom = row.offsetTop + row.offsetHeight;
  box.scrollTop = Math.max(bottom - box.clientHeight, Math.min(box.scrollTop, top));
}

function keyTarget(key: string, at: number, count: number): number | null {
  if (key === 'ArrowDown') return Math.min(count - 1, at + 1);
  if (key === 'ArrowUp') return Math.max(0, at - 1);
  if (key === 'Home') return 0;
  return key === 'End' ? count - 1 : null;
}

/** In a narrow picture names and figures stand over the axis: winters then run under the bars only. */
function RowsGround({
  props,
  layout,
  tops,
  heightPx,
}: {
  props: PictureProps;
  layout: PictureLayout;
  tops: readonly number[];
  heightPx: number;
}) {
  if (layout.kind === 'wide') return <Ground props={props} layout={layout} y0={0} y1={heightPx} />;
  return props.rows.map((row, i) => {
    const bottom = (tops[i] ?? 0) + layout.rowPx;
    return <Ground key={row.pointId} props={props} layout={layout} y0={bottom - 28} y1={bottom} />;
  });
}

function Washes({
  rows,
  tops,
  chosenAt,
  layout,
}: {
  rows: readonly PictureRow[];
  tops: readonly number[];
  chosenAt: number;
  layout: PictureLayout;
}) {
  const { rowPx, widthPx, kind } = layout;
  const chosenTop = tops[chosenAt];
  return (
    <>
      {chosenTop !== undefined && (
        <>
          <rect className="chosen-wash" x={0} y={chosenTop} width={widthPx} height={rowPx} />
          <rect className="chosen-edge" x={0} y={chosenTop} width={5} height={rowPx} />
        </>
      )}
      {rows.map((row, i) =>
        i > 0 && (row.opensGroup || kind === 'narrow') ? (
          <path key={row.pointId} className="l-hair" d={`M14 ${tops[i]}H${widthPx - 14}`} />
        ) : null,
      )}
    </>
  );
}

function Row({
  row,
  top,
  id,
  props,
  layout,
}: {
  row: PictureRow;
  top: number;
  id: string;
  props: PictureProps;
  layout: PictureLayout;
}) {
  const chosen = row.pointId === props.chosenId;
  const said = forecastSentence(
    { ...row, doNotUse: row.doNotUse, pastLimitMm: row.pastLimit?.mm ?? null },
    props.writing,
  );
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: keys are taken by the list, which keeps the focus
    <div
      id={id}
      role="option"
      tabIndex={-1}
      aria-selected={chosen}
      className={`picture-row ${layout.kind}`}
      style={{ top, height: layout.rowPx }}
      onClick={() => props.onChoose(row.pointId)}
      onDoubleClick={() => props.onOpen?.(row.pointId)}
    >
      <span className="said">{`${said}; ${ringWords[row.state]}`}</span>
      <div
        className="row-name"
        aria-hidden="true"
        style={{ width: layout.kind === 'wide' ? layout.leftPx - 14 : undefined }}
      >
        <RingSign item={row.item} state={row.state} />
        <span className={chosen ? 'name chosen' : 'name'} title={rowName(row)}>
          {shortenMiddle(rowName(row), layout.nameRoomPx, 14)}
        </span>
      </div>
      {props.nowHours !== null && <RowMarks row={row} props={props} layout={layout} />}
      <RowFigures row={row} layout={layout} placed={props.nowHours !== null} />
    </div>
  );
}
