import { useRef } from 'react';

/** The last value that came, while the next is asked for: the sheet does not empty and fill with every letter typed. */
export function useKept<T>(value: T | undefined, letGo: boolean): T | null {
  const kept = useRef<T | null>(null);
  if (letGo) kept.current = null;
  else if (value !== undefined) kept.current = value;
  return kept.current;
}
