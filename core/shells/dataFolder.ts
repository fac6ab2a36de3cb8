import { homedir } from 'node:os';
import { join } from 'node:path';
import { RECORD_EXTENSION } from '../record/openRecord.ts';

type Computer = { platform: NodeJS.Platform; home: string; env: Readonly<Record<string, string | undefined>> };

const thisComputer = (): Computer => ({ platform: process.platform, home: homedir(), env: process.env });

/**
 * The platform's folder for the data of programs. Every shell keeps to it, so that the record is the same in all of them.
 * @source XDG Base Directory Specification 0.8 (Linux and others); Known Folders, FOLDERID_RoamingAppData (Windows);
 *   File System Programming Guide, Application Support (macOS) - the last two from memory
 */
export function dataFolder({ platform, home, env }: Computer = thisComputer()): string {
  if (platform === 'win32') return join(env.APPDATA || join(home, 'AppData', 'Roaming'), 'Hours and Wear');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Hours and Wear');
  // the specification wants a relative XDG_DATA_HOME passed over
  const base = env.XDG_DATA_HOME?.startsWith('/') ? env.XDG_DATA_HOME : join(home, '.local', 'share');
  return join(base, 'hours-and-wear');
}

/** The record a program opens when none is named. */
export const defaultRecordPath = (folder = dataFolder()): string => join(folder, `shop${RECORD_EXTENSION}`);
