import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** In place of `core/use-cases/threadFile.ts` in a script that was built beside the program: its threads are the built program's. */
export const threadFile = (name: string): URL =>
  pathToFileURL(join(import.meta.dirname, '..', 'electron', `${name}.js`));
