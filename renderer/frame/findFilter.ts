import { useEffect, useRef, useSyncExternalStore } from 'react';

/** A screen that lists machines takes the find box for itself: what is typed there narrows its list. */
type Taken = { text: string; keys: FilterKeys };
type FilterKeys = {
  /** Enter in the box */
  enter: () => void;
  /** arrow down out of the box, into the list */
  down: () => void;
};

let taken: Taken | null = null;
const watching = new Set<() => void>();

function change(to: Taken | null): void {
  taken = to;
  for (const watch of watching) watch();
}

const subscribe = (watch: () => void): (() => void) => {
  watching.add(watch);
  return () => watching.delete(watch);
};

/** For the list: takes the box while the screen stands, and reads it. */
export function useFindFilter(keys: FilterKeys): { text: string; setText: (text: string) => void } {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    change({ text: '', keys: { enter: () => latest.current.enter(), down: () => latest.current.down() } });
    return () => change(null);
  }, []);
  const text = useSyncExternalStore(subscribe, () => taken?.text ?? '');
  return { text, setText };
}

const setText = (text: string): void => {
  if (taken) change({ ...taken, text });
};

export type TakenFind = Taken & { setText: (text: string) => void };

/** For the box: null while no list has taken it. */
export function useTakenFind(): TakenFind | null {
  const now = useSyncExternalStore(subscribe, () => taken);
  return now && { ...now, setText };
}
