import { unzipSync, zipSync } from 'fflate';
import { type Outcome, ok, refuse } from '../outcome.ts';
import type { FileBytes } from './readFolder.ts';

/** The first day the format knows, in whatever time zone: a zip of the same files has the same bytes. */
const NO_TIME = () => new Date(1980, 0, 1);

export const zipOf = (files: readonly FileBytes[]): Uint8Array =>
  zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, [bytes, { mtime: NO_TIME(), level: 6 }]])));

/** More than this a zip may not unpack to: a small file can claim terabytes. */
const MOST_BYTES = 1024 ** 3;

export type ZipRefusal = { code: 'zip-broken' } | { code: 'zip-too-large'; facts: { mostMB: number } };

/**
 * The files of a zip. Sizes are added up from the zip's own directory before anything is unpacked, and nothing is
 * unpacked beyond the size its directory states.
 *
 * @param wanted which files to unpack, by their names; absent: all
 */
export function filesOfZip(
  bytes: Uint8Array,
  wanted: (name: string) => boolean = () => true,
  mostBytes = MOST_BYTES,
): Outcome<FileBytes[], ZipRefusal> {
  let unpacked = 0;
  try {
    unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (wanted(name)) unpacked += originalSize;
        return false;
      },
    });
    if (unpacked > mostBytes) return refuse({ code: 'zip-too-large', facts: { mostMB: Math.floor(mostBytes / 1e6) } });
    const files = unzipSync(bytes, { filter: ({ name }) => wanted(name) && !name.endsWith('/') });
    return ok(Object.entries(files).map(([name, content]) => ({ name, bytes: content })));
  } catch {
    return refuse({ code: 'zip-broken' });
  }
}
