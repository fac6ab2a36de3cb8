import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const top = join(import.meta.dirname, '..');
const packageFolder = join(top, 'node_modules', 'electron');
const distFolder = process.env.ELECTRON_OVERRIDE_DIST_PATH || join(packageFolder, 'dist');
/** Left behind by a fetch that failed, so that the next starts do not wait for it again. */
const triedFile = join(top, '.build', 'electron-not-fetched.txt');

const LOOK_EVERY_MS = 500;
const GIVE_UP_AFTER_MS = 20_000;

/** Electron's program where it lies beside its package; undefined when it was never fetched. */
export function electronProgram(): string | undefined {
  try {
    const program = join(distFolder, readFileSync(join(packageFolder, 'path.txt'), 'utf8').trim());
    return existsSync(program) ? program : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Fetches Electron's program by its package's own installer: once, with the megabytes shown as they come, given up
 * after 20 s in which nothing came. A later start does not try again unless told to.
 */
export async function fetchElectron({ again }: { again: boolean }): Promise<string | undefined> {
  const version = electronVersion();
  if (version === undefined || (!again && triedVersion() === version)) return undefined;
  const landing = mkdtempSync(join(tmpdir(), 'electron-fetch-'));
  // the installer downloads under the system's temporary folder: given one of its own, what arrives can be weighed
  const env = { ...process.env, TMPDIR: landing, TEMP: landing, TMP: landing };
  const installer = spawn(process.execPath, [join(packageFolder, 'install.js')], { env, stdio: 'ignore' });
  const fetched = await watchedToEnd(installer, () => bytesIn(landing) + bytesIn(distFolder), showMegabytes);
  rmSync(landing, { recursive: true, force: true });
  if (process.stdout.isTTY) process.stdout.write('\r\x1b[K');
  const program = fetched ? electronProgram() : undefined;
  if (program === undefined) noteTried(version);
  return program;
}

type Ending = { on(event: 'exit', ended: (code: number | null) => void): unknown; kill(): unknown };

/**
 * True when the child ended well. Stopped when what it brings in has not changed for so long.
 * @param weighBytes what has arrived [bytes]; any change is a sign of life, since the archive is moved and unpacked too
 */
export function watchedToEnd(
  child: Ending,
  weighBytes: () => number,
  show: (bytes: number) => void,
  { lookEveryMs = LOOK_EVERY_MS, giveUpAfterMs = GIVE_UP_AFTER_MS } = {},
): Promise<boolean> {
  return new Promise((ended) => {
    let bytes = weighBytes();
    let stillForMs = 0;
    const looking = setInterval(() => {
      const now = weighBytes();
      stillForMs = now === bytes ? stillForMs + lookEveryMs : 0;
      if (now !== bytes) show(now);
      bytes = now;
      if (stillForMs >= giveUpAfterMs) child.kill();
    }, lookEveryMs);
    child.on('exit', (code) => {
      clearInterval(looking);
      ended(code === 0);
    });
  });
}

function showMegabytes(bytes: number): void {
  if (process.stdout.isTTY) process.stdout.write(`\rFetching Electron: ${(bytes / 1e6).toFixed(0)} MB`);
}

function bytesIn(folder: string): number {
  let sum = 0;
  try {
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      if (entry.isFile()) sum += statSync(join(entry.parentPath, entry.name), { throwIfNoEntry: false })?.size ?? 0;
    }
  } catch {
    // not there yet, or taken away between listing and weighing
  }
  return sum;
}

function electronVersion(): string | undefined {
  try {
    return (JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')) as { version: string }).version;
  } catch {
    return undefined;
  }
}

function triedVersion(): string | undefined {
  return existsSync(triedFile) ? readFileSync(triedFile, 'utf8').trim() : undefined;
}

function noteTried(version: string): void {
  mkdirSync(join(top, '.build'), { recursive: true });
  writeFileSync(triedFile, `${version}\n`);
}
