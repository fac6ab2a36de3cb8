import { useLocation } from 'wouter';
import { jobsCancel, jobsStart } from '#core/contract/jobs.ts';
import type { MachinesOrder } from '#core/contract/machine.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Later } from '#renderer/controls/Later.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell, Sheet, type TitleCell } from '#renderer/controls/Sheet.tsx';
import { useTakenFind } from '#renderer/frame/findFilter.ts';
import { BarKey } from '#renderer/marks/BarKey.tsx';
import { openHours } from '#renderer/screens/hours/openHours.ts';
import { useDo } from '#renderer/useAsk.ts';
import { useMachinesOrder } from '#renderer/useMachines.ts';
import { shared } from '#renderer/words/english.ts';
import { machinesWords } from '#renderer/words/machinesWords.ts';
import { machinesOf } from './listItems.ts';
import { MachinesGrid, machineStoodOn } from './MachinesGrid.tsx';
import './machines.css';

/** All machines, soonest first by deciding hours, on one scale of hours left. */
export default function Machines() {
  const [, goTo] = useLocation();
  const list = useMachinesOrder(useTakenFind()?.text ?? '');
  const order = list.value;
  return (
    <Sheet
      title={machinesWords.title}
      sub={order && order.count > 0 && <Sub order={order} renewing={list.renewing} />}
      actions={
        <>
          <Key letter="H" onPress={() => openHours({ machineId: machineStoodOn() })}>
            {machinesWords.hours}
          </Key>
          <Key first letter="N" onPress={() => goTo('/take-in')}>
            {machinesWords.takeIn}
          </Key>
        </>
      }
      banner={order && order.older > 0 && <ForecastingBeside order={order} />}
      {...(order && { block: blockOf(order) })}
      bleed
    >
      {order && order.count > 0 && (
        <Later>
          <MachinesGrid order={order} found={list.found} />
        </Later>
      )}
      {order?.count === 0 && (
        <div className="list-word">
          <Empty
            head={machinesWords.noMachines}
            keys={
              <Key first onPress={() => goTo('/take-in')}>
                {machinesWords.takeIn}
              </Key>
            }
          >
            {machinesWords.noMachinesNext}
          </Empty>
        </div>
      )}
      {!order && (
        <div className="list-word">
          <NotYet of={list} words={machinesWords.working} />
        </div>
      )}
    </Sheet>
  );
}

function Sub({ order, renewing }: { order: MachinesOrder; renewing: boolean }) {
  const { count, thisWinter, fromPriors, older } = order;
  const shown = machinesOf(order.groups).length;
  return (
    <>
      <span role="status">{shown < count ? machinesWords.shown(shown, count) : machinesWords.count(count)}</span>{' '}
      <b>{machinesWords.thisWinter(thisWinter)}</b>
      {fromPriors && older === 0 && <span> {machinesWords.learning}</span>}
      {!fromPriors && older === 0 && renewing && <span> {machinesWords.renewing}</span>}
    </>
  );
}

/** A large shop is forecast beside the program: how far that is, and the key that breaks it off or begins it again. */
function ForecastingBeside({ order }: { order: MachinesOrder }) {
  const { older, fromPriors, forecasting, heldOff } = order;
  const cancel = useDo(jobsCancel);
  const start = useDo(jobsStart);
  const fault = start.fault ?? cancel.fault ?? heldOff?.fault;
  return (
    <div className="list-beside">
      {heldOff ? (
        <>
          <span role="status">{(heldOff.fault ? machinesWords.cameToGrief : machinesWords.heldOff)(older)}</span>
          <Key letter="F" disabled={start.busy} onPress={() => void start.run({ job: { kind: 'forecast-shop' } })}>
            {machinesWords.forecastAgain}
          </Key>
        </>
      ) : (
        <>
          <FillingRule
            words={fromPriors ? machinesWords.learningLarge : machinesWords.forecasting(older)}
            share={forecasting?.share ?? null}
          />
          {forecasting && (
            <Key letter="C" disabled={cancel.busy} onPress={() => void cancel.run({ jobId: forecasting.jobId })}>
              {machinesWords.cancelForecasting}
            </Key>
          )}
        </>
      )}
      {fault && <FaultBox fault={fault} />}
    </div>
  );
}

const blockOf = ({ asOf, winterAfter }: MachinesOrder): TitleCell[] => [
  { label: shared.asOf, value: asOf },
  planningAidCell,
  { label: machinesWords.shaded, value: machinesWords.blueLine(winterAfter) },
  { label: machinesWords.triangle, value: machinesWords.triangleAt },
  { label: machinesWords.bars, value: <BarKey />, grow: true },
];
