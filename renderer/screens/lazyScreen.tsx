import { type ComponentType, lazy, useState } from 'react';

/** A screen whose code is fetched when it is first shown, or before. */
export type LazyScreen = ComponentType & {
  /** fetches its code, so that it stands at once when it is shown */
  fetch: () => void;
};

/**
 * A screen fetched before is drawn in one go: React would show the empty sheet of a suspended screen for 300 ms at least.
 * @param load imports the module that has the screen as its default
 */
export function lazyScreen(load: () => Promise<{ default: ComponentType }>): LazyScreen {
  let fetched: ComponentType | null = null;
  const get = async () => {
    const module = await load();
    fetched = module.default;
    return module;
  };
  const Waiting = lazy(get);
  function Screen() {
    // a screen that stands stays the one it is
    const [Shown] = useState<ComponentType>(() => fetched ?? Waiting);
    return <Shown />;
  }
  return Object.assign(Screen, { fetch: () => void get().catch(() => undefined) }); // shown, it says what failed
}
