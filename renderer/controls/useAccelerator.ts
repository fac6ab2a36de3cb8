import { useLayoutEffect, useRef } from 'react';

type Listening = { key: string; press: () => void };

/** Latest first: a question's keys come before those of the sheet below it. */
const listening: Listening[] = [];

/**
 * Presses something when its letter is typed and no entry box has the focus; with Alt held also from inside a box. Escape and
 * the keys F1 to F12 write nothing, and work there too.
 *
 * @param key as printed on the key: a letter, "/", "+", "Enter", "Escape"; null listens to nothing
 */
export function useAccelerator(key: string | null, press: () => void): void {
  const latest = useRef(press);
  latest.current = press;
  // heard from the moment it is seen
  useLayoutEffect(() => {
    if (key === null) return;
    const entry: Listening = { key: key.toLowerCase(), press: () => latest.current() };
    listening.unshift(entry);
    return () => {
      listening.splice(listening.indexOf(entry), 1);
    };
  }, [key]);
}

/** Call once, at the root of the window. Returns what ends it. */
export function listenForAccelerators(window: Window): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.repeat) return;
    const inBox = takesLetters(event.target);
    if (inBox && !event.altKey && event.key !== 'Escape' && !/^F\d+$/.test(event.key)) return;
    if (event.key === 'Enter' && pressesItself(event.target)) return;
    const entry = listening.find((candidate) => candidate.key === event.key.toLowerCase());
    if (!entry) return;
    event.preventDefault();
    entry.press();
  };
  window.addEventListener('keydown', onKey);
  return () => window.removeEventListener('keydown', onKey);
}

/** Boxes that text goes into, and lists that find by letter. */
function takesLetters(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return !['checkbox', 'radio', 'button', 'submit'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}

const pressesItself = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('button, a[href], [role="button"], [role="option"], summary') !== null;
