import { type RefObject, useEffect, useRef } from 'react';

/** Ctrl and Enter take the form in from any of its boxes. */
export function useFormKeys(send: () => void): void {
  const latest = useRef(send);
  latest.current = send;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey) || event.repeat) return;
      event.preventDefault();
      latest.current();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

/** Puts the focus into the first box of a form that something stands in the way of. */
export const goToFirstRemark = (form: RefObject<HTMLElement | null>): void => {
  // after the remarks are drawn
  requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
};
