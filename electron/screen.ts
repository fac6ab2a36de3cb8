import type { ChildProcess } from 'node:child_process';

/** A window that ends with an error so soon after it was asked for never came up [ms]. */
const CAME_UP_AFTER_MS = 10_000;

/** Exit code of a window's process when it closes; undefined when it failed to come up at all. */
export function cameUp(child: ChildProcess): Promise<number | undefined> {
  const from = performance.now();
  return new Promise((closed) => {
    child.once('error', () => closed(undefined));
    child.once('exit', (code) => {
      const failedAtOnce = code !== 0 && performance.now() - from < CAME_UP_AFTER_MS;
      closed(failedAtOnce ? undefined : (code ?? 0));
    });
  });
}

/** A server without a screen cannot show a window, however many browsers it has. */
export function hasScreen(): boolean {
  if (process.platform === 'win32' || process.platform === 'darwin') return true;
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}
