import { join } from 'node:path';
import { BrowserWindow, type BrowserWindowConstructorOptions, screen } from 'electron';
import { PAGE_ADDRESS } from './page.ts';
import { keepPlace, keptPlace } from './windowPlace.ts';

/** The page runs in the sandbox, in a world of its own, and reaches Node through the bridge of preload.ts alone. */
const PAGE_LIMITS: BrowserWindowConstructorOptions['webPreferences'] = {
  sandbox: true,
  contextIsolation: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  navigateOnDragDrop: false,
  spellcheck: false, // its dictionaries would be fetched from elsewhere
};

/** Opens the program's one window, where it last stood. */
export function openWindow(files: { preload: string; placeFile: string }): BrowserWindow {
  const screens = screen.getAllDisplays().map((display) => display.workArea);
  const kept = keptPlace(files.placeFile, screens);
  const { maximised, ...place } = kept ?? { maximised: false, width: 1360, height: 860 };
  const window = new BrowserWindow({
    ...place,
    minWidth: 600,
    minHeight: 400,
    show: false,
    title: 'Hours and Wear',
    webPreferences: { ...PAGE_LIMITS, preload: files.preload },
  });
  window.once('ready-to-show', () => {
    if (maximised) window.maximize();
    window.show();
  });
  window.on('close', () =>
    keepPlace(files.placeFile, { ...window.getNormalBounds(), maximised: window.isMaximized() }),
  );
  window.loadURL(PAGE_ADDRESS).catch(() => {});
  return window;
}

export const placeFileIn = (folder: string): string => join(folder, 'window.json');
