import { useEffect, useRef } from 'react';

type PlanKeys = {
  /** up and down, or left and right: one back, one on */
  step: (by: 1 | -1) => void;
  /** true: it took the key */
  enter: () => boolean;
  leave: () => void;
};

const STEPS: Readonly<Record<string, 1 | -1>> = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 };

/** Arrows go along the visits (or, while one is moved, along the weeks), Enter puts it, Escape leaves it; not in entry boxes. */
export function usePlanKeys(keys: PlanKeys): void {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey) return;
      const { target } = event;
      const inBox =
        target instanceof HTMLElement && target.closest('input, textarea, select, [role="listbox"]') !== null;
      if (event.key === 'Escape') latest.current.leave();
      if (inBox) return;
      const by = STEPS[event.key];
      if (by !== undefined) {
        event.preventDefault();
        latest.current.step(by);
      } else if (event.key === 'Enter' && !(target instanceof HTMLElement && target.closest('a, .key'))) {
        if (latest.current.enter()) event.preventDefault();
      }
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
