import { useLocation } from 'wouter';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { planningAidCell, Sheet, type TitleCell } from '#renderer/controls/Sheet.tsx';
import { useTakenFind } from '#renderer/frame/findFilter.ts';
import { BarKey } from '#renderer/marks/BarKey.tsx';
import { openHours } from '#renderer/screens/hours/openHours.ts';
import { useMachines } from '#renderer/useMachines.ts';
import { shared } from '#renderer/words/english.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { machinesWords } from '#renderer/words/machinesWords.ts';
import { filterMachines, forThisWinter, winterAfter } from './listItems.ts';
import { MachinesGrid, machineStoodOn } from './MachinesGrid.tsx';
import './machines.css';

/** All machines, soonest first by deciding hours, on one scale of hours left. */
export default function Machines() {
  const [, goTo] = useLocation();
  const list = useMachines();
  const machines = list.value?.machines ?? [];
  const typed = useTakenFind()?.text ?? '';
  const shown = filterMachines(machines, typed).length;
  return (
    <Sheet
      title={machinesWords.title}
      sub={
        list.value &&
        machines.length > 0 && (
          <Sub
            shown={shown}
            count={machines.length}
            now={forThisWinter(machines)}
            renewing={list.renewing}
            learning={list.value.learning}
            forecasting={list.value.forecasting}
          />
        )
      }
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
      {...(list.value && { block: blockOf(list.value.asOf, winterAfter(machines)) })}
      bleed
    >
      {list.value && machines.length > 0 && <MachinesGrid machines={machines} asOf={list.value.asOf} />}
      {list.value && machines.length === 0 && (
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
      {!list.value && (
        <div className="list-word">
          {list.fault ? (
            <FaultBox fault={list.fault} keys={<Key onPress={list.again}>{frameWords.tryAgain}</Key>} />
          ) : (
            <FillingRule words={machinesWords.working} />
          )}
        </div>
      )}
    </Sheet>
  );
}

type SubProps = {
  shown: number;
  count: number;
  now: number;
  renewing: boolean;
  learning: boolean;
  forecasting: { jobId: string; share: number } | null;
};

const Sub = ({ shown, count, now, renewing, learning, forecasting }: SubProps) => (
  <>
    <span role="status">{shown < count ? machinesWords.shown(shown, count) : machinesWords.count(count)}</span>{' '}
    <b>{machinesWords.thisWinter(now)}</b>
    {forecasting ? (
      <span> {machinesWords.forecasting(forecasting.share)}</span>
    ) : learning ? (
      <span> {machinesWords.learning}</span>
    ) : (
      renewing && <span> {machinesWords.renewing}</span>
    )}
  </>
);

const blockOf = (asOf: string, after: string | null): TitleCell[] => [
  { label: shared.asOf, value: asOf },
  planningAidCell,
  { label: machinesWords.shaded, value: machinesWords.blueLine(after) },
  { label: machinesWords.triangle, value: machinesWords.triangleAt },
  { label: machinesWords.bars, value: <BarKey />, grow: true },
];
