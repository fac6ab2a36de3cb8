import { useRef } from 'react';
import { Link, useLocation } from 'wouter';
import { type MachineSheet, machineRead } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { dayText, hoursLeftFigure, hoursLeftSentence } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, Notice } from '#renderer/controls/Notice.tsx';
import { planningAidCell, Sheet, type TitleCell } from '#renderer/controls/Sheet.tsx';
import { DoNotUseBox } from '#renderer/marks/DoNotUseBox.tsx';
import { HoursRule, RULE_BASE_PX } from '#renderer/marks/HoursRule.tsx';
import { IntervalBar, PastStub, ThinInterval } from '#renderer/marks/IntervalBar.tsx';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { PresentLine } from '#renderer/marks/PresentHours.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { checkWords } from '#renderer/words/checkWords.ts';
import { shared } from '#renderer/words/english.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { findingText } from '#renderer/words/findingText.ts';
import { flagText, pastLimitText } from '#renderer/words/markWords.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import { useWidth } from '../machines/useWidth.ts';
import type { Saved } from './Bench.tsx';
import './moved.css';
import { type MovedRow, movedPicture, stopping, worthShowing } from './movedPicture.ts';

/** The picture is at least and at most so wide, beside the names and the figures [px]. */
const PICTURE = { least: 420, most: 1100, beside: 300 + 4 * 92 } as const;
const ROW_PX = 41;

/** After a save: every bar that moved, where it stood and where it stands now, with its figures. */
export function MovedSheet({
  machineId,
  title,
  saved,
  onAgain,
}: {
  machineId: number;
  title: string;
  saved: Saved;
  onAgain: () => void;
}) {
  const [, goTo] = useLocation();
  const machine = useAsk(machineRead, { machineId });
  const forecasts = new Map(machine.value?.points.map(({ pointId, forecast }) => [pointId, forecast]));
  const { shown, little } = worthShowing(saved.moved, new Set(saved.measured));
  const holder = useRef<HTMLDivElement>(null);
  const widthPx = Math.min(PICTURE.most, Math.max(PICTURE.least, useWidth(holder) - PICTURE.beside));
  const picture = movedPicture(shown, (pointId) => forecasts.get(pointId) ?? null, widthPx);
  return (
    <Sheet
      title={title}
      sub={words.saved(dayText(day(saved.takenOn)))}
      actions={
        <>
          <Key letter="S" onPress={onAgain}>
            {words.again}
          </Key>
          <Key letter="P" onPress={() => goTo(`/slip/${machineId}`)}>
            {words.toSlip}
          </Key>
          <Key first letter="M" autoFocus onPress={() => goTo(`/machine/${machineId}`)}>
            {words.toMachine}
          </Key>
        </>
      }
      {...(machine.value && { block: blockOf(machine.value) })}
    >
      {saved.parked > 0 && <Notice kind="waiting" head={words.savedParked(saved.parked)} />}
      {saved.against.beyond.length > 0 && <BeyondNotice saved={saved} />}
      {shown.length === 0 ? (
        <Empty head={words.nothingMoved}>{words.nothingMovedWhy}</Empty>
      ) : (
        <div className="moved" ref={holder}>
          <table>
            <caption className="said">{words.moved}</caption>
            <thead>
              <tr>
                <th scope="col" className="moved-head">
                  <b>{words.moved}</b>
                  <br />
                  {words.movedNote}
                </th>
                <th scope="col" className="moved-rule">
                  <span className="said">{words.hoursLeft}</span>
                  <Picture width={widthPx} height={RULE_BASE_PX + 2} label={null}>
                    <HoursRule rule={picture.rule} />
                  </Picture>
                </th>
                <th scope="col" className="figures">
                  {words.before}
                </th>
                <th scope="col" className="figures">
                  {words.low}
                </th>
                <th scope="col" className="figures">
                  {words.middle}
                </th>
                <th scope="col" className="figures">
                  {words.high}
                </th>
              </tr>
            </thead>
            <tbody>
              {picture.rows.map((row) => (
                <Row key={row.moved.pointId} row={row} nowX={picture.nowX} widthPx={widthPx} />
              ))}
            </tbody>
          </table>
          {little > 0 && <p className="second">{words.movedLittle(little)}</p>}
        </div>
      )}
    </Sheet>
  );
}

