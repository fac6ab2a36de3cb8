import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { useAccelerator } from '#renderer/controls/useAccelerator.ts';
import { HoursForm } from './HoursForm.tsx';
import { machineOf } from './machineOf.ts';
import { type HoursOpening, onOpenHours, openHours } from './openHours.ts';
import './hours.css';

/**
 * Hours, from any screen by H: a strip over the sheet, which stays in sight below it. It opens on the machine the screen
 * is of, where it is of one. Stands once in the window, above the sheet.
 */
export function HoursStrip() {
  const [here] = useLocation();
  const [opening, setOpening] = useState<(HoursOpening & { times: number }) | null>(null);
  /** where the person was: the focus goes back there */
  const cameFrom = useRef<Element | null>(null);
  useEffect(
    () =>
      onOpenHours((asked) => {
        cameFrom.current = document.activeElement;
        setOpening((was) => ({
          ...asked,
          machineId: asked.machineId ?? machineOf(here),
          times: (was?.times ?? 0) + 1,
        }));
      }),
    [here],
  );
  useAccelerator('H', () => openHours());
  if (!opening) return null;
  const close = () => {
    setOpening(null);
    if (cameFrom.current instanceof HTMLElement && cameFrom.current.isConnected) cameFrom.current.focus();
  };
  return <HoursForm key={opening.times} opening={opening} onClose={close} />;
}
