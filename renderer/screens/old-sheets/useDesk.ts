import { type QueryClient, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { oldSheetsGrid, oldSheetsRead, sizesQuestioned } from '#core/contract/oldSheets.ts';
import type { AskOf, Fault, Operation, ReplyOf } from '#core/contract/operation.ts';
import type { Day } from '#core/units/day.ts';
import { answerTo } from '#renderer/ask.ts';
import { askAllAnew, type Doing } from '#renderer/useAsk.ts';

/** What the desk itself shows; all the rest waits until the batch ends, or the desk is left. */
const ON_DESK = [oldSheetsRead.name, sizesQuestioned.name];

async function askDeskAnew(queries: QueryClient): Promise<void> {
  await queries.invalidateQueries({ refetchType: 'none' });
  await Promise.all(ON_DESK.map((name) => queries.refetchQueries({ queryKey: [name], type: 'active' })));
}

/** As useDo, but nothing that rests on a forecast is asked anew: forecasts wait until the batch ends. */
export function useDeskDo<O extends Operation>(operation: O): Doing<O> {
  const queries = useQueryClient();
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<Fault | null>(null);
  return {
    run: async (request: AskOf<O>) => {
      setBusy(true);
      const answer = await answerTo(operation, request);
      if (answer.ok) await askDeskAnew(queries);
      setBusy(false);
      setFault(answer.ok ? null : answer.fault);
      return answer.ok ? answer.value : null;
    },
    busy,
    fault,
    clear: () => setFault(null),
  };
}

/** Once the desk is left, what others show is asked anew. */
export function useAskedAnewOnLeaving(): void {
  const queries = useQueryClient();
  useEffect(() => () => void askAllAnew(queries), [queries]);
}

export type Grid = ReplyOf<typeof oldSheetsGrid>;

/**
 * The grid of a machine as of a sheet's day. While a new one is on its way the old one stands, so that the boxes keep
 * what is typed; of another machine nothing stands.
 * @param version changes when the machine's points or sizes may have
 */
export function useGrid(
  machineId: number | null,
  takenOn: Day | null,
  version: number,
): { grid: Grid | null; version: number; fault: Fault | null } {
  const [held, setHeld] = useState<{ machineId: number; version: number; grid: Grid } | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  useEffect(() => {
    if (machineId === null) return;
    let stale = false;
    void answerTo(oldSheetsGrid, { machineId, takenOn }).then((answer) => {
      if (stale) return;
      setFault(answer.ok ? null : answer.fault);
      if (answer.ok) setHeld({ machineId, version, grid: answer.value });
    });
    return () => {
      stale = true;
    };
  }, [machineId, takenOn, version]);
  const isOfIt = held !== null && held.machineId === machineId;
  return { grid: isOfIt ? held.grid : null, version: isOfIt ? held.version : -1, fault };
}
