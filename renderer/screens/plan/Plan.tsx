import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import {
  type PlanChange,
  type Plan as PlanSheet,
  planAtFarm,
  planDone,
  planMove,
  planPin,
  planRead,
  type VisitLine,
} from '#core/contract/plan.ts';
import { type Day, day } from '#core/units/day.ts';
import { decimalFigure } from '#core/words/quantityText.ts';
import { answerTo } from '#renderer/ask.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox, Notice, Question } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useJob } from '#renderer/screens/exchange/useJob.ts';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { askAllAnew, useAsk, useDo } from '#renderer/useAsk.ts';
import { useMachineNames } from '#renderer/useMachines.ts';
import { changeText, planWords as words } from '#renderer/words/planWords.ts';
import { AddMachine } from './AddMachine.tsx';
import { GoesBy } from './GoesBy.tsx';
import { heldOutside, inOrder, weekRows } from './planLayout.ts';
import { usePlanKeys } from './usePlanKeys.ts';
import { VisitDetail } from './VisitDetail.tsx';
import { AgreeForm, PostponeForm, SplitForm } from './VisitForms.tsx';
import { WeekForm } from './WeekForm.tsx';
import { Legend, WeeksPicture } from './WeeksPicture.tsx';
import { WhatIf } from './WhatIf.tsx';
import './plan.css';

/** The winter plan: weeks down, hours across, each visit with what is done in it and why. */
export default function Plan() {
  const plan = useAsk(planRead, {});
  if (plan.value) return <Winter plan={plan.value} />;
  return <NotYetSheet title={words.tab} of={plan} words={words.loading} />;
}

type Panel = 'what-if' | 'goes-by' | 'add' | null;
type Doing = { what: 'move'; to: Day; pieces: number } | { what: 'agree' | 'postpone' | 'split' } | null;

