import { useEffect, useRef } from 'react';

/** Digits typed within this of each other make one item number [ms]. */
const TOGETHER_MS = 800;

/** Typing an item number anywhere but in a box goes to that position. */
export function useItemNumber(
  rows: readonly { item: number; pointId: number }[],
  onChoose: (pointId: number) => void,
): void {
  const latest = useRef({ rows, onChoose });
  latest.current = { rows, onChoose };
  useEffect(() => {
    let typed = '';
    let at = 0;
    const onKey = (event: KeyboardEvent) => {
      const target = event.target as HTMLElement;
      if (!/^\d$/.test(event.key) || event.altKey || event.ctrlKey || event.metaKey) return;
      if (target.closest('input, textarea, select, [contenteditable]')) return;
      typed = event.timeStamp - at < TOGETHER_MS ? typed + event.key : event.key;
      at = event.timeStamp;
      const row = latest.current.rows.find((candidate) => candidate.item === Number(typed));
      if (row) latest.current.onChoose(row.pointId);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
