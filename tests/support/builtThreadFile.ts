import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { isFresh } from '#electron/build.ts';
import { top } from './runScript.ts';

let built: boolean | null = null;

/**
 * In place of `core/use-cases/threadFile.ts`: threads start from the built program while that is newer than its sources. From
 * the sources each would read some three hundred files anew, at ten times the work.
 */
export function threadFile(name: string, starter: string): URL {
  built ??= isFresh();
  return built ? pathToFileURL(join(top, '.build', 'electron', `${name}.js`)) : new URL(`./${name}.ts`, starter);
}
