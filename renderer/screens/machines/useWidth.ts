import { type RefObject, useLayoutEffect, useState } from 'react';

/** Inner width of an element, its scroll bar left out [px]; 0 until it stands. */
export function useWidth(box: RefObject<HTMLElement | null>): number {
  const [widthPx, setWidthPx] = useState(0);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = () => setWidthPx(Math.floor(element.clientWidth));
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, [box]);
  return widthPx;
}
