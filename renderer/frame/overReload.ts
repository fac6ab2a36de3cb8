/**
 * What stands over a reload of the window and no longer: laid in the window's own store in the moment it goes, taken out
 * again by the window that comes after it. A window that was opened and not loaded anew starts with nothing.
 */
const STORE = 'over-reload';
const left = taken();
const reads = new Map<string, () => unknown>();
window.addEventListener('pagehide', lay);

/** What was left under a name before the reload; null: nothing. To be had once. */
export function leftOverReload<T>(name: string): T | null {
  const value = left[name];
  delete left[name];
  return (value as T | undefined) ?? null;
}

/** Has `read` asked for what is to stand over the reload, when it comes; null from it: nothing is. */
export function keepOverReload(name: string, read: () => unknown): () => void {
  reads.set(name, read);
  return () => {
    if (reads.get(name) === read) reads.delete(name);
  };
}

function lay(): void {
  // what no screen has asked back yet goes on to the next
  const now = Object.entries(left).concat([...reads].map(([name, read]) => [name, read()]));
  window.sessionStorage.setItem(STORE, JSON.stringify(Object.fromEntries(now.filter(([, value]) => value !== null))));
}

function taken(): Record<string, unknown> {
  const text = window.sessionStorage.getItem(STORE);
  window.sessionStorage.removeItem(STORE);
  const [came] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
  return text !== null && came?.type === 'reload' ? JSON.parse(text) : {};
}
