import { type ComponentType, type ReactNode, useEffect, useState } from 'react';

/** What stands while its code is on the way. */
type Meanwhile = { meanwhile: ReactNode };

/** A part of the window, a screen or what a screen opens, whose code is fetched when it is first shown, or before. */
export type LazyPart<Props = object> = ComponentType<Props & Meanwhile> & {
  /** fetches its code, so that it stands at once when it is shown */
  fetch: () => void;
};

type Came<Props> = { part: ComponentType<Props> } | { fault: unknown };

/**
 * It is drawn as soon as its code is there: React's own way of waiting would leave what stands meanwhile for 300 ms at least.
 * Throws, when drawn, what kept its code from coming.
 * @param load imports the module that has the part as its default
 */
export function lazyPart<Props extends object>(
  load: () => Promise<{ default: ComponentType<Props> }>,
): LazyPart<Props> {
  let fetched: { part: ComponentType<Props> } | null = null;
  const get = async () => {
    fetched = { part: (await load()).default };
    return fetched;
  };
  function Part({ meanwhile, ...props }: Props & Meanwhile) {
    // a part that stands stays the one it is, and is asked for no more
    const [came, setCame] = useState<Came<Props> | null>(() => fetched);
    const isWaiting = came === null;
    useEffect(() => {
      if (!isWaiting) return;
      let left = false;
      const show = (now: Came<Props>) => left || setCame(now);
      get().then(show, (fault) => show({ fault }));
      return () => {
        left = true;
      };
    }, [isWaiting]);
    if (came === null) return meanwhile;
    if ('fault' in came) throw came.fault;
    return <came.part {...(props as unknown as Props)} />;
  }
  return Object.assign(Part, { fetch: () => void get().catch(() => undefined) }); // shown, it says what failed
}
