import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const NAME = 'hours-and-wear-tests-';

/**
 * A run of the tests keeps all its passing files in one folder, those of browsers and of programs that are killed among
 * them, and takes it away at its end; what a run leaves that was itself killed goes with the next. Called by the runner, in
 * the process that starts all others.
 */
export function setup(): void {
  const shared = tmpdir();
  for (const name of readdirSync(shared)) {
    if (name.startsWith(NAME) && !runs(Number(name.slice(NAME.length)))) remove(join(shared, name));
  }
  const own = join(shared, `${NAME}${process.pid}`);
  mkdirSync(own, { recursive: true });
  for (const variable of ['TMPDIR', 'TMP', 'TEMP']) process.env[variable] = own;
  // many tests start the program in a process or a thread of its own: it is compiled for the first of them
  process.env.NODE_COMPILE_CACHE = join(own, 'compiled');
  process.on('exit', () => remove(own));
}

/** What somebody else still writes into, or may not be taken away, is left to the next run. */
function remove(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
  } catch {}
}

/** Whether a process goes by that number. */
export function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    return (thrown as NodeJS.ErrnoException).code === 'EPERM'; // somebody else's
  }
}
