import { EventEmitter } from 'node:events';
import { vi } from 'vitest';

type Handler = (event: unknown, ...args: unknown[]) => unknown;

/** Electron's WebContents, as far as the program knows it. */
export class WebContentsDouble extends EventEmitter {
  windowOpenHandler: ((details: { url: string }) => { action: string }) | undefined;
  readonly mainFrame = { url: 'app://hours-and-wear/', parent: null };
  reload = vi.fn();
  print = vi.fn();
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }) {
    this.windowOpenHandler = handler;
  }
}

/** Electron's BrowserWindow: keeps the options it was made with. */
export class BrowserWindowDouble extends EventEmitter {
  static made: BrowserWindowDouble[] = [];
  readonly webContents = new WebContentsDouble();
  readonly options: Record<string, unknown>;
  loaded: string | undefined;
  show = vi.fn();
  focus = vi.fn();
  restore = vi.fn();
  maximize = vi.fn();
  constructor(options: Record<string, unknown>) {
    super();
    this.options = options;
    BrowserWindowDouble.made.push(this);
  }
  loadURL(address: string) {
    this.loaded = address;
    return Promise.resolve();
  }
  getNormalBounds = () => ({ x: 40, y: 30, width: 1200, height: 800 });
  isMaximized = () => false;
  isMinimized = () => true;
}

/** Electron's Notification: keeps those that were shown. */
export class NotificationDouble extends EventEmitter {
  static supported = true;
  static shown: NotificationDouble[] = [];
  static isSupported = () => NotificationDouble.supported;
  readonly options: { title: string; body: string };
  constructor(options: { title: string; body: string }) {
    super();
    this.options = options;
  }
  show() {
    NotificationDouble.shown.push(this);
  }
}

class AppDouble extends EventEmitter {
  isPackaged = true;
  readonly paths: Record<string, string> = {};
  setName = vi.fn();
  addRecentDocument = vi.fn();
  enableSandbox = vi.fn();
  quit = vi.fn();
  requestSingleInstanceLock = vi.fn(() => true);
  whenReady = vi.fn(() => Promise.resolve());
  setPath(name: string, path: string) {
    this.paths[name] = path;
  }
}

class SessionDouble extends EventEmitter {
  permissionRequest: ((contents: unknown, permission: string, decide: (granted: boolean) => void) => void) | undefined;
  permissionCheck: (() => boolean) | undefined;
  devicePermission: (() => boolean) | undefined;
  served: ((request: { url: string; method: string }) => Response) | undefined;
  readonly protocol = {
    handle: (_scheme: string, serve: (request: { url: string; method: string }) => Response) => {
      this.served = serve;
    },
  };
  setPermissionRequestHandler(handler: NonNullable<SessionDouble['permissionRequest']>) {
    this.permissionRequest = handler;
  }
  setPermissionCheckHandler(handler: () => boolean) {
    this.permissionCheck = handler;
  }
  setDevicePermissionHandler(handler: () => boolean) {
    this.devicePermission = handler;
  }
}

/**
 * A stand-in for the module 'electron', fresh for each test:
 *   vi.doMock('electron', () => double)
 * It answers as the documented API does and keeps what it was told.
 */
export function electronDouble() {
  BrowserWindowDouble.made = [];
  NotificationDouble.shown = [];
  NotificationDouble.supported = true;
  const ipcHandlers = new Map<string, Handler>();
  return {
    app: new AppDouble(),
    BrowserWindow: BrowserWindowDouble,
    Notification: NotificationDouble,
    session: { defaultSession: new SessionDouble() },
    protocol: { registerSchemesAsPrivileged: vi.fn() },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
    shell: { openExternal: vi.fn((_address: string) => Promise.resolve()) },
    dialog: {
      showErrorBox: vi.fn(),
      showOpenDialog: vi.fn(async (..._its: unknown[]) => ({ canceled: false, filePaths: [] as string[] })),
    },
    Menu: { setApplicationMenu: vi.fn(), buildFromTemplate: vi.fn((template: unknown) => template) },
    ipcMain: { handle: (channel: string, handler: Handler) => void ipcHandlers.set(channel, handler) },
    ipcHandlers,
  };
}
