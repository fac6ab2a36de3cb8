import { type KeyboardEvent, type RefObject, useEffect } from 'react';

/**
 * Keys of a strip of boxes under the band: Enter in a box goes to the next one, in the last it takes the strip; Escape
 * leaves it. The first box, or the one that asks for it, has the focus when the strip opens.
 */
export function useEnterTakes(
  strip: RefObject<HTMLElement | null>,
  take: () => void,
  leave: () => void,
): (event: KeyboardEvent) => void {
  useEffect(() => {
    if (strip.current?.contains(document.activeElement)) return;
    strip.current?.querySelector<HTMLElement>('input, select')?.focus();
  }, [strip]);
  return (event) => {
    if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      leave();
    }
    const { target } = event;
    if (event.key !== 'Enter' || event.ctrlKey || !strip.current) return;
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return;
    event.preventDefault();
    event.stopPropagation();
    const boxes = stopsOf(strip.current);
    const next = boxes[boxes.indexOf(stopOf(target)) + 1];
    if (next) next.focus();
    else take();
  };
}

/** Boxes in order; of a choice only the chosen option. */
const stopsOf = (strip: HTMLElement): HTMLElement[] =>
  [...strip.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')].filter(
    (box) => !(box instanceof HTMLInputElement && box.type === 'radio') || box === stopOf(box),
  );

function stopOf(box: HTMLInputElement | HTMLSelectElement): HTMLElement {
  if (!(box instanceof HTMLInputElement) || box.type !== 'radio') return box;
  const group = box.closest('[role=radiogroup]');
  return group?.querySelector<HTMLInputElement>('input:checked') ?? box;
}
