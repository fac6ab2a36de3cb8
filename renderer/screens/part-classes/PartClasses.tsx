import { Fragment, type KeyboardEvent, useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { classesList, type PartClassSheet } from '#core/contract/partClass.ts';
import { decimalFigure, lengthFigure, rateUnit, unitMmOf, type Writing } from '#core/words/quantityText.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, Notice } from '#renderer/controls/Notice.tsx';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { IntervalBar, ThinInterval } from '#renderer/marks/IntervalBar.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { shared } from '#renderer/words/english.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { partClassWords as words } from '#renderer/words/partClassWords.ts';
import { useWidth } from '../machines/useWidth.ts';
import { ClassEditor } from './ClassEditor.tsx';
import { classForm, emptyClassForm } from './classForm.ts';
import { type RateRow, type RateTick, ratePicture } from './ratePicture.ts';
import './part-classes.css';

/** The picture is at least and at most so wide, beside the words and the figures [px]. */
const PICTURE = { least: 330, most: 700, beside: 930 } as const;
const ROW_PX = 34;
const NEW = -1;

/** Part classes: what the trade says, what the shop has seen, and who is in them. */
export default function PartClasses() {
  const writing = useWriting();
  const [, goTo] = useLocation();
  const classes = useAsk(classesList, {});
  const [opened, setOpened] = useState<number | null>(null);
  const all = classes.value?.classes ?? [];
  const holder = useRef<HTMLDivElement>(null);
  const widthPx = Math.min(PICTURE.most, Math.max(PICTURE.least, useWidth(holder) - PICTURE.beside));
  const picture = ratePicture(all, widthPx, unitMmOf(writing));
  const toggle = (id: number) => setOpened(opened === id ? null : id);
  const readings = all.reduce((sum, one) => sum + one.readings, 0);
  const parts = all.reduce((sum, one) => sum + one.parts, 0);
  const learned = all.filter(({ state }) => state === 'learned').length;
  return (
    <Sheet
      title={words.title}
      sub={words.sub}
      actions={
        <Key letter="A" onPress={() => setOpened(NEW)}>
          {words.add}
        </Key>
      }
      block={[
        { label: words.block.rests, value: words.block.restsOn(readings, parts) },
        { label: words.block.learned, value: words.block.learnedOf(learned, all.length) },
        { label: words.block.bars, value: words.block.barsAre, grow: true },
      ]}
    >
      <div ref={holder} />
      {classes.value?.heardMachines != null && (
        <Notice kind="waiting" head={shared.heardMachines(classes.value.heardMachines)} />
      )}
      <NotYet of={classes} words={frameWords.opening} />
      {opened === NEW && <ClassEditor initial={emptyClassForm} onLeave={() => setOpened(null)} />}
      {classes.value && all.length === 0 && opened !== NEW && (
        <Empty
          head={words.emptyHead}
          keys={
            <Key first letter="N" onPress={() => goTo('/take-in')}>
              {words.takeIn}
            </Key>
          }
        >
          {words.emptyNext}
        </Empty>
      )}
      {all.length > 0 && (
        <Across>
          <table className="classes wide-table" onKeyDown={alongRows}>
            <caption className="said">{words.title}</caption>
            <thead>
              <tr>
                <th scope="col">{words.class}</th>
                <th scope="col" className="rate-head">
                  {rateUnit(writing)}
                  <RateRule ticks={picture.ticks} writing={writing} widthPx={widthPx} />
                </th>
                {(['low', 'middle', 'high'] as const).map((end) => (
                  <th key={end} scope="col" className={end === 'middle' ? 'figures main' : 'figures'}>
                    {words[end]}
                  </th>
                ))}
                <th scope="col">{words.members}</th>
                <th scope="col">{words.state}</th>
              </tr>
            </thead>
            <tbody>
              {picture.rows.map((row) => {
                const { sheet } = row;
                const isOpen = opened === sheet.partClassId;
                return (
                  <Fragment key={sheet.partClassId}>
                    <ClassRow
                      row={row}
                      writing={writing}
                      widthPx={widthPx}
                      isOpen={isOpen}
                      onToggle={() => toggle(sheet.partClassId)}
                    />
                    {isOpen && (
                      <tr className="opened">
                        <td colSpan={7}>
                          <div className="stays">
                            <ClassEditor initial={classForm(sheet, writing)} onLeave={() => setOpened(null)} />
                            {sheet.coverage && <p className="coverage">{words.coverage(sheet.coverage)}</p>}
                            <Members sheet={sheet} writing={writing} />
                          </div>
                        </td>
                      </tr>
                    )}
                  </Fragment>
                );
              })}
            </tbody>
          </table>
        </Across>
      )}
      {all.length > 0 && <p className="second bar-note">{words.barNote}</p>}
    </Sheet>
  );
}

function ClassRow({
  row,
  writing,
  widthPx,
  isOpen,
  onToggle,
}: {
  row: RateRow;
  writing: Writing;
  widthPx: number;
  isOpen: boolean;
  onToggle: () => void;
}) {
  const { sheet, bar, before } = row;
  const { low, middle, high } = sheet.ratePer1000hNowMm;
  return (
    <tr className={isOpen ? 'lit' : undefined}>
      <th scope="row">
        <button type="button" className="cell" aria-expanded={isOpen} onClick={onToggle}>
          {sheet.name}
        </button>
      </th>
      <td>
        <Picture width={widthPx} height={ROW_PX} label={null}>
          {before && <ThinInterval interval={before} y={27} />}
          {bar && <IntervalBar bar={bar} y={15} />}
        </Picture>
      </td>
      {[low, middle, high].map((rate, i) => (
        <td key={i} className={i === 1 ? 'figures main' : 'figures'}>
          {rateText(rate, writing)}
        </td>
      ))}
      <td>{words.seen(sheet.parts, sheet.readings, sheet.machines)}</td>
      <td>
        {words.states[sheet.state]}
        {sheet.coverage?.off && <span className="off-coverage">{`, ${words.offCoverage}`}</span>}
      </td>
    </tr>
  );
}

const rateText = (rate: number | null, writing: Writing): string =>
  rate === null ? '\u2013' : lengthFigure(rate, 2, writing);

function RateRule({ ticks, writing, widthPx }: { ticks: readonly RateTick[]; writing: Writing; widthPx: number }) {
  const last = ticks.at(-1)?.x ?? 0;
  return (
    <Picture width={widthPx} height={24} label={null}>
      <path className="l-rule" d={`M${ticks[0]?.x ?? 0} 23H${last}`} />
      <path className="l-thin" d={ticks.map(({ x }) => `M${x} 23v-7`).join('')} />
      {ticks.map(({ rate, x, places }) => (
        <text key={x} x={x} y={13} className="middle second">
          {decimalFigure(rate, places, writing)}
        </text>
      ))}
    </Picture>
  );
}

function Members({ sheet, writing }: { sheet: PartClassSheet; writing: Writing }) {
  if (sheet.members.length === 0) return <p className="second">{words.noMembers}</p>;
  return (
    <table className="table members">
      <caption>
        {words.membersHead}
        {sheet.finishedParts > 0 && <span className="second">{` ${words.finished(sheet.finishedParts)}`}</span>}
      </caption>
      <thead>
        <tr>
          <th scope="col">{words.machine}</th>
          <th scope="col">{words.position}</th>
          <th scope="col" className="figures">
            {words.own}
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
        {sheet.members.map((member) => (
          <tr key={member.pointId}>
            <td>
              <Link href={`/machine/${member.machineId}`}>{member.machine}</Link>
            </td>
            <td>{`${member.position}, ${member.point}`}</td>
            <td className="figures">{member.ownReadings}</td>
            <td className="figures">{rateText(member.ratePer1000hMm.low, writing)}</td>
            <td className="figures">
              <b>{rateText(member.ratePer1000hMm.middle, writing)}</b>
            </td>
            <td className="figures">{rateText(member.ratePer1000hMm.high, writing)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Up and down go along the classes. */
function alongRows(event: KeyboardEvent<HTMLTableElement>): void {
  const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (by === 0 || !(event.target instanceof HTMLButtonElement)) return;
  const rows = [...event.currentTarget.querySelectorAll<HTMLButtonElement>('tbody th button')];
  const to = rows[rows.indexOf(event.target) + by];
  if (!to) return;
  event.preventDefault();
  to.focus();
}
