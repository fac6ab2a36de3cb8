import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Opens an address as a window of its own in an installed browser. The browser gets an empty folder for its own data,
 * so that it is a process of its own, which ends when the window is closed, and knows nothing of the person's browsing.
 */
export function openAppWindow(browser: string, address: string, dataFolder: string): ChildProcess {
  const folder = join(dataFolder, `${FOLDER_START}${process.pid}`);
  clearLeftOver(dataFolder);
  mkdirSync(folder, { recursive: true });
  const child = spawn(browser, appWindowFlags(address, folder), { stdio: 'ignore' });
  child.once('exit', () => rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }));
  return child;
}

export const appWindowFlags = (address: string, folder: string, isRoot = process.getuid?.() === 0): string[] => [
  `--app=${address}`,
  `--user-data-dir=${folder}`,
  '--window-size=1360,860',
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  // the browser refuses its sandbox to root, and would not start
  ...(isRoot ? ['--no-sandbox'] : []),
];

const FOLDER_START = 'window-';

/** Takes away the folders of windows whose program was ended before it could. */
function clearLeftOver(dataFolder: string): void {
  mkdirSync(dataFolder, { recursive: true });
  for (const name of readdirSync(dataFolder)) {
    const pid = new RegExp(`^${FOLDER_START}(\\d+)$`).exec(name)?.[1];
    if (pid !== undefined && !isRunning(Number(pid))) rmSync(join(dataFolder, name), { recursive: true, force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    return (thrown as NodeJS.ErrnoException).code === 'EPERM';
  }
}
