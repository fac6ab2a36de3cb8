import { useEffect, useRef } from 'react';

/** Digits typed within this of each other make one item number [ms]. */
const TOGETHER_MS = 800;

type Numbered = { item: number; pointId: number };

/**
 * Typing an item number anywhere but in a box goes to that position; typed again, to the next point of that number, for
 * a position may have several, and another assembly the same numbers.
 */
export function useItemNumber(
  rows: readonly Numbered[],
  chosenId: number | null,
  onChoose: (pointId: number) => void,
): void {
  const latest = useRef({ rows, chosenId, onChoose });
  latest.current = { rows, chosenId, onChoose };
  useEffect(() => {
    let typed = '';
    let at = 0;
    const onKey = (event: KeyboardEvent) => {
      const target = event.target as HTMLElement;
      if (!/^\d$/.test(event.key) || event.altKey || event.ctrlKey || event.metaKey) return;
      if (target.closest('input, textarea, select, [contenteditable]')) return;
      typed = event.timeStamp - at < TOGETHER_MS ? typed + event.key : event.key;
      at = event.timeStamp;
      const row = pointOfItem(latest.current.rows, Number(typed), latest.current.chosenId);
      if (row) latest.current.onChoose(row.pointId);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

/** The first point of an item number; the one after the chosen, where that has the number already. */
export function pointOfItem(rows: readonly Numbered[], item: number, chosenId: number | null): Numbered | undefined {
  const candidates = rows.filter((row) => row.item === item);
  const at = candidates.findIndex((row) => row.pointId === chosenId);
  return candidates[(at + 1) % candidates.length];
}
