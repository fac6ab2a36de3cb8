import { EventEmitter } from 'node:events';
import { registerHooks } from 'node:module';

/**
 * Loaded before the built main process (`node --import`), so that it runs without Electron's program: answers the
 * module 'electron' with the little of it that a start needs. The requests in ASKED are asked over IPC, as the window
 * would, and the answers printed, one JSON line each; then the program is closed as if its window were.
 */

type Handler = (event: object, name: string, request: unknown) => Promise<unknown>;
const asked = JSON.parse(process.env.ASKED ?? '[]') as [string, unknown][];

class StandInWindow extends EventEmitter {
  webContents = Object.assign(new EventEmitter(), { setWindowOpenHandler() {} });
  loadURL = async () => {};
}

const app = Object.assign(new EventEmitter(), {
  isPackaged: true,
  setName() {},
  addRecentDocument() {},
  setPath() {},
  enableSandbox() {},
  requestSingleInstanceLock: () => true,
  whenReady: async () => {},
  quit() {
    app.emit('will-quit');
    process.exit(0);
  },
});

const defaultSession = Object.assign(new EventEmitter(), {
  setPermissionRequestHandler() {},
  setPermissionCheckHandler() {},
  setDevicePermissionHandler() {},
  protocol: {
    async handle(_scheme: string, serve: (request: { url: string; method: string }) => Response) {
      const page = serve({ url: 'app://hours-and-wear/', method: 'GET' });
      console.log(JSON.stringify({ page: page.status, holdsRoot: (await page.text()).includes('id="root"') }));
    },
  },
});

const electron = {
  app,
  BrowserWindow: StandInWindow,
  session: { defaultSession },
  protocol: { registerSchemesAsPrivileged() {} },
  screen: { getAllDisplays: () => [] },
  Notification: { isSupported: () => false },
  shell: {},
  dialog: { showErrorBox: (title: string, text: string) => console.error(`${title}\n${text}`) },
  Menu: { setApplicationMenu() {}, buildFromTemplate: (template: unknown) => template },
  ipcMain: {
    async handle(_channel: string, handler: Handler) {
      const event = { senderFrame: { url: 'app://hours-and-wear/', parent: null } };
      for (const [name, request] of asked) console.log(JSON.stringify(await handler(event, name, request)));
      app.emit('window-all-closed');
    },
  },
};

Object.assign(globalThis, { electronStandIn: electron });
const source = Object.keys(electron).map((name) => `export const ${name} = globalThis.electronStandIn.${name};`);

registerHooks({
  resolve: (name, context, next) =>
    name === 'electron' ? { url: 'stand-in:electron', shortCircuit: true, format: 'module' } : next(name, context),
  load: (url, context, next) =>
    url === 'stand-in:electron'
      ? { format: 'module', source: source.join('\n'), shortCircuit: true }
      : next(url, context),
});
