import { Fragment, type KeyboardEvent, type ReactNode, type RefObject, useRef } from 'react';
import type { Finding } from '#core/contract/machine.ts';
import type { Gauge } from '#core/contract/shop.ts';
import { lengthUnit, sizeEcho, type Writing } from '#core/words/quantityText.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { useRowsSoFar } from '#renderer/controls/Later.tsx';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import { useWidth } from '../machines/useWidth.ts';
import { Asked } from './Asked.tsx';
import { type Box, boxAfter, boxesOf, boxKey, columnNames, columnsOf, type SheetRow, type Step } from './boxes.ts';
import { FindingStrip } from './FindingStrip.tsx';
import { GridRow } from './GridRow.tsx';
import { PartStrip } from './PartStrip.tsx';
import { likelyMm, type OpenQuestion, rowName } from './questions.ts';
import { SCALE_WIDTH_PX } from './RowScale.tsx';
import { isStopped, seenAt } from './seen.ts';
import {
  type FindingEntry,
  isBlank,
  isRenewed,
  NOT_RENEWED,
  type RenewedHow,
  type Sheet,
  type SizeEvent,
  worstTyped,
} from './sheet.ts';
import { typedSize } from './typedSize.ts';
import type { Judged } from './useJudged.ts';

export type GridProps = {
  rows: readonly SheetRow[];
  /** the boxes themselves, by key */
  inputs: RefObject<Map<string, HTMLInputElement>>;
  sheet: Sheet;
  event: SizeEvent;
  writing: Writing;
  gauges: readonly Gauge[];
  judged: Judged;
  open: readonly OpenQuestion[];
  inHand: OpenQuestion | null;
  openFindings: readonly Finding[];
  /** box being typed in: nothing is said of half a figure */
  typingKey: string | null;
  swapFrom: Box | null;
  /** row under which something seen is being entered */
  seeingRow: number | null;
  /** row whose part strip was asked for: what was renewed, and how */
  partRow: number | null;
  on: {
    text: (box: Box, text: string) => void;
    leave: (box: Box, decimals: number) => void;
    here: (box: Box) => void;
    focus: (box: Box) => void;
    /** Enter or Tab in the last box */
    end: () => void;
    swapWith: (box: Box) => void;
    gauge: (pointId: number, gaugeId: number) => void;
    answer: (open: OpenQuestion, choice: string) => void;
    see: (row: number | null) => void;
    addFinding: (finding: FindingEntry) => void;
    dropFinding: (at: number) => void;
    part: (row: number | null) => void;
    how: (pointId: number, how: Partial<RenewedHow>) => void;
    shim: (pointId: number, shimMm: number | null) => void;
    /** a letter pressed in a box; true: it meant something */
    letter: (box: Box, letter: string) => boolean;
  };
};

/** Rows that are drawn in one go. */
const FIRST_ROWS = 4;

const STEP_OF_KEY: Record<string, Step> = { Enter: 'next', ArrowDown: 'down', ArrowUp: 'up' };

