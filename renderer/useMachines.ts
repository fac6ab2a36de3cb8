import { keepPreviousData, useQueries, useQuery } from '@tanstack/react-query';
import { useDeferredValue, useRef } from 'react';
import { type MachineLine, machinesLines, machinesNames, machinesOrder } from '#core/contract/machine.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { type Asked, askedOf, askingFor, useAsk } from './useAsk.ts';

/** All machines by name: to pick one from. Nothing is forecast for it. */
export const useMachineNames = (wanted = true): Asked<ReplyOf<typeof machinesNames>> =>
  useAsk(machinesNames, wanted ? {} : null);

/** Lines of the list of some machines, at most 200. */
export const useMachineLines = (machineIds: readonly number[] | null): Asked<ReplyOf<typeof machinesLines>> =>
  useAsk(machinesLines, machineIds ? { machineIds: [...machineIds] } : null);

type Order = ReplyOf<typeof machinesOrder>;

/** While the classes are being learned for the first time the list is asked for again so often [ms]. */
const WHILE_LEARNING_MS = 2000;
/** While it is forecast beside the program, older lines stand in [ms]. */
const WHILE_FORECASTING_MS = 4000;

/** When a list is to be asked for again, whose figures will not stand for long; null: they stand. */
const againIn = ({ fromPriors, older, heldOff }: Order): number | null =>
  older > 0 && !heldOff ? WHILE_FORECASTING_MS : fromPriors ? WHILE_LEARNING_MS : null;

/**
 * Which machines stand in the list in which order, at once. While something else is typed what was found before stays;
 * `found` says that it is what was typed last.
 */
export function useMachinesOrder(find: string): Asked<Order> & { found: boolean } {
  const query = useQuery({
    ...askingFor(machinesOrder, { find, atOnce: true }),
    placeholderData: keepPreviousData,
    refetchInterval: ({ state }) => (state.data !== undefined && againIn(state.data)) || false,
  });
  return { ...askedOf(query), found: !query.isPlaceholderData };
}

/** So many lines are asked for in one go. */
const PAGE = 50;

/**
 * Lines of a long list, page by page, those in sight alone. A line known before stands in until its page has come.
 * @param machineIds all of the list, in its order
 * @param sight first and last place in sight
 */
export function useLinesInSight(
  machineIds: readonly number[],
  sight: { first: number; last: number },
  order: Order,
): (machineId: number) => MachineLine | undefined {
  const known = useRef(new Map<number, MachineLine>());
  const firstPage = Math.max(0, Math.floor(sight.first / PAGE));
  const lastPage = Math.floor(Math.min(sight.last, machineIds.length - 1) / PAGE);
  const pages = Array.from({ length: Math.max(0, lastPage - firstPage + 1) }, (_, i) =>
    machineIds.slice((firstPage + i) * PAGE, (firstPage + i + 1) * PAGE),
  );
  // drawn in small pieces as they come: all rows of a page in one go would hold up keys, or a frame of a scroll
  const come = useDeferredValue(
    useQueries({
      combine: linesOf,
      queries: pages.map((page) => ({
        ...askingFor(machinesLines, { machineIds: page }),
        refetchInterval: againIn(order) ?? (false as const),
      })),
    }),
  );
  for (const lines of come) for (const line of lines ?? []) known.current.set(line.machineId, line);
  return (machineId) => known.current.get(machineId);
}

const linesOf = (pages: readonly { data: ReplyOf<typeof machinesLines> | undefined }[]) =>
  pages.map(({ data }) => data?.lines);
