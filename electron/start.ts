import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { buildProgram } from './build.ts';
import { electronProgram, fetchElectron } from './fetchElectron.ts';
import { cameUp, hasScreen } from './screen.ts';
import { type StartArguments, startArguments } from './startArguments.ts';

/**
 * `npm start`: opens the program in Electron; where its program can be neither found nor fetched, in an installed
 * browser as a window of its own; else in the default browser; else tells the address.
 */

const top = join(import.meta.dirname, '..');
const wanted = startArguments(process.argv.slice(2), process.env.INIT_CWD ?? process.cwd());
await buildProgram();
process.exit((await inElectron(wanted)) ?? (await overLoopback()));

/** Exit code of the built program over the loopback shell. It ends with this process, and is told of what tells this one to end. */
async function overLoopback(): Promise<number> {
  const program = join(top, '.build/electron/overLoopback.js');
  const child = spawn(process.execPath, [program, ...process.argv.slice(2)], {
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
  });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal));
  return new Promise((ended) => child.once('exit', (code) => ended(code ?? 1)));
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
