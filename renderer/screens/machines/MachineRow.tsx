import { memo, type ReactNode } from 'react';
import type { MachineLine } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { hoursLeftFigure, whenText } from '#core/words/quantityText.ts';
import { useWriting } from '#renderer/record.tsx';
import { shared } from '#renderer/words/english.ts';
import {
  basisLine,
  foundText,
  hoursNowText,
  lineSentence,
  machinesWords,
  missingText,
  ownerText,
  pointName,
  readText,
} from '#renderer/words/machinesWords.ts';
import { GridCell, GridRow, RowHead } from './GridParts.tsx';
import { stopOf } from './listItems.ts';
import { FIGURE_PX, type ListLayout } from './listLayout.ts';
import { RowPicture } from './RowPicture.tsx';

type RowProps = {
  machineId: number;
  chosen: boolean;
  onOpen: (machineId: number) => void;
  top: number;
  rowIndex: number;
  layout: ListLayout;
};

export const rowId = (machineId: number): string => `machine-${machineId}`;

const Row = ({ machineId, chosen, onOpen, top, rowIndex, layout, children }: RowProps & { children: ReactNode }) => (
  <GridRow
    id={rowId(machineId)}
    tabIndex={-1}
    aria-rowindex={rowIndex}
    aria-selected={chosen}
    className={`machine-row ${layout.kind}`}
    style={{ transform: `translateY(${top}px)`, height: layout.rowPx }}
    onClick={() => onOpen(machineId)}
  >
    {children}
  </GridRow>
);

/** Its place, until its line has come. */
export const WaitingRow = (row: RowProps) => (
  <Row {...row}>
    <RowHead className="list-cell second" style={row.layout.name}>
      {machinesWords.reading}
    </RowHead>
  </Row>
);

type MachineRowProps = RowProps & { line: MachineLine; asOf: string };

/**
 * One machine: whose it is and its hours, the bar of what reaches its limit first, its figures, and about when. While the list
 * scrolls it is not drawn anew.
 */
export const MachineRow = memo(function MachineRow({ line, asOf, ...row }: MachineRowProps) {
  const writing = useWriting();
  const stop = stopOf(line);
  const { layout } = row;
  const { name, hours } = layout;
  return (
    <Row {...row}>
      <RowHead className="list-cell" style={name} title={`${line.name}\n${ownerText(line)}`}>
        <div className="machine-name">{line.name}</div>
        <div className="second-line">{ownerText(line)}</div>
      </RowHead>
      <GridCell className="list-cell right" style={hours}>
        <div className={line.hours.machineHours === null ? 'second' : undefined}>{hoursNowText(line.hours)}</div>
        <div className="second-line">{readText(line.hours, asOf)}</div>
      </GridCell>
      <GridCell className="picture-cell">
        <RowPicture
          line={line}
          stop={stop}
          label={lineSentence(line, stop, writing)}
          layout={layout}
          writing={writing}
        />
      </GridCell>
      {stop ? <Stopped line={line} asOf={asOf} layout={layout} /> : <First line={line} asOf={asOf} layout={layout} />}
    </Row>
  );
});

type CellsProps = { line: MachineLine; asOf: string; layout: ListLayout };

/** The finding's position, when it was found, and that there is no forecast. */
function Stopped({ line, asOf, layout }: CellsProps) {
  const { first, firstTop, figures } = layout;
  const stop = stopOf(line);
  if (!stop) return null;
  return (
    <>
      <GridCell className="list-cell" style={{ ...first, top: firstTop }}>
        <div className="first-name">{stop.position ?? line.assemblies.join(', ')}</div>
        <div className="second-line">{foundText(stop, asOf)}</div>
      </GridCell>
      <GridCell
        className="list-cell right figure second"
        aria-colspan={3}
        style={{ left: figures.low - FIGURE_PX, width: figures.high - figures.low + FIGURE_PX, top: firstTop }}
      >
        {shared.noForecast}
      </GridCell>
      <Cell layout={layout}>{null}</Cell>
    </>
  );
}

function First({ line, asOf, layout }: CellsProps) {
  const { first, firstTop, figures } = layout;
  const its = line.first;
  const past = its?.pastLimitMm != null;
  return (
    <>
      <GridCell className="list-cell" style={{ ...first, top: firstTop }} title={its ? pointName(its) : undefined}>
        <div className="first-name">{its ? pointName(its) : missingText(line)}</div>
        <div className="second-line">{basisLine(line)}</div>
      </GridCell>
      {its && !past ? (
        (['low', 'middle', 'high'] as const).map((figure) => (
          <GridCell
            key={figure}
            className={figureClass(its.hoursLeft[figure], its.decides === figure)}
            style={{ left: figures[figure] - FIGURE_PX, width: FIGURE_PX, top: firstTop }}
          >
            {its.hoursLeft[figure] === null ? machinesWords.beyond : hoursLeftFigure(its.hoursLeft[figure])}
          </GridCell>
        ))
      ) : (
        <GridCell
          aria-colspan={3}
          className="list-cell right figure second"
          style={{ left: figures.low - FIGURE_PX, width: figures.high - figures.low + FIGURE_PX, top: firstTop }}
        >
          {its ? null : shared.noForecast}
        </GridCell>
      )}
      <Cell layout={layout} red={its !== null && (past || (its.decidingHoursLeft ?? 0) < 0)}>
        {its && (past ? shared.passed : whenOf(its, asOf))}
      </Cell>
    </>
  );
}

/** By the figure that decides: hours below nought are passed, whatever the calendar makes of them. */
function whenOf(first: NonNullable<MachineLine['first']>, asOf: string): string {
  if (first.decidingHoursLeft !== null && first.decidingHoursLeft < 0) return shared.passed;
  return whenText(first.dateDeciding === null ? null : day(first.dateDeciding), day(asOf));
}

const figureClass = (hoursLeft: number | null, decides: boolean): string =>
  [
    'list-cell right figure',
    decides ? 'deciding' : '',
    hoursLeft === null ? 'beyond' : hoursLeft < 0 ? 'red' : decides ? '' : 'second',
  ]
    .filter(Boolean)
    .join(' ');

const Cell = ({ layout, red = false, children }: { layout: ListLayout; red?: boolean; children: React.ReactNode }) => (
  <GridCell
    className={red ? 'list-cell right figure red heavy' : 'list-cell right figure'}
    style={{ ...layout.likelyBy, top: layout.firstTop }}
  >
    {children}
  </GridCell>
);
