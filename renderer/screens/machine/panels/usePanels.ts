import { type RefObject, useEffect, useRef, useState } from 'react';

export const PANELS = ['sizes', 'limits', 'why', 'hours', 'findings', 'assemblies', 'visits', 'owners'] as const;
export type PanelName = (typeof PANELS)[number];

export type OpenPanels = {
  shown: PanelName;
  /** what scrolls */
  body: RefObject<HTMLDivElement | null>;
  /** where the panels begin */
  panels: RefObject<HTMLDivElement | null>;
  /** turns to a panel and brings it into sight, the chart above it as far as there is room */
  show: (panel: PanelName) => void;
  /** turns to a panel without moving anything */
  turnTo: (panel: PanelName) => void;
};

/**
 * Which table lies under the picture. The first stands open below the fold, so that every figure is there as text.
 * @param wanted the one an address asks for: it is brought into sight; undefined: none is
 */
export function usePanels(wanted?: PanelName): OpenPanels {
  const [shown, setShown] = useState<PanelName>(wanted ?? 'sizes');
  const [asked, setAsked] = useState(wanted ? 1 : 0);
  const body = useRef<HTMLDivElement>(null);
  const panels = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (asked === 0 || !panels.current) return;
    // a panel may fetch what it shows: it is followed while it fills
    const follow = new ResizeObserver(() => intoSight(body.current, panels.current));
    follow.observe(panels.current);
    const settled = setTimeout(() => follow.disconnect(), FILLED_WITHIN_MS);
    return () => {
      clearTimeout(settled);
      follow.disconnect();
    };
  }, [asked]);
  return {
    shown,
    body,
    panels,
    turnTo: setShown,
    show: (panel) => {
      setShown(panel);
      setAsked((times) => times + 1);
    },
  };
}

/** By then a panel has its facts, or the person has begun to scroll. */
const FILLED_WITHIN_MS = 1500;

/** As much of the panel as fits, without pushing its head out at the top. */
function intoSight(body: HTMLElement | null, panels: HTMLElement | null): void {
  if (!body || !panels) return;
  const bottom = panels.offsetTop + panels.offsetHeight - body.clientHeight;
  body.scrollTop = Math.max(body.scrollTop, Math.min(panels.offsetTop, bottom));
}