function Winter({ plan }: { plan: PlanSheet }) {
  const writing = useWriting();
  const [, goTo] = useLocation();
  const queries = useQueryClient();
  const machines = useMachineNames();
  const job = useJob();
  const planned = useRef(false);
  const [by] = useBy();
  const [panel, setPanel] = useState<Panel>(null);
  const [doing, setDoing] = useState<Doing>(null);
  const [week, setWeek] = useState<Day | null>(null);
  const [change, setChange] = useState<PlanChange | null>(null);
  const [unsure, setUnsure] = useState<{ visitId: number; weekFrom: Day | null; pieces: number } | null>(null);
  const rows = weekRows(plan);
  const ofWinter = plan.visits.filter(({ winterYear }) => winterYear === plan.winter.winterYear);
  const unplaced = ofWinter.filter(({ weeks, stands }) => weeks.length === 0 && stands !== 'postponed');
  const outside = heldOutside(plan, ofWinter);
  const postponed = ofWinter.filter(({ stands }) => stands === 'postponed');
  const later = plan.visits.filter(({ winterYear }) => winterYear > plan.winter.winterYear);
  const order = [...inOrder(rows, [...outside, ...unplaced]), ...postponed];
  const [stoodOn, setStoodOn] = useState<number | null>(null);
  const at = order.find(({ visitId }) => visitId === stoodOn) ?? order[0] ?? null;
  const move = useDo(planMove);
  const pin = useDo(planPin);
  const atFarm = useDo(planAtFarm);
  const done = useDo(planDone);

  const running = job.state?.state === 'running';
  // what came of it is on the record by now
  useEffect(() => {
    if (job.state?.state === 'done' && job.state.plan?.saved && planned.current) {
      planned.current = false;
      void askAllAnew(queries);
    }
  }, [job.state, queries]);

  const stand = (visit: VisitLine) => {
    if (visit.visitId === at?.visitId) return;
    setStoodOn(visit.visitId);
    setDoing(null);
  };
  const told = (came: PlanChange | null) => {
    if (!came) return;
    setChange(came);
    setDoing(null);
    setUnsure(null);
  };
  const put = async (visitId: number, weekFrom: Day | null, pieces: number, sure = false) => {
    setStoodOn(visitId);
    const came = await move.run({ visitId, weekFrom, pieces, sure, by });
    if (came) told(came);
    else setUnsure({ visitId, weekFrom, pieces });
  };
  const startMove = () => {
    if (!at || at.stands === 'done') return;
    const to = day((plan.weeks.find(({ weekFrom }) => weekFrom === at.weeks[0]?.weekFrom) ?? plan.weeks[0]!).weekFrom);
    setDoing({ what: 'move', to, pieces: Math.max(1, at.weeks.length) });
  };
  const step = (by: number) => {
    if (doing?.what === 'move') {
      const now = plan.weeks.findIndex(({ weekFrom }) => weekFrom === doing.to);
      const next = plan.weeks[Math.min(plan.weeks.length - 1, Math.max(0, now + by))];
      if (next) setDoing({ ...doing, to: day(next.weekFrom) });
      return;
    }
    const now = order.findIndex(({ visitId }) => visitId === at?.visitId);
    const next = order[Math.min(order.length - 1, Math.max(0, now + by))];
    if (next) stand(next);
  };
  usePlanKeys({
    step,
    enter: () => {
      if (doing?.what !== 'move' || !at) return false;
      void put(at.visitId, doing.to, doing.pieces);
      return true;
    },
    leave: () => {
      setDoing(null);
      setWeek(null);
      setPanel(null);
    },
  });

  const propose = () => {
    setChange(null);
    planned.current = true;
    void job.start({ kind: 'plan', ask: { by, whatIf: null } });
  };
  const isEmpty = plan.proposed === null && ofWinter.length === 0;
  const noMachines = machines.value?.machines.length === 0;
  const byHand = ofWinter.filter(({ stands }) => stands !== 'proposed').length;
  const hours = plan.weeks.reduce((sum, one) => sum + one.hours, 0);
  const ofHours = plan.weeks.reduce((sum, one) => sum + one.benchHours, 0);
  const fault = job.fault ?? pin.fault ?? atFarm.fault ?? done.fault ?? (unsure ? null : move.fault);
  const visitKeys = at && at.stands !== 'done' && (
    <>
      <Key letter="M" onPress={startMove}>
        {words.keys.move}
      </Key>
      <Key
        letter="G"
        first={at.stands !== 'agreed'}
        disabled={at.weeks.length === 0}
        onPress={() => setDoing({ what: 'agree' })}
      >
        {words.keys.agree}
      </Key>
      {at.stands === 'proposed' ? (
        <Key
          letter="H"
          disabled={at.weeks.length === 0}
          onPress={() => void pin.run({ visitId: at.visitId, pinned: true, by }).then(told)}
        >
          {words.keys.pin}
        </Key>
      ) : (
        <Key letter="H" onPress={() => void pin.run({ visitId: at.visitId, pinned: false, by }).then(told)}>
          {words.keys.letGo}
        </Key>
      )}
      <Key letter="L" disabled={at.stands === 'postponed'} onPress={() => setDoing({ what: 'postpone' })}>
        {words.keys.postpone}
      </Key>
      <Key
        letter="S"
        disabled={at.positions.length < 2 || at.stands === 'postponed'}
        onPress={() => setDoing({ what: 'split' })}
      >
        {words.keys.split}
      </Key>
      <Key
        letter="F"
        disabled={at.stands === 'postponed'}
        onPress={() => void atFarm.run({ visitId: at.visitId, atFarm: at.farm === null, by }).then(told)}
      >
        {at.farm ? words.keys.inShop : words.keys.atFarm}
      </Key>
      <Key disabled={at.weeks.length === 0} onPress={() => void done.run({ visitId: at.visitId, by }).then(told)}>
        {words.keys.done}
      </Key>
    </>
  );
  const sub = isEmpty
    ? undefined
    : [
        words.sub(ofWinter.length - postponed.length, hours, ofHours, writing),
        plan.proposed && words.proposedOn(day(plan.proposed.asOf), byHand),
      ]
        .filter(Boolean)
        .join('. ');

  return (
    <Sheet
      title={words.title(plan.winter.name)}
      {...(sub && { sub })}
      bleed
      actions={
        !isEmpty && (
          <>
            <Key letter="W" disabled={running} onPress={() => setPanel(panel === 'what-if' ? null : 'what-if')}>
              {words.keys.whatIf}
            </Key>
            <Key letter="B" onPress={() => setPanel(panel === 'goes-by' ? null : 'goes-by')}>
              {words.keys.goesBy}
            </Key>
            <Key letter="+" onPress={() => setPanel(panel === 'add' ? null : 'add')}>
              {words.keys.add}
            </Key>
            <Key letter="A" first disabled={running} onPress={propose}>
              {words.proposeAfresh}
            </Key>
          </>
        )
      }
      banner={
        <div className="plan-banner">
          {running && planned.current && (
            <div className="plan-working">
              <FillingRule words={words.planning(job.state?.step ?? '')} share={job.state?.share ?? 0} />
              <Key onPress={() => void job.breakOff()}>{words.breakOff}</Key>
            </div>
          )}
          {fault && <FaultBox fault={fault} />}
          {unsure && move.fault && (
            <FaultBox
              fault={move.fault}
              keys={
                <>
                  {move.fault.code === 'visit-agreed' && (
                    <Key onPress={() => void put(unsure.visitId, unsure.weekFrom, unsure.pieces, true)}>
                      {words.keys.allTheSame}
                    </Key>
                  )}
                  <Key onPress={() => setUnsure(null)}>{words.keys.leave}</Key>
                </>
              }
            />
          )}
          {change && <Changed change={change} onClose={() => setChange(null)} />}
          {doing?.what === 'move' && at && (
            <Question
              fact={words.moveTo(at.machine)}
              then={words.moveHow}
              keys={
                <>
                  <Key first onPress={() => void put(at.visitId, doing.to, doing.pieces)}>
                    {words.put}
                  </Key>
                  <Key onPress={() => void put(at.visitId, null, 1)}>{words.noWeek}</Key>
                  <label className="pieces">
                    {words.pieces}
                    <select
                      value={doing.pieces}
                      onChange={(event) => setDoing({ ...doing, pieces: Number(event.target.value) })}
                    >
                      {[1, 2, 3, 4].map((pieces) => (
                        <option key={pieces}>{pieces}</option>
                      ))}
                    </select>
                  </label>
                  <Key onPress={() => setDoing(null)}>{words.keys.leave}</Key>
                </>
              }
            />
          )}
          {week && <WeekForm plan={plan} weekFrom={week} onClose={() => setWeek(null)} />}
        </div>
      }
      block={[
        { label: words.block.asOf, value: plan.proposed?.asOf ?? plan.asOf },
        planningAidCell,
        ...(plan.proposed
          ? [
              {
                label: words.block.restsOn,
                value:
                  words.block.restsOnIs(plan.proposed.machines, plan.proposed.readings) +
                  words.block.without(plan.proposed.without.length),
              },
              {
                label: words.block.search,
                value: words.block[plan.proposed.status === 'searched' ? 'searched' : 'stopped'](
                  plan.proposed.harm.gap,
                  writing,
                ),
              },
            ]
          : []),
        {
          label: words.block.hours,
          value: words.block.hoursAre(plan.usualHours, day(plan.winter.from), day(plan.winter.to), writing),
          grow: true,
        },
      ]}
    >
      <div className="plan-page">
        {panel === 'what-if' && (
          <WhatIf plan={plan} job={job} busy={planned.current && running} onClose={() => setPanel(null)} />
        )}
        {panel === 'goes-by' && (
          <GoesBy key={JSON.stringify(plan.settings)} plan={plan} onClose={() => setPanel(null)} />
        )}
        {panel === 'add' && (
          <AddMachine
            plan={plan}
            onDone={(came) => {
              told(came);
              setStoodOn(came.visitId);
              setPanel(null);
            }}
            onClose={() => setPanel(null)}
          />
        )}
        {isEmpty && noMachines && (
          <Empty
            head={words.noMachines}
            keys={
              <Key first letter="N" onPress={() => goTo('/take-in')}>
                {words.takeIn}
              </Key>
            }
          >
            {words.noMachinesNext}
          </Empty>
        )}
        {isEmpty && !noMachines && (
          <Empty
            head={words.none}
            keys={
              <>
                <Key letter="A" first disabled={running} onPress={propose}>
                  {words.propose}
                </Key>
                <Key letter="B" onPress={() => setPanel(panel === 'goes-by' ? null : 'goes-by')}>
                  {words.keys.goesBy}
                </Key>
              </>
            }
          >
            {words.noneNext}
          </Empty>
        )}
        {!isEmpty && (
          <div className="plan-parts">
            <div className="plan-picture">
              {ofWinter.length === 0 && <Notice head={words.nothingDue} />}
              <WeeksPicture
                plan={plan}
                rows={rows}
                at={at?.visitId ?? null}
                target={doing?.what === 'move' ? doing.to : null}
                onStand={stand}
                onWeek={(weekFrom) =>
                  doing?.what === 'move' && at ? void put(at.visitId, weekFrom, doing.pieces) : setWeek(weekFrom)
                }
                onDrop={(visitId, weekFrom) => {
                  const visit = ofWinter.find((one) => one.visitId === visitId);
                  if (visit) void put(visitId, weekFrom, Math.max(1, visit.weeks.length));
                }}
              />
              <Legend />
              <Listed
                head={words.outside}
                visits={outside}
                onStand={stand}
                tell={({ weeks }) => words.outsideIn(day(weeks[0]!.weekFrom))}
              />
              <WintersTable plan={plan} />
              <Listed head={words.later} visits={later} tell={({ winter }) => winter} />
            </div>
            <div className="plan-side">
              {at && (
                <VisitDetail visit={at} keys={visitKeys}>
                  {doing?.what === 'agree' && <AgreeForm visit={at} onDone={told} onClose={() => setDoing(null)} />}
                  {doing?.what === 'postpone' && (
                    <PostponeForm visit={at} onDone={told} onClose={() => setDoing(null)} />
                  )}
                  {doing?.what === 'split' && <SplitForm visit={at} onDone={told} onClose={() => setDoing(null)} />}
                </VisitDetail>
              )}
              <Listed
                head={words.notPlaced}
                sub={words.notPlacedSub(
                  unplaced.length,
                  unplaced.reduce((sum, one) => sum + one.hours, 0),
                  writing,
                )}
                visits={unplaced}
                onStand={stand}
                tell={(visit) => words.riskOf(visit.risk, writing)}
              />
              <Listed head={words.postponed} visits={postponed} onStand={stand} tell={({ note }) => note} />
            </div>
          </div>
        )}
      </div>
    </Sheet>
  );
}

