import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { RefusedError } from '#core/outcome.ts';
import { dataFolder } from '#core/shells/dataFolder.ts';
import { logInto } from '#core/shells/logFile.ts';
import { openProgram } from '#core/shells/openProgram.ts';
import { serveLoopback } from '#core/shells/web.ts';
import { openAppWindow } from './appWindow.ts';
import { findBrowser } from './findBrowser.ts';
import { cameUp, hasScreen } from './screen.ts';
import { type StartArguments, startArguments } from './startArguments.ts';

/**
 * The program over the loopback shell, in an installed browser as a window of its own, else in the default browser, else at the
 * address it tells. `npm start` runs it built: from its sources it would begin two seconds of a core later.
 * Built, this file is .build/electron/overLoopback.js; the window's files lie beside its folder.
 */

const pageFolder = join(import.meta.dirname, '..', 'renderer');
const wanted = startArguments(process.argv.slice(2), process.env.INIT_CWD ?? process.cwd());
try {
  process.exit(await served(wanted));
} catch (thrown) {
  if (!(thrown instanceof RefusedError)) throw thrown;
  const { code, facts } = thrown.refusal;
  console.error(
    `The record was not opened: ${code}\n${facts?.file ?? wanted.recordPath}\nOpen another with: npm start -- --record FILE`,
  );
  process.exit(1);
}

/** Exit code once it has ended. */
async function served({ recordPath, asOf, noOpen, inBrowser }: StartArguments): Promise<number> {
  const folder = dataFolder();
  const program = await openProgram({
    recordPath,
    ...(asOf !== undefined && { asOf }),
    dataFolder: folder,
    log: logInto(folder),
  });
  const loopback = await serveLoopback({ ask: program.ask, pageFolder });
  const browser = noOpen || !hasScreen() ? undefined : findBrowser();
  if (!noOpen && !inBrowser && hasScreen()) {
    console.log(
      `Electron's program is not here and could not be fetched (npm start -- --fetch-electron tries again); opening the same program in ${browser ?? 'the default browser'}.`,
    );
  }
  const interrupted = new Promise<number>((stopped) => {
    // a key struck in a terminal may come twice: by itself, and from the process that started this one
    for (const signal of ['SIGINT', 'SIGTERM', 'disconnect'] as const) process.on(signal, () => stopped(0));
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
