import { Fragment, type ReactNode, useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import type { ReplyOf } from '#core/contract/operation.ts';
import { type DueFarm, type DueMachine, recallCalendar, recallRead, recallSeen } from '#core/contract/recall.ts';
import { type Day, day } from '#core/units/day.ts';
import { dayText, hoursFigure } from '#core/words/quantityText.ts';
import { reasonText } from '#core/words/recallWords.ts';
import { ask } from '#renderer/ask.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useRecord } from '#renderer/record.tsx';
import { saveBytes } from '#renderer/screens/exchange/saveBytes.ts';
import { useListKeys } from '#renderer/screens/machines/useListKeys.ts';
import { useAsk } from '#renderer/useAsk.ts';
import { shared } from '#renderer/words/english.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { findingText } from '#renderer/words/findingText.ts';
import { aboutText, comeInText, contactText, standingText, recallWords as words } from '#renderer/words/recallWords.ts';
import { BulkSlips } from './BulkSlips.tsx';
import { LeadForm } from './LeadForm.tsx';
import { LettersPanel } from './LettersPanel.tsx';
import { type Noted, NotedLine } from './NotedLine.tsx';
import { SeverityMark } from './SeverityMark.tsx';
import './recall.css';

type List = ReplyOf<typeof recallRead>;
type Group = 'toContact' | 'waiting' | 'held';
const GROUPS: readonly Group[] = ['toContact', 'waiting', 'held'];

/** Figures from what the trade says do not stand for long [ms]. */
const AGAIN_MS = 3000;

/** Who to contact, why now, by which hours and about when, and what was said last. */
export default function Recall() {
  const [, goTo] = useLocation();
  const list = useAsk(recallRead, { atOnce: true }, ({ learning }) => (learning ? AGAIN_MS : null));
  const [doing, setDoing] = useState<'bulk' | 'lead' | null>(null);
  const [said, setSaid] = useState<Noted | null>(null);
  const learned = list.value !== undefined && !list.value.learning;
  // what stands here is no news any more
  useEffect(() => {
    if (learned) void ask(recallSeen, {}).catch(() => {});
  }, [learned]);
  const calendar = async () => {
    const file = await ask(recallCalendar, {});
    const bytes = new TextEncoder().encode(file.ics);
    saveBytes(file.fileName, btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join('')), 'text/calendar');
    setSaid({ text: words.calendarMade(file.fileName, file.visits, file.dueDates), contactIds: [], booked: null });
  };
  const { value } = list;
  const isEmptyRecord = useRecord().counts?.machines === 0;
  const machines = value?.toContact.reduce((sum, farm) => sum + farm.machines.length, 0) ?? 0;
  return (
    <Sheet
      title={words.title}
      sub={value && !isEmptyRecord && words.sub(value.toContact.length, machines)}
      actions={
        <>
          <Key letter="V" onPress={() => goTo('/phone')}>
            {words.phoneKey}
          </Key>
          <Key letter="L" onPress={() => setDoing('lead')}>
            {words.lead}
          </Key>
          <Key letter="P" disabled={!learned} onPress={() => goTo('/recall/paper')}>
            {words.print}
          </Key>
          <Key letter="K" disabled={!value} onPress={() => void calendar()}>
            {words.calendar}
          </Key>
          <Key first letter="B" disabled={machines === 0 || !learned} onPress={() => setDoing('bulk')}>
            {words.bulk}
          </Key>
        </>
      }
      block={[
        { label: shared.asOf, value: value?.asOf ?? '' },
        planningAidCell,
        { label: words.block.winter, value: value?.winter ?? '' },
        { label: words.block.lastsTo, value: value?.lastsTo ?? '' },
        { label: words.block.lead, value: value ? words.days(value.leadDays) : '' },
        { label: words.block.rule, value: words.ruleIs, grow: true },
      ]}
    >
      <NotYet of={list} words={words.loading} />
      {value?.learning && !isEmptyRecord && <FillingRule words={words.learning} />}
      {said && <NotedLine key={said.text + said.contactIds.join(' ')} noted={said} />}
      {doing === 'lead' && value && <LeadForm leadDays={value.leadDays} onDone={() => setDoing(null)} />}
      {doing === 'bulk' && value && <BulkSlips farms={value.toContact} onClose={() => setDoing(null)} />}
      {value && <Lists list={value} onSaid={setSaid} />}
    </Sheet>
  );
}

/** Nobody rings thousands: the first are listed, in their order, and as many more at a time as are asked for. */
const MORE_LINES = 200;

type Line = { group: Group; farm: DueFarm; machine: DueMachine; first: boolean };

