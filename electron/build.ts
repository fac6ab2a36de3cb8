import { mkdirSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const top = join(import.meta.dirname, '..');
const stamp = join(top, '.build', 'built.txt');
const CONFIGS = ['renderer/vite.config.ts', 'electron/vite.main.config.ts', 'electron/vite.preload.config.ts'];
const SOURCES = ['core', 'electron', 'renderer', 'package-lock.json'];

/** Builds the window, Electron's main process and its preload into .build, unless what is there is newer than all sources. */
export async function buildProgram({ evenIfFresh = false } = {}): Promise<void> {
  if (!evenIfFresh && isFresh()) return;
  const { build } = await import('vite'); // takes long to load, and most starts build nothing
  const startedAt = new Date();
  // whoever starts it, a test too: React for developers draws three times as slowly
  process.env.NODE_ENV = 'production';
  for (const config of CONFIGS) await build({ configFile: join(top, config), logLevel: 'warn' });
  mkdirSync(join(top, '.build'), { recursive: true });
  // the hour the build began: a source saved while it ran makes the next one run again
  writeFileSync(stamp, `${startedAt.toISOString()}\n`);
  utimesSync(stamp, startedAt, startedAt);
}

/** What was built is newer than all it was built from. */
export function isFresh(): boolean {
  const builtAt = statSync(stamp, { throwIfNoEntry: false })?.mtimeMs;
  return builtAt !== undefined && SOURCES.every((source) => newestMs(join(top, source)) < builtAt);
}

/** When the newest file in a folder was saved [ms since 1970]; tests do not count. */
function newestMs(path: string): number {
  const entry = statSync(path);
  if (!entry.isDirectory()) return /\.test\.tsx?$/.test(path) ? 0 : entry.mtimeMs;
  // the folder's own time as well: it changes when a file is taken away
  return Math.max(entry.mtimeMs, ...readdirSync(path).map((name) => newestMs(join(path, name))));
}

if (import.meta.main) await buildProgram({ evenIfFresh: process.argv.includes('--all') });
