import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Ahead of the fuses in Electron's program, so that tools find them. @source package @electron/fuses, its README */
export const FUSE_SENTINEL = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';

/** Fuses of wire version 1, in their order on the wire. @source package @electron/fuses, FuseV1Options */
export const FUSES = [
  'runAsNode',
  'enableCookieEncryption',
  'enableNodeOptionsEnvironmentVariable',
  'enableNodeCliInspectArguments',
  'enableEmbeddedAsarIntegrityValidation',
  'onlyLoadAppFromAsar',
  'loadBrowserProcessSpecificV8Snapshot',
  'grantFileProtocolExtraPrivileges',
] as const;

/**
 * Lays down a folder shaped as Electron's own runtime folder for Linux, so that the program can be packed where the real
 * one cannot be fetched: its program is a shell script that carries a fuse wire, all fuses unset.
 */
export function layElectronDist(folder: string, version: string): void {
  for (const inside of ['resources', 'locales']) mkdirSync(join(folder, inside), { recursive: true });
  const wire = Buffer.from([1, FUSES.length, ...FUSES.map(() => '0'.charCodeAt(0))]);
  writeFileSync(
    join(folder, 'electron'),
    Buffer.concat([Buffer.from(`#!/bin/sh\n# ${FUSE_SENTINEL}`), wire, Buffer.from('\n')]),
  );
  chmodSync(join(folder, 'electron'), 0o755);
  writeFileSync(join(folder, 'version'), version);
  for (const name of ['LICENSE', 'LICENSES.chromium.html', 'locales/en-US.pak', 'locales/de.pak'])
    writeFileSync(join(folder, name), name);
}

/** What a packed program's fuses are set to, read off the program itself. */
export function fusesOf(program: Buffer): Record<(typeof FUSES)[number], boolean> {
  const at = program.indexOf(FUSE_SENTINEL) + FUSE_SENTINEL.length;
  return Object.fromEntries(
    FUSES.map((name, place) => [name, program[at + 2 + place] === '1'.charCodeAt(0)]),
  ) as Record<(typeof FUSES)[number], boolean>;
}
