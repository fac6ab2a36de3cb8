import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { RefusedError } from '#core/outcome.ts';
import { dataFolder } from '#core/shells/dataFolder.ts';
import { logInto } from '#core/shells/logFile.ts';
import { openProgram } from '#core/shells/openProgram.ts';
import { serveLoopback } from '#core/shells/web.ts';
import { openAppWindow } from './appWindow.ts';
import { buildProgram } from './build.ts';
import { electronProgram, fetchElectron } from './fetchElectron.ts';
import { findBrowser } from './findBrowser.ts';
import { type StartArguments, startArguments } from './startArguments.ts';

/**
 * `npm start`: opens the program in Electron; where its program can be neither found nor fetched, in an installed
 * browser as a window of its own; else in the default browser; else tells the address.
 */

const top = join(import.meta.dirname, '..');
/** A window that ends with an error so soon after it was asked for never came up [ms]. */
const CAME_UP_AFTER_MS = 10_000;

const wanted = startArguments(process.argv.slice(2), process.env.INIT_CWD ?? process.cwd());
await buildProgram();
try {
  process.exit((await inElectron(wanted)) ?? (await overLoopback(wanted)));
} catch (thrown) {
  if (!(thrown instanceof RefusedError)) throw thrown;
  const { code, facts } = thrown.refusal;
  console.error(
    `The record was not opened: ${code}\n${facts?.file ?? wanted.recordPath}\nOpen another with: npm start -- --record FILE`,
  );
  process.exit(1);
}

/** Exit code once the window was closed; undefined when there is no Electron to open it in. */
async function inElectron({ recordPath, asOf, noOpen, inBrowser, fetchElectron: again }: StartArguments) {
  if (noOpen || inBrowser || !hasScreen()) return undefined;
  const program = electronProgram() ?? (await fetchElectron({ again }));
  if (program === undefined) return undefined;
  const asOfWords = asOf === undefined ? [] : ['--as-of', asOf];
  const rootWords = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const child = spawn(program, [top, ...rootWords, '--record', recordPath, ...asOfWords], { stdio: 'inherit' });
  return cameUp(child);
}

async function overLoopback({ recordPath, asOf, noOpen, inBrowser }: StartArguments): Promise<number> {
  const folder = dataFolder();
  const program = await openProgram({
    recordPath,
    ...(asOf !== undefined && { asOf }),
    dataFolder: folder,
    log: logInto(folder),
  });
  const loopback = await serveLoopback({ ask: program.ask, pageFolder: join(top, '.build', 'renderer') });
  const browser = noOpen || !hasScreen() ? undefined : findBrowser();
  if (!noOpen && !inBrowser && hasScreen()) {
    console.log(
      `Electron's program is not here and could not be fetched (npm start -- --fetch-electron tries again); opening the same program in ${browser ?? 'the default browser'}.`,
    );
  }
  const interrupted = new Promise<number>((stopped) => {
    process.once('SIGINT', () => stopped(0));
    process.once('SIGTERM', () => stopped(0));
  });

  const window = browser === undefined ? undefined : openAppWindow(browser, loopback.address, folder);
  const code = window && (await Promise.race([cameUp(window), interrupted]));
  window?.kill();
  // no window of its own: the program goes on until it is stopped
  if (code === undefined) await tellAddress(loopback.address, !noOpen && hasScreen(), interrupted);
  await loopback.close();
  await program.close();
  return code ?? 0;
}

async function tellAddress(address: string, openDefault: boolean, interrupted: Promise<number>): Promise<void> {
  if (openDefault) openInDefaultBrowser(address);
  console.log(`Hours and Wear: ${address}\nCtrl+C ends it.`);
  await interrupted;
}

/** Exit code of a window's process when it closes; undefined when it failed to come up at all. */
function cameUp(child: ChildProcess): Promise<number | undefined> {
  const from = performance.now();
  return new Promise((closed) => {
    child.once('error', () => closed(undefined));
    child.once('exit', (code) => {
      const failedAtOnce = code !== 0 && performance.now() - from < CAME_UP_AFTER_MS;
      closed(failedAtOnce ? undefined : (code ?? 0));
    });
  });
}

function openInDefaultBrowser(address: string): void {
  const [command, words] =
    process.platform === 'win32'
      ? ['rundll32', ['url.dll,FileProtocolHandler', address]]
      : [process.platform === 'darwin' ? 'open' : 'xdg-open', [address]];
  // where there is none the printed address is what remains
  spawn(command as string, words as string[], { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref();
}

/** A server without a screen cannot show a window, however many browsers it has. */
function hasScreen(): boolean {
  if (process.platform === 'win32' || process.platform === 'darwin') return true;
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}
