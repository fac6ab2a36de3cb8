import { useEffect, useRef } from 'react';

type ListKeys = {
  count: number;
  at: number;
  /** rows that a page holds */
  page: number;
  goTo: (at: number) => void;
  open: (at: number) => void;
};

/**
 * Arrows, Home, End and the page keys move along a list, Enter opens the row stood on, wherever the focus is: in no entry
 * box, and on nothing that takes the key itself.
 */
export function useListKeys(keys: ListKeys): void {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey || takesKeys(event.target)) return;
      const { count, at, page, goTo, open } = latest.current;
      if (count === 0) return;
      if (event.key === 'Enter') {
        if (at >= 0) open(at);
        return;
      }
      const to = listTarget(event.key, at, count, page);
      if (to === null) return;
      event.preventDefault();
      goTo(to);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

/** Row a key leads to; null: not a key of lists. */
export function listTarget(key: string, at: number, count: number, page: number): number | null {
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, PageDown: at + page, PageUp: at - page, Home: 0, End: count - 1 }[
    key
  ];
  return to === undefined ? null : Math.min(count - 1, Math.max(0, to));
}

const takesKeys = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest(
    'input, textarea, select, button, a, [contenteditable], [role="listbox"], [role="option"], [role="tab"]',
  ) !== null;
