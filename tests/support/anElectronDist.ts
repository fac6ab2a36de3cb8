import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

/** Ahead of the fuses in Electron's program, so that tools find them. @source package @electron/fuses, its README */
export const FUSE_SENTINEL = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';

/**
 * Fuses of wire version 1 in their order on the wire, as Electron ships: what is not said to electron-builder stays so.
 * @source Electron's documentation, "Electron Fuses"; order: package @electron/fuses, FuseV1Options
 */
export const FUSES_AS_SHIPPED = {
  runAsNode: true,
  enableCookieEncryption: false,
  enableNodeOptionsEnvironmentVariable: true,
  enableNodeCliInspectArguments: true,
  enableEmbeddedAsarIntegrityValidation: false,
  onlyLoadAppFromAsar: false,
  loadBrowserProcessSpecificV8Snapshot: false,
  grantFileProtocolExtraPrivileges: true,
} as const;

/**
 * Lays down a folder shaped as Electron's own runtime folder for Linux, so that the program can be packed where the real
 * one cannot be fetched: its program is a shell script that carries a fuse wire, its fuses as Electron ships them.
 */
export function layElectronDist(folder: string, version: string): void {
  for (const inside of ['resources', 'locales']) mkdirSync(join(folder, inside), { recursive: true });
  const fuses = Object.values(FUSES_AS_SHIPPED).map((isOn) => (isOn ? '1' : '0').charCodeAt(0));
  const wire = Buffer.from([1, fuses.length, ...fuses]);
  writeFileSync(
    join(folder, 'electron'),
    Buffer.concat([Buffer.from(`#!/bin/sh\n# ${FUSE_SENTINEL}`), wire, Buffer.from('\n')]),
  );
  chmodSync(join(folder, 'electron'), 0o755);
  writeFileSync(join(folder, 'version'), version);
  for (const name of ['LICENSE', 'LICENSES.chromium.html', 'locales/en-US.pak', 'locales/de.pak'])
    writeFileSync(join(folder, name), name);
}

type Fuses = {
  /** place on the wire by name, and the other way round */
  FuseV1Options: Record<string, string | number>;
  /** state by place: the character 0 or 1 */
  getCurrentFuseWire(program: string): Promise<Record<number, number>>;
};
/** Electron's own reader of fuses; electron-builder brings it, and sets them with it. */
const { FuseV1Options, getCurrentFuseWire } = createRequire(createRequire(import.meta.url).resolve('electron-builder'))(
  '@electron/fuses',
) as Fuses;

/** What a packed program's fuses are set to, by Electron's names for them, read off the program itself. */
export async function fusesOf(program: string): Promise<Record<string, boolean>> {
  const wire = await getCurrentFuseWire(program);
  const places = Object.entries(FuseV1Options).filter((entry): entry is [string, number] => Number.isInteger(entry[1]));
  return Object.fromEntries(
    places.map(([name, place]) => [`${name[0]?.toLowerCase()}${name.slice(1)}`, wire[place] === '1'.charCodeAt(0)]),
  );
}
