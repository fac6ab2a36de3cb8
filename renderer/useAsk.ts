import { type QueryClient, type UseQueryResult, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useRef } from 'react';
import type { AskOf, Fault, Operation, ReplyOf } from '#core/contract/operation.ts';
import { ask, FaultError } from './ask.ts';

/** What a screen has of something it asked for. While asked again the old value stays, `renewing` says so. */
export type Asked<T> = {
  value: T | undefined;
  fault: Fault | null;
  /** nothing to show yet */
  waiting: boolean;
  renewing: boolean;
  again: () => void;
};

/**
 * Asks as long as the screen stands; asked anew after every change. A null request asks nothing.
 * @param againInMs of a value that will not stand for long: when to ask for it again; null: it stands
 */
export function useAsk<O extends Operation>(
  operation: O,
  request: AskOf<O> | null,
  againInMs?: (value: ReplyOf<O>) => number | null,
): Asked<ReplyOf<O>> {
  const query = useQuery({
    ...askingFor(operation, request as AskOf<O>),
    enabled: request !== null,
    refetchInterval: ({ state }) => (state.data !== undefined && againInMs?.(state.data)) || false,
  });
  return { ...askedOf(query), waiting: query.isPending && request !== null };
}

/** An operation and what it is asked, as the query client takes it. */
export const askingFor = <O extends Operation>(operation: O, request: AskOf<O>) => ({
  queryKey: [operation.name, request] as const,
  queryFn: () => ask(operation, request),
});

export const askedOf = <T>(query: UseQueryResult<T>): Asked<T> => ({
  value: query.data,
  fault: query.error ? faultOf(query.error) : null,
  waiting: query.isPending,
  renewing: query.isFetching && !query.isPending,
  again: () => void query.refetch(),
});

export type Doing<O extends Operation> = {
  /** resolves with the reply, or null when refused: `fault` then says why */
  run: (request: AskOf<O>) => Promise<ReplyOf<O> | null>;
  busy: boolean;
  fault: Fault | null;
  clear: () => void;
};

type Asking = Pick<ReturnType<typeof askingFor>, 'queryKey' | 'queryFn'>;

/** Presses of one double click, or of a key struck twice, follow each other within this [ms]. */
const ONE_PRESS_MS = 400;

/**
 * Something that changes the record. Everything on screen is asked anew once it is done. Pressed twice it is done once: the same
 * asked again while it runs, or by the second press of a double click, gets the first one's reply.
 * @param next what is looked at next: it is asked for first of all, nobody waits for the rest, and the screen stands by itself
 */
export function useDo<O extends Operation>(operation: O, next?: (request: AskOf<O>) => Asking): Doing<O> {
  const queries = useQueryClient();
  const mutation = useMutation({
    mutationFn: (request: AskOf<O>) => ask(operation, request),
    onSuccess: (_, request) => {
      if (!next) return askAllAnew(queries);
      void askAnewAfter(queries, next(request));
    },
  });
  const last = useRef<{ asked: string; at: number; running: boolean; reply: Promise<ReplyOf<O> | null> } | null>(null);
  const once = async (request: AskOf<O>): Promise<ReplyOf<O> | null> => {
    try {
      return await mutation.mutateAsync(request);
    } catch (thrown) {
      faultOf(thrown);
      return null;
    }
  };
  return {
    run: (request) => {
      const asked = JSON.stringify(request);
      const before = last.current;
      const again = before?.asked === asked && (before.running || performance.now() - before.at < ONE_PRESS_MS);
      if (again) return before.reply;
      const reply = once(request).finally(() => {
        made.running = false;
      });
      const made = { asked, at: performance.now(), running: true, reply };
      last.current = made;
      return reply;
    },
    busy: mutation.isPending,
    fault: mutation.error ? faultOf(mutation.error) : null,
    clear: () => mutation.reset(),
  };
}

/** One change moves every forecast: nothing on screen is taken as still true. */
export const askAllAnew = (queries: QueryClient): Promise<void> => queries.invalidateQueries();

/** The same, one thing first: the core answers one after the other. */
async function askAnewAfter(queries: QueryClient, first: Asking): Promise<void> {
  await queries.invalidateQueries({ refetchType: 'none' });
  await queries.fetchQuery({ ...first, staleTime: 0 }).catch(() => undefined); // whoever shows it is told of the fault
  await queries.refetchQueries({ type: 'active', predicate: ({ state }) => state.isInvalidated });
}

/** @throws what is no fault: a defect of the window's own */
function faultOf(thrown: unknown): Fault {
  if (thrown instanceof FaultError) return thrown.fault;
  throw thrown;
}
