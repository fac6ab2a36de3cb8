import { startTransition, useEffect, useState } from 'react';

/**
 * False in the first drawing, true a drawing or more later, worked out by React in small pieces: what is looked at first
 * stands at once, and keys are heard while the rest is drawn.
 * @param turns how many drawings later; 0: in the first
 */
export function useLater(turns = 1): boolean {
  const [left, setLeft] = useState(turns);
  useEffect(() => {
    if (left > 0) startTransition(() => setLeft(left - 1));
  }, [left]);
  return left === 0;
}

/**
 * Of a long table so many rows as are drawn so far: the first at once, as many more with each drawing after it, in small pieces.
 * @param first all of them: the whole table at once
 */
export function useRowsSoFar(count: number, first: number): number {
  const [drawn, setDrawn] = useState(first);
  useEffect(() => {
    if (drawn < count) startTransition(() => setDrawn(drawn + first));
  }, [drawn, count, first]);
  return Math.min(drawn, count);
}
