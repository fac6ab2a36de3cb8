import type { HoursKind } from './hoursForm.ts';

/** What the Hours strip opens with; left out: found from the screen that stands. */
export type HoursOpening = { machineId?: number | undefined; kind?: HoursKind; dialHours?: number; saidBy?: string };

type Listener = (opening: HoursOpening) => void;
const listeners = new Set<Listener>();

/** Opens the Hours strip over whatever screen stands; from a key of a screen that knows its machine. */
export function openHours(opening: HoursOpening = {}): void {
  for (const listener of listeners) listener(opening);
}

/** For the one strip in the window. Returns what ends it. */
export function onOpenHours(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
