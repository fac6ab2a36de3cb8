/** How long the first screen has for itself, and how long hands are still before code is fetched behind it [ms]. */
export const FETCH_NEXT_MS = 1500;
export const STILL_MS = 500;
const HANDS = ['keydown', 'pointerdown', 'wheel', 'scroll'] as const;

/**
 * The code of what is gone to next is there before it is wanted, one screen after the other, and never while somebody types or scrolls.
 * @param hands where keys, presses and scrolling are heard: the window
 * @returns ends it
 */
export function fetchNext(screens: readonly { fetch(): void }[], hands: EventTarget): () => void {
  let movedAt = Number.NEGATIVE_INFINITY;
  let place = 0;
  const moved = () => {
    movedAt = performance.now();
  };
  const look = () => {
    const stillFor = performance.now() - movedAt;
    if (stillFor >= STILL_MS) screens[place++]?.fetch();
    if (place < screens.length) timer = setTimeout(look, stillFor < STILL_MS ? STILL_MS : FETCH_NEXT_MS);
    else stopListening();
  };
  const stopListening = () => {
    for (const hand of HANDS) hands.removeEventListener(hand, moved, true);
  };
  for (const hand of HANDS) hands.addEventListener(hand, moved, { capture: true, passive: true });
  let timer = setTimeout(look, FETCH_NEXT_MS);
  return () => {
    clearTimeout(timer);
    stopListening();
  };
}