/** The table of measuring points: type, Enter, type. A question opens under its row while the next box has the focus. */
export function Grid(props: GridProps) {
  const { rows, sheet, event, writing, on, judged } = props;
  const boxes = boxesOf(rows);
  const columns = columnsOf(rows);
  const questionedKeys = new Set(props.open.map(({ key }) => key));
  const worst = new Map(judged.worst.filter((w) => w.event === event).map((w) => [w.pointId, w.station]));
  const holder = useRef<HTMLDivElement>(null);
  const scaleWidth = scaleWidthOf(useWidth(holder), columns);
  const several = new Set(rows.map(({ assemblyId }) => assemblyId)).size > 1;

  // a draft taken up again begins at its first empty box, wherever that is
  const drawn = useRowsSoFar(rows.length, isBlank(sheet) ? FIRST_ROWS : rows.length);

  const focus = (box: Box | null) => (box ? on.focus(box) : on.end());
  const onKey = (box: Box, pressed: KeyboardEvent<HTMLInputElement>) => {
    const step = stepOf(pressed);
    if (pressed.key === 'Enter' && !pressed.ctrlKey && props.swapFrom) {
      pressed.preventDefault();
      on.swapWith(box);
    } else if (step) {
      const to = boxAfter(boxes, box, step);
      // at the grid's edges Tab goes on as it would; arrows stay
      if (pressed.key === 'Tab' && !to && pressed.shiftKey) return;
      pressed.preventDefault();
      if (to || step === 'next') focus(to);
    } else if (!pressed.ctrlKey && !pressed.metaKey && !pressed.altKey && on.letter(box, pressed.key)) {
      pressed.preventDefault();
    }
  };

  return (
    <div ref={holder}>
      <Across>
        <table className="bench-grid" style={{ ['--columns' as string]: columns }}>
          <colgroup>
            <col className="col-name" />
            {Array.from({ length: columns }, (_, i) => (
              <col key={i} className="col-box" />
            ))}
            <col className="col-gauge" />
            <col style={{ width: scaleWidth + 12 }} />
            <col />
          </colgroup>
          <thead>
            <tr>
              <th scope="col">{words.point(lengthUnit(writing))}</th>
              {columnNames(rows).map((names, i) => (
                <th key={i} scope="col" className="box-head">
                  <span>{event === 'as-found' ? words.last : words.found}</span>
                  <b>{stationHead(names)}</b>
                </th>
              ))}
              <th scope="col" className="gauge-head">
                {words.gauge}
              </th>
              <th scope="col" className="scale-head">
                <span className="new">{words.newSize}</span>
                <span className="limits">{words.reject}</span>
                <span className="limits">{words.renew}</span>
              </th>
              <th scope="col">{words.seen}</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, drawn).map((row, rowIndex) => {
              const name = rowName(row, rows);
              const atPosition = seenAt(row.positionId, props.openFindings, sheet.findings);
              const firstOfPosition = rows.findIndex(({ positionId }) => positionId === row.positionId) === rowIndex;
              const firstOfAssembly = rows.findIndex(({ assemblyId }) => assemblyId === row.assemblyId) === rowIndex;
              return (
                <Fragment key={row.pointId}>
                  {several && firstOfAssembly && (
                    <Wide columns={columns + 4} className="assembly-head">
                      {row.assembly}
                    </Wide>
                  )}
                  <GridRow
                    row={row}
                    rowIndex={rowIndex}
                    name={name}
                    sheet={sheet}
                    event={event}
                    writing={writing}
                    columns={columns}
                    scaleWidth={scaleWidth}
                    gauges={props.gauges}
                    worstStation={worst.get(row.pointId) ?? worstTyped(sheet, event, row)}
                    questionedKeys={questionedKeys}
                    swapFrom={props.swapFrom ? boxKey(props.swapFrom.pointId, props.swapFrom.station) : null}
                    seen={firstOfPosition ? atPosition : null}
                    stopped={isStopped(atPosition)}
                    boxRef={(key) => (box) => {
                      if (box) props.inputs.current.set(key, box);
                      else props.inputs.current.delete(key);
                    }}
                    on={{
                      text: on.text,
                      focus: on.here,
                      key: onKey,
                      leave: (box) => on.leave(box, row.decimals),
                      gauge: on.gauge,
                      addSeen: () => on.see(rowIndex),
                      dropSeen: on.dropFinding,
                    }}
                  />
                  <AskedUnder row={row} rowIndex={rowIndex} columns={columns + 4} {...props} />
                  <NotSizes row={row} sheet={sheet} event={event} columns={columns + 4} typingKey={props.typingKey} />
                  {(props.partRow === rowIndex || hasPartStrip(sheet, row)) && (
                    <Wide columns={columns + 4} className="part-row">
                      <PartStrip
                        row={row}
                        name={name}
                        renewed={sheet.renewed[row.pointId] ?? NOT_RENEWED}
                        shimMm={sheet.shims[row.pointId] ?? null}
                        asked={judged.renewalQuestions.filter(({ pointId }) => pointId === row.pointId)}
                        writing={writing}
                        asksFocus={props.partRow === rowIndex}
                        onHow={(how) => on.how(row.pointId, how)}
                        onShim={(shimMm) => on.shim(row.pointId, shimMm)}
                        onLeave={() => {
                          on.part(null);
                          focus(boxes.find((box) => box.row === rowIndex) ?? null);
                        }}
                      />
                    </Wide>
                  )}
                  {props.seeingRow === rowIndex && (
                    <Wide columns={columns + 4} className="seeing">
                      <FindingStrip
                        assemblyId={row.assemblyId}
                        positionId={row.positionId}
                        position={`${row.item} ${row.position}`}
                        onAdd={(finding) => {
                          on.addFinding(finding);
                          focus(boxes.find((box) => box.row === rowIndex) ?? null);
                        }}
                        onLeave={() => {
                          on.see(null);
                          focus(boxes.find((box) => box.row === rowIndex) ?? null);
                        }}
                      />
                    </Wide>
                  )}
                </Fragment>
              );
            })}
          </tbody>
        </table>
      </Across>
    </div>
  );
}

