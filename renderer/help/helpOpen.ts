import { useSyncExternalStore } from 'react';

/** The help strip as it stands: on which screen, and on which one question; no question: all that is asked there. */
export type HelpOpen = { at: string; topic: string | null } | null;

let open: HelpOpen = null;
const heard = new Set<() => void>();

function put(now: HelpOpen): void {
  open = now;
  for (const hear of heard) hear();
}

export const openHelp = (at: string, topic: string | null = null): void => put({ at, topic });
export const closeHelp = (): void => put(null);

/** Help stands on the screen it was asked on, and nowhere else. */
export const useHelp = (here: string): HelpOpen => {
  const now = useSyncExternalStore(
    (hear) => {
      heard.add(hear);
      return () => heard.delete(hear);
    },
    () => open,
  );
  return now?.at === here ? now : null;
};
