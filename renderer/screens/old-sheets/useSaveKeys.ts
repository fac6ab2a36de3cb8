import { useEffect, useRef } from 'react';

/** Ctrl and Enter save and go on to the next sheet of the machine; with Shift too, to one of another machine. */
export function useSaveKeys(save: ((then: 'same' | 'other') => void) | null): void {
  const latest = useRef(save);
  latest.current = save;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey) || event.repeat) return;
      event.preventDefault();
      latest.current?.(event.shiftKey ? 'other' : 'same');
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
