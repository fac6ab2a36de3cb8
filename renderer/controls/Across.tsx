import { type ReactNode, useEffect, useRef, useState } from 'react';
import { shared } from '#renderer/words/english.ts';

/**
 * A table of many columns. In a narrow window, or one zoomed in, it keeps its columns and is pushed sideways in a box of its own,
 * by arrow keys too: the sheet stands still, and what is said above and below it is read without pushing.
 */
export function Across({ children }: { children: ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  const [isPushed, setPushed] = useState(false);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const watch = new ResizeObserver(() => setPushed(element.scrollWidth > element.clientWidth + 1));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return (
    <div ref={box} className="across" {...(isPushed && { tabIndex: 0, role: 'group', 'aria-label': shared.pushed })}>
      {children}
    </div>
  );
}
