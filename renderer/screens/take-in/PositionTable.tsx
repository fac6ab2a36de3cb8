import { Fragment, type KeyboardEvent, type ReactNode, useId } from 'react';
import { lengthUnit } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { useWriting } from '#renderer/record.tsx';
import { measuresWords } from '#renderer/words/stripDownWords.ts';
import { remarkText, takeInWords as words } from '#renderer/words/takeInWords.ts';
import { withoutPoint, withPoint, withPointAdded, withPosition, withPositionAdded } from './edit.ts';
import { type PointForm, type PositionForm, usualWay } from './form.ts';
import type { Remark } from './request.ts';
import './position-table.css';

const columns = words.columns;
type Measures = PointForm['measures'];
const MEASURES = Object.keys(measuresWords) as Measures[];

export type PositionTableProps = {
  /** of the assembly or kind, for the table's name */
  name: string;
  /** "assemblies.0": what the remarks' paths begin with */
  path: string;
  positions: readonly PositionForm[];
  partClasses: readonly string[];
  remarks: readonly Remark[];
  onChange: (positions: PositionForm[]) => void;
  /** the item whose row is being typed in, for the drawing beside the table */
  onItem?: (itemText: string) => void;
  /** with the column of what goes together when half an assembly is swapped: of kinds */
  groups?: boolean;
};

/** Positions and points of an assembly, as a table to type in: every figure of it may be changed. */
export function PositionTable(props: PositionTableProps) {
  const { name, path, positions, partClasses, remarks, onChange, onItem, groups = false } = props;
  const writing = useWriting();
  const classes = useId();
  return (
    <div className="position-table">
      <datalist id={classes}>
        {partClasses.map((partClass) => (
          <option key={partClass} value={partClass} />
        ))}
      </datalist>
      <table onKeyDown={toNextRow}>
        <caption className="said">{words.tableOf(name)}</caption>
        <Head groups={groups} unit={lengthUnit(writing)} />
        <tbody>
          {positions.map((position, i) => (
            <Fragment key={position.id}>
              {rowsOf(position).map((point, j) => (
                <Row
                  key={point?.id ?? position.id}
                  position={position}
                  point={point}
                  first={j === 0}
                  last={j === rowsOf(position).length - 1}
                  at={`${path}.positions.${i}`}
                  pointAt={`${path}.positions.${i}.points.${j}`}
                  remarks={remarks}
                  classes={classes}
                  groups={groups}
                  onPosition={(next) => onChange(withPosition(positions, i, next))}
                  onPoint={(next) => onChange(withPoint(positions, i, j, next))}
                  onAddPoint={() => onChange(withPointAdded(positions, i, writing))}
                  onDropPoint={position.points.length > 1 ? () => onChange(withoutPoint(positions, i, j)) : null}
                  onHere={() => onItem?.(position.itemText)}
                />
              ))}
            </Fragment>
          ))}
        </tbody>
      </table>
      <Remarked paths={[`${path}.positions`]} remarks={remarks} />
      <div className="position-foot">
        <Key onPress={() => onChange(withPositionAdded(positions, writing))}>{words.addPosition}</Key>
        <p>
          {words.foot} {words.limitsNote}
        </p>
      </div>
    </div>
  );
}

/** A position at which nothing is measured still has its row. */
const rowsOf = (position: PositionForm): readonly (PointForm | null)[] =>
  position.points.length === 0 ? [null] : position.points;

const Head = ({ groups, unit }: { groups: boolean; unit: string }) => (
  <thead>
    <tr>
      <th scope="col" className="w-in">
        {columns.in}
      </th>
      <th scope="col" className="w-item">
        {columns.item}
      </th>
      <th scope="col" className="w-position">
        {columns.position}
      </th>
      {groups && (
        <th scope="col" className="w-group">
          {columns.group}
        </th>
      )}
      <th scope="col" className="w-safety">
        {columns.safety}
      </th>
      <th scope="col" className="w-safety" title={words.mustStayStandardHint}>
        {columns.mustStayStandard}
      </th>
      <th scope="col" className="w-point">
        {columns.point}
      </th>
      <th scope="col" className="w-measures">
        {columns.measures}
      </th>
      <th scope="col" className="w-class">
        {columns.partClass}
      </th>
      {(['newSize', 'newSizeTol', 'renewAt', 'rejectAt'] as const).map((column) => (
        <th key={column} scope="col" className="w-figure figures">
          {`${columns[column]}, ${unit}`}
        </th>
      ))}
      <th scope="col" className="w-source">
        {columns.source}
      </th>
      <th scope="col" className="w-figure figures">
        {`${columns.gauge}, ${unit}`}
      </th>
      <th scope="col" className="w-stations">
        {columns.stations}
      </th>
      <th scope="col" className="w-joint" title={words.jointHint}>
        {columns.joint}
      </th>
      <th scope="col" className="w-keys">
        <span className="said">{words.addPoint}</span>
      </th>
    </tr>
  </thead>
);