function Lists({ list, onSaid }: { list: List; onSaid: (said: Noted) => void }) {
  const [opened, setOpened] = useState<number | null>(null);
  const [stood, setAt] = useState(0);
  const [most, setMost] = useState(MORE_LINES);
  const all: Line[] = GROUPS.flatMap((group) =>
    list[group].flatMap((farm) => farm.machines.map((machine, i) => ({ group, farm, machine, first: i === 0 }))),
  );
  const lines = all.slice(0, most);
  const at = Math.min(stood, lines.length - 1);
  const toggle = (machineId: number) => setOpened(opened === machineId ? null : machineId);
  useListKeys({
    count: lines.length,
    at,
    page: 10,
    open: (to) => lines[to] && toggle(lines[to].machine.machineId),
    goTo: (to) => {
      setAt(to);
      document.getElementById(rowId(to))?.scrollIntoView({ block: 'nearest' });
    },
  });
  return (
    <>
      {list.toContact.length === 0 && <NobodyToContact list={list} />}
      {lines.length > 0 && (
        <Across>
          <table className="table recall-table recall-list wide-table">
            <caption className="said">{words.title}</caption>
            <thead>
              <tr>
                {[words.farm, words.machine, words.why, words.by, words.about, words.last].map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {lines.map((line, place) => (
                <Fragment key={`${line.group} ${line.machine.machineId}`}>
                  {lines[place - 1]?.group !== line.group && (
                    <tr className="group-row">
                      <th colSpan={6} scope="colgroup">
                        {words.groups[line.group]}
                      </th>
                    </tr>
                  )}
                  <MachineRow
                    line={line}
                    asOf={list.asOf}
                    id={rowId(place)}
                    stoodOn={place === at}
                    open={opened === line.machine.machineId}
                    onOpen={() => {
                      setAt(place);
                      toggle(line.machine.machineId);
                    }}
                  />
                  {opened === line.machine.machineId && (
                    <tr className="form-row">
                      <td colSpan={6}>
                        <LettersPanel
                          farm={line.farm.farm}
                          machine={line.machine}
                          onClose={() => setOpened(null)}
                          onAnswered={(noted) => {
                            setOpened(null);
                            onSaid({ ...noted, text: `${line.machine.name}, ${line.farm.farm.name}: ${noted.text}` });
                          }}
                        />
                      </td>
                    </tr>
                  )}
                </Fragment>
              ))}
            </tbody>
          </table>
        </Across>
      )}
      {all.length > lines.length && (
        <div className="keys">
          <Key onPress={() => setMost(most + MORE_LINES)}>{words.showMore(all.length - lines.length)}</Key>
        </div>
      )}
      {list.noContact > 0 && <p className="second">{words.noContact(list.noContact)}</p>}
      {list.nobodys.length > 0 && <p className="second">{words.nobodys(list.nobodys.map(({ name }) => name))}</p>}
    </>
  );
}

const rowId = (at: number): string => `recall-row-${at}`;

function NobodyToContact({ list }: { list: List }) {
  const [, goTo] = useLocation();
  const { counts } = useRecord();
  if (counts?.machines === 0)
    return (
      <Empty
        head={words.emptyRecord}
        keys={
          <Key first letter="N" onPress={() => goTo('/take-in')}>
            {words.takeIn}
          </Key>
        }
      >
        {words.emptyRecordNext}
      </Empty>
    );
  return <Empty head={words.none}>{words.noneNext(dayText(day(list.lastsTo)))}</Empty>;
}

type RowProps = { line: Line; asOf: Day; id: string; stoodOn: boolean; open: boolean; onOpen: () => void };

function MachineRow({ line, asOf, id, stoodOn, open, onOpen }: RowProps) {
  const { farm, machine, first } = line;
  const { comeInBy, lastContact } = machine;
  return (
    <tr id={id} className={[stoodOn && 'stood-on', first && 'first-of-farm'].filter(Boolean).join(' ') || undefined}>
      <td>{first && <FarmCell farm={farm.farm} />}</td>
      <td>
        <button
          type="button"
          className="row-key"
          aria-expanded={open}
          aria-label={words.open(machine.name)}
          onClick={onOpen}
        >
          {machine.name}
        </button>
        {machine.serial && <span className="second line">{machine.serial}</span>}
      </td>
      <td>
        <Why machine={machine} />
      </td>
      <td className="figures">
        {comeInBy && (
          <>
            <b className="deciding nw">{hoursFigure(Math.round(comeInBy.dialHours / 10) * 10)} h</b>
            <span className="second line">{comeInText(comeInBy).replace(/^.*?h /, '')}</span>
          </>
        )}
      </td>
      <td>{comeInBy && aboutText(comeInBy, asOf)}</td>
      <td>{lastContact ? contactText(lastContact) : <span className="second">{words.never}</span>}</td>
    </tr>
  );
}

function FarmCell({ farm: { name, place, phone, terms } }: { farm: DueFarm['farm'] }): ReactNode {
  const away = words.away(terms.distanceKm, terms.driveMinutes);
  return (
    <>
      <b>{name}</b>
      <span className="second line">{[place, away].filter(Boolean).join(', ')}</span>
      {phone && (
        <a className="line nw" href={`tel:${phone.replace(/[^\d+]/g, '')}`} target="_blank" rel="noreferrer">
          {phone}
        </a>
      )}
    </>
  );
}

/** Gravest first: the struck box where it must not be used, then each finding in its own words, then the hours. */
function Why({ machine: { reasons, safetyFindings, comeInBy, standing } }: { machine: DueMachine }): ReactNode {
  const stands = standingText(standing);
  return (
    <>
      {stands && <b className="line">{stands}</b>}
      {safetyFindings.map((finding) => (
        <span key={finding.findingId} className="line">
          <SeverityMark severity={finding.severity} />{' '}
          {[finding.position, findingText(finding)].filter(Boolean).join(': ')}
        </span>
      ))}
      {reasons
        .filter(({ code }) => code !== 'safety')
        .map((reason) => (
          <span key={reason.code} className="line">
            <Figures>{reasonText(reason)}</Figures>
          </span>
        ))}
      {comeInBy && reasons.some(({ code }) => code === 'hours') && (
        <span className="second line">
          {comeInBy.item} {comeInBy.label}
          {comeInBy.guessed ? `; ${words.guessed}` : ''}
        </span>
      )}
    </>
  );
}
