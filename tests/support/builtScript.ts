import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { build } from 'vite';
import { runs } from './ownTemporaryFolder.ts';
import { top } from './runScript.ts';

/** Two levels below the top, as deep as core's own folders: the program looks for its migrations and fonts by "../..". */
const BUILT = join(top, '.build');
const NAME = 'scripts-';
const own = join(BUILT, `${NAME}${process.pid}`);

const built = new Map<string, Promise<string>>();

/**
 * A script of the project built anew, for a test that starts it again and again: from its sources every start reads some
 * three hundred files anew, at ten times the work. Once a process of the tests; what one left goes with the next.
 * @returns the built file's path from the top
 */
export function builtScript(script: string): Promise<string> {
  const made = built.get(script) ?? makeOf(script);
  built.set(script, made);
  return made;
}

async function makeOf(script: string): Promise<string> {
  if (built.size === 0) takeAwayWhatWasLeft();
  await build({
    configFile: false,
    root: top,
    publicDir: false,
    logLevel: 'warn',
    resolve: {
      alias: [{ find: /^.*\/threadFile\.ts$/, replacement: join(import.meta.dirname, 'threadFileBeside.ts') }],
    },
    build: {
      ssr: join(top, script),
      outDir: own,
      emptyOutDir: false,
      target: 'node24',
      rollupOptions: { output: { chunkFileNames: '[name]-[hash].js' } },
    },
    ssr: { noExternal: true, external: ['better-sqlite3', '@react-pdf/renderer', 'highs', 'react'] },
  });
  return relative(top, join(own, basename(script).replace(/\.ts$/, '.js')));
}

function takeAwayWhatWasLeft(): void {
  mkdirSync(BUILT, { recursive: true });
  process.once('exit', () => rmSync(own, { recursive: true, force: true }));
  for (const name of readdirSync(BUILT))
    if (name.startsWith(NAME) && !runs(Number(name.slice(NAME.length))))
      rmSync(join(BUILT, name), { recursive: true, force: true });
}