/** What was renewed or packed stays in sight. */
const hasPartStrip = ({ renewed, shims }: Sheet, { pointId }: SheetRow): boolean =>
  isRenewed(renewed[pointId] ?? NOT_RENEWED) || shims[pointId] !== undefined;

/** Everything of a row beside its boxes and its scale [px]: name, gauge, and room for what was seen. */
const REST_PX = 258 + 160 + 12 + 240;
const BOX_PX = 146;

/** A wider window lengthens the scale, once what was seen has its room. */
const scaleWidthOf = (widthPx: number, columns: number): number =>
  Math.min(SCALE_WIDTH_PX.most, Math.max(SCALE_WIDTH_PX.least, widthPx - REST_PX - columns * BOX_PX));

/** The first open question of a row; the others of it wait their turn, counted. */
function AskedUnder({
  row,
  rowIndex,
  columns,
  open,
  inHand,
  writing,
  on,
}: GridProps & { row: SheetRow; rowIndex: number; columns: number }) {
  const ofRow = open.filter(({ box }) => box.row === rowIndex);
  const asked = ofRow[0];
  if (!asked) return null;
  const likely = likelyMm(asked.question);
  return (
    <Asked
      key={`${asked.key} ${asked.question.code}`}
      id={`under-${asked.key}`}
      question={asked.question}
      context={{ writing, decimals: row.decimals, gaugeErrorMm: row.gaugeErrorMm, measures: row.measures }}
      column={asked.box.column}
      columns={columns}
      more={ofRow.length - 1}
      inHand={asked === inHand}
      take={likely === null ? null : words.take(sizeEcho(round(likely, row.decimals), row.decimals, writing))}
      onAnswer={(choice) => on.answer(asked, choice)}
    />
  );
}

function stepOf(pressed: KeyboardEvent<HTMLInputElement>): Step | null {
  if (pressed.ctrlKey || pressed.metaKey || pressed.altKey) return null;
  if (pressed.key === 'Tab') return pressed.shiftKey ? 'previous' : 'next';
  if (pressed.key === 'Enter' && pressed.shiftKey) return 'previous';
  const box = pressed.currentTarget;
  const whole = box.selectionStart === 0 && box.selectionEnd === box.value.length;
  // arrows move in a half-typed figure until its end is met
  if (pressed.key === 'ArrowLeft') return whole || box.selectionEnd === 0 ? 'left' : null;
  if (pressed.key === 'ArrowRight') return whole || box.selectionStart === box.value.length ? 'right' : null;
  return STEP_OF_KEY[pressed.key] ?? null;
}

const round = (sizeMm: number, decimals: number): number => Math.round(sizeMm * 10 ** decimals) / 10 ** decimals;

/** "Front or A": the stations of a column; more than three are not all named. */
function stationHead(names: readonly string[]): string {
  const head = names.length > 2 ? names.slice(0, 3).join(', ') : names.join(' or ');
  return head.charAt(0).toUpperCase() + head.slice(1);
}

const Wide = ({ columns, className, children }: { columns: number; className: string; children: ReactNode }) => (
  <tr className={className}>
    <td colSpan={columns}>{children}</td>
  </tr>
);

/** What was typed and reads as no size, said under its row. */
function NotSizes({
  row,
  sheet,
  event,
  columns,
  typingKey,
}: {
  row: SheetRow;
  sheet: Sheet;
  event: SizeEvent;
  columns: number;
  typingKey: string | null;
}) {
  const texts = row.stations.flatMap(({ station }) => {
    const key = boxKey(row.pointId, station);
    const text = sheet.texts[event][key] ?? '';
    const typed = typedSize(text, sheet.writing);
    return typed.state === 'not-a-size' && key !== typingKey ? [{ key, text, why: typed.why }] : [];
  });
  return texts.map(({ key, text, why }) => (
    <Wide key={key} columns={columns} className="not-size-row">
      <div id={`under-${key}`} role="status">
        <b>{`"${text.trim()}": ${words.notASize(why, sheet.writing)}`}</b> {words.stays}
      </div>
    </Wide>
  ));
}
