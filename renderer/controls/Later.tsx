import { type ReactNode, startTransition, useEffect, useState } from 'react';

/**
 * What is not looked at first: drawn a drawing or more after the rest, by React in small pieces, so that the rest stands at once
 * and keys are heard meanwhile. Nothing beside it is drawn anew for it.
 * @param turns how many drawings later; 0: with the rest
 * @param meanwhile stands in its place
 */
export function Later({
  turns = 1,
  meanwhile = null,
  children,
}: {
  turns?: number;
  meanwhile?: ReactNode;
  children: ReactNode;
}) {
  const [left, setLeft] = useState(turns);
  useEffect(() => {
    if (left > 0) startTransition(() => setLeft(left - 1));
  }, [left]);
  return left === 0 ? children : meanwhile;
}

/**
 * Of a long table so many rows as are drawn so far: the first at once, twice as many with each drawing after it, in small pieces.
 * @param first all of them: the whole table at once
 */
export function useRowsSoFar(count: number, first: number): number {
  const [drawn, setDrawn] = useState(first);
  useEffect(() => {
    if (drawn < count) startTransition(() => setDrawn(2 * drawn));
  }, [drawn, count]);
  return Math.min(drawn, count);
}
