import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

type Computer = {
  platform: NodeJS.Platform;
  env: Readonly<Record<string, string | undefined>>;
  exists: (path: string) => boolean;
};

const thisComputer = (): Computer => ({ platform: process.platform, env: process.env, exists: existsSync });

/**
 * An installed browser that can open a page as a window of its own (`--app`): Chromium first, then its relatives.
 * The environment variable CHROMIUM names one outright.
 * @returns whole path of its program, or undefined when there is none in the usual places
 */
export function findBrowser(computer: Computer = thisComputer()): string | undefined {
  const named = computer.env.CHROMIUM;
  if (named) return computer.exists(named) ? named : undefined;
  return placesFor(computer).find(computer.exists);
}

function placesFor({ platform, env }: Computer): string[] {
  if (platform === 'win32') {
    const roots = [env.ProgramFiles, env['ProgramFiles(x86)'], env.LOCALAPPDATA].filter((root) => root !== undefined);
    const programs = [
      'Chromium/Application/chrome.exe',
      'Google/Chrome/Application/chrome.exe',
      'Microsoft/Edge/Application/msedge.exe',
    ];
    return programs.flatMap((program) => roots.map((root) => join(root, ...program.split('/'))));
  }
  if (platform === 'darwin') {
    return ['Chromium', 'Google Chrome', 'Microsoft Edge'].map(
      (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
    );
  }
  const folders = [...(env.PATH ?? '').split(delimiter), '/usr/bin', '/usr/local/bin'].filter(Boolean);
  const programs = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
  return programs.flatMap((program) => folders.map((folder) => join(folder, program)));
}
