import type { KeyboardEvent } from 'react';
import type { Gauge } from '#core/contract/shop.ts';
import { gaugeErrorFigure, lengthUnit, limitFigure, sizeEcho, type Writing } from '#core/words/quantityText.ts';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { renewalWords } from '#renderer/words/renewalWords.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import { type Box, boxKey, type SheetRow } from './boxes.ts';
import { RowScale } from './RowScale.tsx';
import { Seen } from './Seen.tsx';
import { SizeBox } from './SizeBox.tsx';
import type { SeenAt } from './seen.ts';
import { NOT_RENEWED, type Sheet, type SizeEvent } from './sheet.ts';
import { typedSize } from './typedSize.ts';

export type GridRowProps = {
  row: SheetRow;
  rowIndex: number;
  name: string;
  sheet: Sheet;
  event: SizeEvent;
  writing: Writing;
  columns: number;
  /** of the scale's drawing [px] */
  scaleWidth: number;
  gauges: readonly Gauge[];
  worstStation: string | null;
  questionedKeys: ReadonlySet<string>;
  swapFrom: string | null;
  /** null: the position's findings stand on a row above */
  seen: SeenAt | null;
  stopped: boolean;
  boxRef: (key: string) => (box: HTMLInputElement | null) => void;
  on: {
    text: (box: Box, text: string) => void;
    focus: (box: Box) => void;
    leave: (box: Box) => void;
    key: (box: Box, event: KeyboardEvent<HTMLInputElement>) => void;
    gauge: (pointId: number, gaugeId: number) => void;
    addSeen: () => void;
    dropSeen: (at: number) => void;
  };
};

/** A measuring point: its ring and name, a box a station, its gauge, its scale, and what was seen at its position. */
export function GridRow(props: GridRowProps) {
  const { row, sheet, event, writing } = props;
  const renewed = sheet.renewed[row.pointId] ?? NOT_RENEWED;
  const label = `${row.item} ${props.name}`;
  const worst = props.worstStation;
  return (
    <tr className="grid-row">
      <th scope="row">
        <div>
          <RingSign item={row.item} state={props.stopped ? 'stop' : 'leave'} />
          <span className="bench-name">
            {props.name}
            {row.oversize && (
              <small className="bench-standard">
                {renewalWords.oversizeShort(limitFigure(row.oversize.standardMm, writing), row.oversize.stamped)}
              </small>
            )}
          </span>
        </div>
      </th>
      {row.stations.map(({ station }, column) => {
        const key = boxKey(row.pointId, station);
        const box: Box = { pointId: row.pointId, station, row: props.rowIndex, column };
        const text = sheet.texts[event][key] ?? '';
        const typed = typedSize(text, writing);
        const questioned = props.questionedKeys.has(key);
        return (
          <SizeBox
            key={key}
            label={[label, station].filter(Boolean).join(', ')}
            reference={reference(row, column, sheet, event, writing)}
            text={text}
            worst={worst === station && typed.state === 'size'}
            questioned={questioned}
            notASize={typed.state === 'not-a-size' ? typed.why : null}
            swapping={props.swapFrom === key}
            describedBy={questioned || typed.state === 'not-a-size' ? `under-${key}` : undefined}
            boxRef={props.boxRef(key)}
            onText={(now) => props.on.text(box, now)}
            onFocus={() => props.on.focus(box)}
            onLeave={() => props.on.leave(box)}
            onKey={(pressed) => props.on.key(box, pressed)}
          />
        );
      })}
      {Array.from({ length: props.columns - row.stations.length }, (_, i) => (
        <td key={`none-${i}`} className="no-box" />
      ))}
      <td className="gauge-cell">
        <GaugePick {...props} name={label} />
      </td>
      <td className="scale-cell">
        <RowScale
          row={row}
          width={props.scaleWidth}
          lastMm={renewed.sinceLast ? null : lastGoverning(row)}
          foundMm={worst === null ? null : sizeAt(sheet, event, boxKey(row.pointId, worst))}
        />
      </td>
      <td>
        <Seen
          position={row.position}
          seen={props.seen}
          renewed={renewed}
          onAdd={props.on.addSeen}
          onDrop={props.on.dropSeen}
        />
      </td>
    </tr>
  );
}

function GaugePick({ row, sheet, gauges, writing, name, on }: GridRowProps) {
  const fitting = gauges.filter(({ active, measures }) => active && measures.includes(row.measures));
  const chosen = sheet.gauges[row.pointId] ?? row.gaugeId;
  const gauge = gauges.find(({ gaugeId }) => gaugeId === chosen);
  const shown = gauge
    ? { name: gauge.name, error: gaugeErrorFigure(gauge.errorMm, writing) }
    : { name: row.gauge, error: gaugeErrorFigure(row.gaugeErrorMm, writing) };
  return (
    <div className="gauge-pick">
      <span aria-hidden="true" title={`${shown.name} ${shown.error}`}>
        <span className="gauge-name">{shown.name}</span>
        {shown.error}
      </span>
      <select
        data-gauge-of={row.pointId}
        aria-label={words.gaugeOf(name)}
        tabIndex={-1}
        value={chosen ?? ''}
        onChange={(event) => on.gauge(row.pointId, Number(event.target.value))}
      >
        {!fitting.some(({ gaugeId }) => gaugeId === chosen) && (
          <option value={chosen ?? ''}>{`${shown.name} ${shown.error}`}</option>
        )}
        {fitting.map((one) => (
          <option key={one.gaugeId} value={one.gaugeId}>
            {`${one.name} ${gaugeErrorFigure(one.errorMm, writing)}`}
          </option>
        ))}
      </select>
    </div>
  );
}

const sizeAt = (sheet: Sheet, event: SizeEvent, key: string): number | null => {
  const typed = typedSize(sheet.texts[event][key] ?? '', sheet.writing);
  return typed.state === 'size' ? typed.sizeMm : null;
};

/** What a box is read against: as found, the last size there; as left, what was found today; else the new size. */
function reference(row: SheetRow, column: number, sheet: Sheet, event: SizeEvent, writing: Writing) {
  const at = row.stations[column];
  const renewed = sheet.renewed[row.pointId] ?? NOT_RENEWED;
  const found = at ? sizeAt(sheet, 'as-found', boxKey(row.pointId, at.station)) : null;
  const isNew = event === 'as-left' ? renewed.now : renewed.sinceLast;
  const lastMm = isNew ? null : event === 'as-left' && found !== null ? found : (at?.lastSizeMm ?? null);
  if (lastMm === null) {
    const newSize = limitFigure(row.limits.newSizeMm, writing);
    return { said: words.newOf(newSize, lengthUnit(writing)), shown: newSize, isNew: true };
  }
  const last = sizeEcho(lastMm, row.decimals, writing);
  return { said: words.lastOf(last, lengthUnit(writing)), shown: last, isNew: false };
}

/** The last visit's worst size, for the open dot; null: the present part was never measured. */
function lastGoverning(row: SheetRow): number | null {
  const sizes = row.stations.map(({ lastSizeMm }) => lastSizeMm).filter((mm) => mm !== null);
  if (sizes.length === 0) return null;
  return row.wears === 'down' ? Math.min(...sizes) : Math.max(...sizes);
}
