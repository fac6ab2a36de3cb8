import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { findBrowser } from '#electron/findBrowser.ts';

/** What a person types to get a browser for the window tests. */
export const INSTALL_LINE =
  process.platform === 'linux' && existsSync('/etc/debian_version')
    ? 'apt-get update && apt-get install -y --no-install-recommends chromium-headless-shell   (as root)'
    : 'npx playwright-core install chromium';

/**
 * Chromium for tests: the one CHROMIUM names, an installed one, or the one playwright keeps for itself. Where Chromium's
 * headless shell is installed it goes before the browser: the same pages, drawn without the window around them, for two
 * thirds of the work.
 */
export function testBrowserPath(): string | undefined {
  const installed = process.env.CHROMIUM ? findBrowser() : (SHELLS.find(existsSync) ?? findBrowser());
  if (installed || process.env.CHROMIUM) return installed;
  const own = chromium.executablePath();
  return existsSync(own) ? own : undefined;
}

const SHELLS = ['/usr/bin/chromium-headless-shell', '/usr/local/bin/chromium-headless-shell'];

/**
 * What the window around a page would do for itself: suggestions below the address, drawn anew for every window of a test,
 * and a process held ready for the next page, begun for every window and never used, among them. Playwright leaves out such
 * things too, but of two such lists the browser hears the later.
 */
const LEFT_OUT = [
  ...['WebUIOmniboxPopup', 'WebUIOmniboxAimPopup', 'AimEnabled', 'PreconnectToSearch', 'OptimizationHints'],
  ...['SpareRendererForSitePerProcess'],
  ...['NetworkTimeServiceQuerying', 'MediaRouter', 'LensOverlay', 'HttpsUpgrades', 'HttpsFirstBalancedModeAutoEnable'],
  ...['PaintHolding', 'ThirdPartyStoragePartitioning', 'DestroyProfileOnBrowserClose'],
  ...['AvoidUnnecessaryBeforeUnloadCheckSync', 'AvoidCorsURLLoaderRestartOnRedirect', 'TcpPortRandomizationWin'],
];

/** Quiet, and with nothing that calls out; the sandbox needs a user that is not root. */
export const BROWSER_FLAGS = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  `--disable-features=${LEFT_OUT.join(',')}`,
];

/** Finds a browser, or installs one where that can be done without asking anybody. */
export function ensureTestBrowser(): string | undefined {
  const found = testBrowserPath();
  if (found || process.env.CHROMIUM) return found;
  console.log('No Chromium for the window tests: installing one.');
  if (isDebianRoot()) {
    const quiet = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const run = (...args: string[]) => spawnSync('apt-get', args, { stdio: 'inherit', env: quiet, timeout: 600_000 });
    const install = (name: string) => run('install', '-y', '--no-install-recommends', name).status === 0;
    if (run('update').status === 0) install('chromium-headless-shell') || install('chromium');
  } else {
    spawnSync(process.execPath, [playwrightCommand(), 'install', 'chromium'], { stdio: 'inherit', timeout: 600_000 });
  }
  return testBrowserPath();
}

const isDebianRoot = (): boolean =>
  process.platform === 'linux' &&
  process.getuid?.() === 0 &&
  existsSync('/etc/debian_version') &&
  existsSync('/usr/bin/apt-get');

const playwrightCommand = (): string => join(import.meta.dirname, '../../node_modules/playwright-core/cli.js');
