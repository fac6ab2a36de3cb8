import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { openProgram } from '#core/shells/openProgram.ts';
import { serveLoopback } from '#core/shells/web.ts';
import { BROWSER_FLAGS, INSTALL_LINE, testBrowserPath } from './browser.ts';
import { layLearnedDemo } from './learnedDemo.ts';

/**
 * Takes the picture of the README: the page of the demo's loader, from the real program in a real window.
 * `npm run -s build && npx node tests/support/takePicture.ts`
 */
const ROOT = join(import.meta.dirname, '..', '..');
const PICTURE = join(ROOT, 'demo-data', 'pictures', 'machine.png');
const AS_OF = '2026-11-09';
const LOADER = 'Durvane 412';

const executablePath = testBrowserPath();
if (executablePath === undefined) throw new Error(`No Chromium to take the picture with: ${INSTALL_LINE}`);
const folder = mkdtempSync(join(tmpdir(), 'picture-'));
const log = ({ operation, error }: { operation: string; error: Error }) => console.error(operation, error);
const program = await openProgram({
  recordPath: join(folder, 'none.hoursandwear'),
  dataFolder: folder,
  asOf: AS_OF,
  log,
});
await layLearnedDemo(folder);
await program.ask('record/openDemo', {});
const loopback = await serveLoopback({ ask: program.ask, pageFolder: join(ROOT, '.build', 'renderer') });
const browser = await chromium.launch({ executablePath, args: BROWSER_FLAGS });
const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1.5 });
page.setDefaultTimeout(120_000);
await page.addInitScript(() => localStorage.setItem('tour', 'out'));
await page.goto(loopback.address);
await page.getByText(LOADER, { exact: true }).first().dblclick();
await page.getByRole('heading', { level: 1, name: LOADER }).waitFor();
await page.locator('.recharts-surface').first().waitFor();
await page.evaluate(() => getSelection()?.removeAllRanges());
await page.mouse.move(0, 0);
mkdirSync(join(PICTURE, '..'), { recursive: true });
await page.screenshot({ path: PICTURE, animations: 'disabled' });
await browser.close();
await loopback.close();
program.close();
rmSync(folder, { recursive: true, force: true });
console.log(PICTURE);
