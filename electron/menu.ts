import { app, type BrowserWindow, dialog, Menu, type MenuItemConstructorOptions } from 'electron';
import { RECORD_EXTENSION } from '#core/record/openRecord.ts';

type Needs = {
  platform: NodeJS.Platform;
  /** whole paths of the records opened last, newest first */
  recent: readonly string[];
  openRecord(path: string): void;
};

/** The menu of the platform's own habits: editing and zoom by the usual keys, and what only the program can do. */
export function setMenu(window: BrowserWindow, needs: Needs): void {
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(window, needs)));
}

export function menuTemplate(window: BrowserWindow, needs: Needs): MenuItemConstructorOptions[] {
  const isMac = needs.platform === 'darwin';
  return [
    ...(isMac ? [{ role: 'appMenu' } as const] : []),
    {
      label: '&File',
      submenu: [
        { label: '&Open record…', accelerator: 'CmdOrCtrl+O', click: () => void pickRecord(window, needs) },
        {
          label: 'Open &recent',
          enabled: needs.recent.length > 0,
          // an ampersand in a name would mark a key
          submenu: needs.recent.map((path) => ({
            label: path.replaceAll('&', '&&'),
            click: () => needs.openRecord(path),
          })),
        },
        { type: 'separator' },
        { label: '&Print…', accelerator: 'CmdOrCtrl+P', click: () => window.webContents.print({}) },
        { type: 'separator' },
        isMac ? { role: 'close' } : { role: 'quit' },
      ],
    },
    { role: 'editMenu' },
    {
      label: '&View',
      submenu: [
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        // where + needs Shift it is pressed without
        { role: 'zoomIn', accelerator: 'CmdOrCtrl+=', visible: false },
        { role: 'zoomOut' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
        // the page holds no state that a reload would lose but what is being typed; of use to developers only
        ...(app.isPackaged ? [] : ([{ role: 'reload' }, { role: 'toggleDevTools' }] as const)),
      ],
    },
    ...(isMac ? [{ role: 'windowMenu' } as const] : []),
  ];
}

async function pickRecord(window: BrowserWindow, needs: Needs): Promise<void> {
  const picked = await dialog.showOpenDialog(window, {
    title: 'Open record',
    properties: ['openFile'],
    filters: [{ name: 'Record of Hours and Wear', extensions: [RECORD_EXTENSION.slice(1)] }],
  });
  const path = picked.filePaths[0];
  if (path !== undefined) needs.openRecord(path);
}