/** What came out beyond the forecast that stood before, each a step from what would explain it. */
function BeyondNotice({ saved: { against, takenOn } }: { saved: Saved }) {
  const writing = useWriting();
  return (
    <Notice kind="waiting" head={checkWords.savedBeyond(against.beyond.length, against.sizes)}>
      <ul className="beyond-list">
        {against.beyond.map((one) => (
          <li key={one.pointId}>
            <Figures>{checkWords.savedBeyondOne(one, writing)}</Figures>{' '}
            <Link href={`/forecast-check/${one.pointId}/${takenOn}`}>{checkWords.explain}</Link>
          </li>
        ))}
      </ul>
    </Notice>
  );
}

function Row({ row, nowX, widthPx }: { row: MovedRow; nowX: number; widthPx: number }) {
  const { before, after, item, position, point } = row.moved;
  const decides = row.basis?.decides ?? 'middle';
  return (
    <tr>
      <th scope="row">
        <div>
          <RingSign item={item} state={stopping(row.basis) ? 'stop' : 'leave'} />
          <span>{`${position}, ${point}`}</span>
        </div>
        <span className="said">
          {words.movedSentence(`${item} ${position}, ${point}`, hoursLeftSentence(before), hoursLeftSentence(after))}
        </span>
      </th>
      <td className="moved-rule">
        <Picture width={widthPx} height={ROW_PX} label={null}>
          <PresentLine x={nowX} y0={0} y1={ROW_PX} estimated={false} />
          {row.was && <ThinInterval interval={row.was} y={31} />}
          <NowBar row={row} widthPx={widthPx} />
        </Picture>
      </td>
      <td className="figures was-figure">{figure(before.middle)}</td>
      {stopping(row.basis) ? (
        <td colSpan={3} className="figures stopped">
          {shared.noForecast}
        </td>
      ) : (
        (['low', 'middle', 'high'] as const).map((end) => (
          <td key={end} className={decides === end ? 'figures decides' : 'figures'} data-past={isPast(after[end])}>
            {figure(after[end])}
          </td>
        ))
      )}
    </tr>
  );
}

/** As-of and basis are part of every sheet with a forecast on it. */
const blockOf = ({ asOf, hours, points }: MachineSheet): TitleCell[] => [
  { label: shared.asOf, value: asOf },
  planningAidCell,
  ...(hours.machineHours === null
    ? []
    : [{ label: words.machineHours, value: <Figures>{flagText(hours.machineHours, hours.estimated)}</Figures> }]),
  {
    label: words.restsOn,
    value: words.ownReadings(points.reduce((sum, { forecast }) => sum + forecast.ownReadings, 0)),
  },
  { label: words.triangle, value: words.triangleIs, grow: true },
];

/** The bar as it stands now; a finding or a limit already passed takes its place. */
function NowBar({ row, widthPx }: { row: MovedRow; widthPx: number }) {
  const writing = useWriting();
  const finding = stopping(row.basis);
  if (finding) {
    return (
      <DoNotUseBox
        x={8}
        y={16}
        width={widthPx - 40}
        finding={findingText({ kind: finding.finding, note: finding.note })}
      />
    );
  }
  if (row.stub) return <PastStub stub={row.stub} y={16} text={pastLimitText(row.basis?.pastLimitMm ?? 0, writing)} />;
  return (
    row.bar && (
      <g className="slides" style={{ ['--came-from' as string]: `${row.cameFromPx}px` }}>
        <IntervalBar bar={row.bar} y={17} />
      </g>
    )
  );
}

const figure = (hours: number | null): string => (hours === null ? words.beyond : hoursLeftFigure(hours));
const isPast = (hours: number | null): true | undefined => (hours !== null && hours < 0 ? true : undefined);