/** What a change has cost, and the way back. */
function Changed({ change, onClose }: { change: PlanChange; onClose: () => void }) {
  const writing = useWriting();
  const undo = useDo(entriesUndoLast);
  const [by] = useBy();
  const takeBack = async () => {
    const last = await answerTo(entriesList, { beforeEntryId: null, limit: 1 });
    const entryId = last.ok ? last.value.undoableEntryId : null;
    if (entryId !== null && (await undo.run({ entryId, by }))) onClose();
  };
  return (
    <Question
      fact={changeText(change, writing)}
      keys={
        <>
          <Key letter="U" disabled={undo.busy} onPress={() => void takeBack()}>
            {words.keys.takeBack}
          </Key>
          <Key onPress={onClose}>{words.keys.close}</Key>
        </>
      }
    />
  );
}

type ListedProps = {
  head: string;
  sub?: string;
  visits: readonly VisitLine[];
  tell: (visit: VisitLine) => string;
  onStand?: (visit: VisitLine) => void;
};

function Listed({ head, sub, visits, tell, onStand }: ListedProps) {
  const writing = useWriting();
  if (visits.length === 0) return null;
  return (
    <section className="plan-listed">
      <h2>
        {head} {sub && <span className="second">{sub}</span>}
      </h2>
      <ul>
        {visits.map((visit) => (
          <li key={visit.visitId}>
            {onStand ? (
              <button type="button" className="plain" onClick={() => onStand(visit)}>
                {[visit.machine, visit.customer].filter(Boolean).join(', ')}
              </button>
            ) : (
              <Link href={`/machine/${visit.machineId}`}>
                {[visit.machine, visit.customer].filter(Boolean).join(', ')}
              </Link>
            )}
            <span className="second told">{tell(visit)}</span>
            <span className="figures">{decimalFigure(visit.hours, 1, writing)} h</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function WintersTable({ plan }: { plan: PlanSheet }) {
  const writing = useWriting();
  if (plan.proposed === null) return null;
  const most = Math.max(1, ...plan.winters.map(({ hours, ofHours }) => Math.max(hours, ofHours)));
  return (
    <table className="table winters-table">
      <caption className="said">{words.winters.head}</caption>
      <thead>
        <tr>
          <th scope="col">{words.winters.head}</th>
          <th scope="col">{words.benchHours}</th>
          <th scope="col" className="figures">
            {words.winters.hours}
          </th>
          <th scope="col" className="figures">
            {words.winters.thrown}, h
          </th>
          <th scope="col" className="figures">
            {words.winters.breakdowns}
          </th>
        </tr>
      </thead>
      <tbody>
        {plan.winters.map((winter) => (
          <tr key={winter.winterYear}>
            <th scope="row">{winter.name}</th>
            <td>
              <span className="winter-bar" aria-hidden="true">
                <span style={{ width: `${(100 * winter.hours) / most}%` }} />
                <i style={{ left: `${(100 * winter.ofHours) / most}%` }} />
              </span>
            </td>
            <td className="figures">{words.winters.of(winter.hours, winter.ofHours, writing)}</td>
            <td className="figures">{decimalFigure(winter.lifeThrownAway, 0, writing)}</td>
            <td className="figures">{words.winters.expected(winter.breakdowns, writing)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={5} className="second">
            {words.winters.note}
          </td>
        </tr>
      </tfoot>
    </table>
  );
}