type RowProps = {
  position: PositionForm;
  point: PointForm | null;
  first: boolean;
  last: boolean;
  at: string;
  pointAt: string;
  remarks: readonly Remark[];
  classes: string;
  groups: boolean;
  onPosition: (next: Partial<PositionForm>) => void;
  onPoint: (next: Partial<PointForm>) => void;
  onAddPoint: () => void;
  onDropPoint: (() => void) | null;
  onHere: () => void;
};

function Row(props: RowProps) {
  const { position, point, first, at, pointAt, remarks, groups, onPosition } = props;
  const said = `${position.itemText} ${position.name}${first || !point ? '' : `, ${point.name}`}`;
  const out = position.leftOut;
  const field: Field = (column, path, value, onValue, more = {}) => (
    <td className={more.className}>
      <input
        className="cell"
        data-path={path}
        data-column={column}
        aria-label={words.cell(columns[column], said)}
        aria-invalid={remarks.some((remark) => remark.path === path) || undefined}
        value={value}
        disabled={out}
        list={more.list}
        autoComplete="off"
        onChange={(event) => onValue(event.target.value)}
      />
    </td>
  );
  return (
    <>
      <tr className={[first && 'first', out && 'left-out'].filter(Boolean).join(' ')} onFocus={props.onHere}>
        {first ? (
          <>
            <td className="tick">
              <input
                type="checkbox"
                className="tick-box"
                data-column="in"
                aria-label={words.leaveIn(said)}
                checked={!out}
                onChange={(event) => onPosition({ leftOut: !event.target.checked })}
              />
            </td>
            {field('item', `${at}.item`, position.itemText, (itemText) => onPosition({ itemText }), FIGURES)}
            {field('position', `${at}.name`, position.name, (name) => onPosition({ name }))}
            {groups && field('group', `${at}.group`, position.group, (group) => onPosition({ group }))}
            <td className="tick">
              <input
                type="checkbox"
                className="tick-box"
                data-column="safety"
                aria-label={words.cell(columns.safety, said)}
                checked={position.safety}
                disabled={out}
                onChange={(event) => onPosition({ safety: event.target.checked })}
              />
            </td>
            <td className="tick">
              <input
                type="checkbox"
                className="tick-box"
                data-column="mustStayStandard"
                aria-label={words.cell(columns.mustStayStandard, said)}
                checked={position.mustStayStandard}
                disabled={out}
                onChange={(event) => onPosition({ mustStayStandard: event.target.checked })}
              />
            </td>
          </>
        ) : (
          <td colSpan={groups ? 6 : 5} />
        )}
        {point ? <PointCells {...props} point={point} field={field} said={said} /> : <td colSpan={11} />}
        <td className="row-keys">
          {props.last && (
            <button
              type="button"
              disabled={out}
              aria-label={words.cell(words.addPoint, said)}
              title={words.addPoint}
              onClick={props.onAddPoint}
            >
              +
            </button>
          )}
          {props.onDropPoint && (
            <button
              type="button"
              disabled={out}
              aria-label={words.cell(words.dropPoint, said)}
              title={words.dropPoint}
              onClick={props.onDropPoint}
            >
              <svg width="10" height="10" aria-hidden="true">
                <path d="M1 1l8 8M9 1l-8 8" stroke="currentColor" strokeWidth="1.6" />
              </svg>
            </button>
          )}
        </td>
      </tr>
      <RemarkRow at={at} pointAt={pointAt} first={first} remarks={remarks} />
    </>
  );
}

type Field = (
  column: keyof typeof columns,
  path: string,
  value: string,
  onValue: (text: string) => void,
  more?: { className?: string; list?: string },
) => ReactNode;

const FIGURES = { className: 'figures' };

