import { useSyncExternalStore } from 'react';

/** Where somebody stands in the tour: a step, offered and not yet answered, or out of it. */
export type TourState = { is: 'offered' } | { is: 'at'; step: number } | { is: 'out' };

/** In this window's own store, beside no record: who has seen the tour has seen it whichever record is open. */
const KEY = 'tour';
const heard = new Set<() => void>();

const read = (): string => window.localStorage.getItem(KEY) ?? 'offered';

export function stateOf(kept: string): TourState {
  if (kept === 'offered') return { is: 'offered' };
  const step = /^\d{1,2}$/.test(kept) ? Number(kept) : Number.NaN;
  return Number.isNaN(step) ? { is: 'out' } : { is: 'at', step };
}

function put(kept: string): void {
  window.localStorage.setItem(KEY, kept);
  for (const hear of heard) hear();
}

export const goToStep = (step: number): void => put(String(step));
export const leaveTour = (): void => put('out');

export function useTour(): TourState {
  return stateOf(
    useSyncExternalStore((hear) => {
      heard.add(hear);
      return () => heard.delete(hear);
    }, read),
  );
}
