import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { slipsList } from '#core/contract/slip.ts';
import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { StopMark } from '#renderer/screens/machine/StopBanner.tsx';
import { useListKeys } from '#renderer/screens/machines/useListKeys.ts';
import { useAsk } from '#renderer/useAsk.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { slipsWords } from '#renderer/words/slipsWords.ts';
import './slips.css';

/** All slips made, newest first; arrows and Enter open one. */
export default function Slips() {
  const [, goTo] = useLocation();
  const list = useAsk(slipsList, {});
  const slips = list.value?.slips ?? [];
  const [stood, setAt] = useState(0);
  const at = Math.min(stood, slips.length - 1);
  const open = (to: number) => slips[to] && goTo(`/slips/${slips[to].slipId}`);
  useListKeys({
    count: slips.length,
    at,
    page: 12,
    open,
    goTo: (to) => {
      setAt(to);
      document.getElementById(rowId(to))?.scrollIntoView({ block: 'nearest' });
    },
  });
  return (
    <Sheet title={slipsWords.title} sub={slips.length > 0 && slipsWords.count(slips.length)}>
      <NotYet of={list} words={slipsWords.loading} />
      {list.value && slips.length === 0 && (
        <Empty
          head={slipsWords.noSlips}
          keys={
            <Key first onPress={() => goTo('/machines')}>
              {slipsWords.toMachines}
            </Key>
          }
        >
          {slipsWords.noSlipsNext}
        </Empty>
      )}
      {slips.length > 0 && (
        <table className="table slips-table">
          <thead>
            <tr>
              <th>{slipsWords.number}</th>
              <th>{slipsWords.madeOn}</th>
              <th>{slipsWords.machine}</th>
              <th>{slipsWords.customer}</th>
              <th>{slipsWords.says}</th>
            </tr>
          </thead>
          <tbody>
            {slips.map((slip, i) => (
              <tr key={slip.slipId} id={rowId(i)} className={i === at ? 'stood-on' : undefined} onClick={() => open(i)}>
                <td className="nw">
                  <Link href={`/slips/${slip.slipId}`}>{slip.number}</Link>
                </td>
                <td className="nw">{dayText(day(slip.madeOn))}</td>
                <td>
                  {slip.machine}
                  <StopMark machineId={slip.machineId} />
                </td>
                <td>{slip.customer}</td>
                <td className="says">
                  <Figures>{slip.headline}</Figures>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Sheet>
  );
}

const rowId = (at: number): string => `slip-row-${at}`;