function PointCells({
  position,
  point,
  pointAt,
  classes,
  said,
  field,
  onPoint,
}: RowProps & { point: PointForm; said: string; field: Field }) {
  const out = position.leftOut;
  return (
    <>
      {field('point', `${pointAt}.name`, point.name, (name) => onPoint({ name }))}
      <td>
        <div className="measures">
          <select
            className="cell"
            data-column="measures"
            aria-label={words.cell(columns.measures, said)}
            value={point.measures}
            disabled={out}
            onChange={(event) => {
              const measures = event.target.value as Measures;
              onPoint({ measures, wears: usualWay(measures) });
            }}
          >
            {MEASURES.map((measures) => (
              <option key={measures} value={measures}>
                {measuresWords[measures]}
              </option>
            ))}
          </select>
          <select
            className="cell wears"
            data-column="wears"
            aria-label={words.cell(columns.wears, said)}
            value={point.wears}
            disabled={out}
            onChange={(event) => onPoint({ wears: event.target.value as PointForm['wears'] })}
          >
            <option value="down">{words.wears.down}</option>
            <option value="up">{words.wears.up}</option>
          </select>
        </div>
      </td>
      {field('partClass', `${pointAt}.partClass`, point.partClass, (partClass) => onPoint({ partClass }), {
        list: classes,
      })}
      {field('newSize', `${pointAt}.newSize`, point.newSizeText, (newSizeText) => onPoint({ newSizeText }), FIGURES)}
      {field(
        'newSizeTol',
        `${pointAt}.newSizeTol`,
        point.newSizeTolText,
        (newSizeTolText) => onPoint({ newSizeTolText }),
        FIGURES,
      )}
      {field('renewAt', `${pointAt}.renewAt`, point.renewAtText, (renewAtText) => onPoint({ renewAtText }), FIGURES)}
      {field(
        'rejectAt',
        `${pointAt}.rejectAt`,
        point.rejectAtText,
        (rejectAtText) => onPoint({ rejectAtText }),
        FIGURES,
      )}
      {field('source', `${pointAt}.limitSource`, point.limitSource, (limitSource) => onPoint({ limitSource }))}
      {field(
        'gauge',
        `${pointAt}.gaugeError`,
        point.gaugeErrorText,
        (gaugeErrorText) => onPoint({ gaugeErrorText }),
        FIGURES,
      )}
      {field('stations', `${pointAt}.stations`, point.stationsText, (stationsText) => onPoint({ stationsText }))}
      {field('joint', `${pointAt}.joint`, point.jointText, (jointText) => onPoint({ jointText }))}
    </>
  );
}

/** What stands in the way of a row, said under it. */
function RemarkRow({
  at,
  pointAt,
  first,
  remarks,
}: {
  at: string;
  pointAt: string;
  first: boolean;
  remarks: readonly Remark[];
}) {
  const own = remarks.filter(
    ({ path }) => path.startsWith(`${pointAt}.`) || (first && (path === `${at}.item` || path === `${at}.name`)),
  );
  if (own.length === 0) return null;
  return (
    <tr className="remark-row">
      <td colSpan={17}>
        <Remarked paths={own.map(({ path }) => path)} remarks={own} named />
      </td>
    </tr>
  );
}

function Remarked({ paths, remarks, named = false }: { paths: string[]; remarks: readonly Remark[]; named?: boolean }) {
  const writing = useWriting();
  const own = remarks.filter(({ path }) => paths.includes(path));
  if (own.length === 0) return null;
  return (
    <p className="remark" role="alert">
      {own.map(({ path, why, facts }) => {
        const column = columnOf(path);
        return (
          <span key={`${path} ${why}`}>
            {named && column && <b>{`${columns[column]}: `}</b>}
            {`${remarkText(why, facts, writing)}. `}
          </span>
        );
      })}
    </p>
  );
}

const COLUMN_OF_FIELD: Record<string, keyof typeof columns> = {
  limitSource: 'source',
  gaugeError: 'gauge',
};

function columnOf(path: string): keyof typeof columns | null {
  const field = path.split('.').at(-1) ?? '';
  if (field === 'name') return path.includes('.points.') ? 'point' : 'position';
  const column = COLUMN_OF_FIELD[field] ?? field;
  return column in columns ? (column as keyof typeof columns) : null;
}

/** Enter and the up and down arrows keep the column; a shorter row (a second point) is skipped where it has none. */
function toNextRow(event: KeyboardEvent<HTMLTableElement>): void {
  const { target } = event;
  if (!(target instanceof HTMLInputElement) || event.ctrlKey || event.altKey || event.metaKey) return;
  const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' || event.key === 'Enter' ? 1 : 0;
  if (by === 0 || (target.hasAttribute('list') && event.key !== 'Enter')) return;
  const column = [...event.currentTarget.querySelectorAll<HTMLElement>(`[data-column="${target.dataset.column}"]`)];
  const to = column[column.indexOf(target) + by];
  event.preventDefault();
  if (to instanceof HTMLInputElement) {
    to.focus();
    if (to.type !== 'checkbox') to.select();
  }
}
