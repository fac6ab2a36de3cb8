import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { RefusedError } from '../outcome.ts';
import { mendingFiles } from './recordFault.ts';

/** A file of a folder; names hold "/" between folders on every system. */
export type FileOnDisk = { name: string; bytes: Uint8Array };

/** Ending of what is not finished yet: it becomes its own name only when it is whole. */
const UNFINISHED = '.unfinished';

/**
 * Writes files into a new folder: all of them, or no folder.
 * @throws RefusedError folder-not-empty, cannot-write, disk-full
 */
export function writeNewFolder(folder: string, files: readonly FileOnDisk[]): void {
  mendingFiles(folder, () => {
    if (existsSync(folder) && readdirSync(folder).length > 0)
      throw new RefusedError({ code: 'folder-not-empty', facts: { path: 'toFolder', folder } });
    const unfinished = `${folder}${UNFINISHED}`;
    rmSync(unfinished, { recursive: true, force: true });
    try {
      for (const { name, bytes } of files) {
        const file = join(unfinished, name);
        mkdirSync(dirname(file), { recursive: true });
        writeFileSync(file, bytes, { flush: true });
      }
      if (existsSync(folder)) rmdirSync(folder);
      renameSync(unfinished, folder);
    } finally {
      rmSync(unfinished, { recursive: true, force: true });
    }
  });
}

/**
 * Writes one file that is not there yet, whole or not at all.
 * @throws RefusedError file-is-there, cannot-write, disk-full
 */
export function writeNewFile(file: string, bytes: Uint8Array): void {
  mendingFiles(file, () => {
    if (existsSync(file)) throw new RefusedError({ code: 'file-is-there', facts: { path: 'toFile', file } });
    const unfinished = `${file}${UNFINISHED}`;
    try {
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(unfinished, bytes, { flush: true });
      renameSync(unfinished, file);
    } finally {
      rmSync(unfinished, { force: true });
    }
  });
}

/** Every file of a folder and the folders in it. @throws RefusedError cannot-read */
export function readWholeFolder(folder: string): FileOnDisk[] {
  return reading(folder, () =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((file) => ({ name: relative(folder, file).split(sep).join('/'), bytes: readFileSync(file) })),
  );
}

/** @throws RefusedError cannot-read */
export const readWholeFile = (file: string): Uint8Array => reading(file, () => readFileSync(file));

/**
 * Lays a record file down under a passing name, and gives it its own once `lay` has ended well.
 * @param lay gets the passing name; it has closed the file when it returns
 */
export function layDownWhole<T>(path: string, lay: (passing: string) => T): T {
  return mendingFiles(path, () => {
    const passing = `${path}${UNFINISHED}`;
    const remove = () => {
      for (const end of ['', '-wal', '-shm']) rmSync(`${passing}${end}`, { force: true });
    };
    try {
      mkdirSync(dirname(path), { recursive: true });
      remove();
      const made = lay(passing);
      if (existsSync(path)) throw new RefusedError({ code: 'file-is-there', facts: { file: path } });
      renameSync(passing, path);
      return made;
    } finally {
      remove();
    }
  });
}

const systemCode = (thrown: unknown): string =>
  thrown instanceof Error && 'code' in thrown && 'syscall' in thrown ? String(thrown.code) : '';

function reading<T>(file: string, read: () => T): T {
  try {
    return read();
  } catch (thrown) {
    const code = systemCode(thrown);
    if (code === '') throw thrown;
    throw new RefusedError({ code: 'cannot-read', facts: { file, reason: code } });
  }
}
