import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Answer } from '#core/contract/operation.ts';
import { BrowserWindowDouble, electronDouble, NotificationDouble } from './electronDouble.ts';

// without a factory Node would load electron's own index.js, which fetches its program
vi.mock('electron', () => ({}));

const DEFECT_EVENTS = ['uncaughtException', 'unhandledRejection'];
let listenersBefore: Set<unknown>;
/** However busy the computer is. */
const waitFor = (check: () => unknown) => vi.waitFor(check, { timeout: 60_000 });

let folder: string;
let asked: [string, unknown][];
let answer: Answer;
let closed: number;
/** what the recall list has gained; nothing: no record is open */
let became: unknown[];
const DUE = { code: 'hours', hoursLeft: 140, on: '2027-03-01', passed: false };
let state: { open: boolean; path: string | null; recent: string[] };

beforeEach(() => {
  listenersBefore = new Set(DEFECT_EVENTS.flatMap((event) => process.listeners(event as 'exit')));
  folder = mkdtempSync(join(tmpdir(), 'electron-main-'));
  vi.stubEnv('XDG_DATA_HOME', folder);
  vi.stubEnv('APPDATA', folder);
  asked = [];
  answer = { ok: true, value: 'heard' };
  closed = 0;
  became = [];
  state = { open: false, path: null, recent: [] };
});

afterEach(() => {
  vi.unstubAllEnvs();
  // those of the program alone: the test runner has its own
  for (const event of DEFECT_EVENTS) {
    for (const listener of process.listeners(event as 'exit')) {
      if (!listenersBefore.has(listener)) process.removeListener(event, listener);
    }
  }
  rmSync(folder, { recursive: true, force: true });
});

/** Starts electron/main.ts with a double of Electron and a program that keeps what it is asked. */
async function start(prepare: (electron: ReturnType<typeof electronDouble>) => void = () => {}) {
  const electron = electronDouble();
  prepare(electron);
  const openProgram = vi.fn(async (_options: { recordPath: string }) => ({
    ask: async (name: string, request: unknown): Promise<Answer> => {
      if (name === 'record/state') return { ok: true, value: state };
      // asked by the clock some seconds after the start, or never where a test is quicker
      if (name === 'recall/news')
        return became.length === 0
          ? { ok: false, fault: { code: 'no-record', facts: {} } }
          : { ok: true, value: { since: '2026-11-20', became, toContact: 1, learning: false } };
      asked.push([name, request]);
      return answer;
    },
    close: async () => {
      closed += 1;
    },
  }));
  vi.resetModules();
  vi.doMock('electron', () => electron);
  vi.doMock('#core/shells/openProgram.ts', () => ({ openProgram }));
  vi.doMock('#core/shells/page.ts', async (original) => {
    const page = await original<typeof import('#core/shells/page.ts')>();
    return { ...page, pageFilesIn: () => page.pageFilesIn(aBuiltPage()) };
  });
  await import('#electron/main.ts');
  await waitFor(() => expect(openProgram.mock.calls.length + electron.app.quit.mock.calls.length).toBeGreaterThan(0));
  await new Promise((settled) => setImmediate(settled));
  const window = BrowserWindowDouble.made[0];
  return { electron, openProgram, window };
}

function aBuiltPage(): string {
  const page = join(folder, 'page');
  mkdirSync(page, { recursive: true });
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>page</title><meta nonce="PAGE_NONCE">');
  return page;
}

async function startedWindow() {
  const started = await start();
  if (!started.window) throw new Error('no window was opened');
  return { ...started, window: started.window };
}

const OWN_FRAME = { url: 'app://hours-and-wear/#/hours', parent: null };

type RecentMenu = { enabled: boolean; submenu: { label: string; click(): void }[] };

/** The submenu of the records opened last, in the menu set last. */
function recentInMenu(electron: ReturnType<typeof electronDouble>): RecentMenu {
  const menu = electron.Menu.setApplicationMenu.mock.lastCall?.[0] as { submenu?: { label?: string }[] }[];
  return menu.flatMap(({ submenu }) => submenu ?? []).find(({ label }) => label === 'Open &recent') as RecentMenu;
}

const navigation = (url: string) => ({ url, preventDefault: vi.fn() });

describe('the window', () => {
  test('is sandboxed, isolated, without Node, and shows our own page', async () => {
    const { window, electron } = await startedWindow();
    expect(window.options.webPreferences).toMatchObject({
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
      spellcheck: false,
      preload: expect.stringMatching(/preload\.cjs$/),
    });
    expect(window.options.webPreferences).not.toHaveProperty('enableBlinkFeatures');
    expect(electron.app.enableSandbox).toHaveBeenCalledOnce();
    expect(window.loaded).toBe('app://hours-and-wear/');
    expect(BrowserWindowDouble.made).toHaveLength(1);
  });

  test('is shown once it has something to show, and opens next time where it stood', async () => {
    const { window } = await startedWindow();
    expect(window.options).toMatchObject({ show: false, width: 1360 });
    window.emit('ready-to-show');
    expect(window.show).toHaveBeenCalledOnce();
    window.emit('close');
    const again = await startedWindow();
    expect(again.window.options).toMatchObject({ x: 40, y: 30, width: 1200, height: 800 });
    again.window.emit('ready-to-show');
    expect(again.window.maximize).not.toHaveBeenCalled();
    again.window.isMaximized = () => true;
    again.window.emit('close');
    const full = await startedWindow();
    full.window.emit('ready-to-show');
    expect(full.window.maximize).toHaveBeenCalledOnce();
  });

  test('opens where it likes when the screen it stood on is gone, or its note was written in', async () => {
    const { window } = await startedWindow();
    window.emit('close');
    const elsewhere = await start((electron) => {
      electron.screen.getAllDisplays = () => [{ workArea: { x: 5000, y: 0, width: 800, height: 600 } }];
    });
    expect(elsewhere.window?.options).not.toHaveProperty('x');
    writeFileSync(join(folder, 'hours-and-wear', 'window.json'), '{"x":"left"}');
    expect((await startedWindow()).window.options).not.toHaveProperty('x');
  });
});

describe('the page is kept where it is', () => {
  async function lockedContents() {
    const started = await startedWindow();
    const contents = started.window.webContents;
    started.electron.app.emit('web-contents-created', {}, contents);
    return { ...started, contents };
  }

  test('it may move within itself and nowhere else', async () => {
    const { contents, electron } = await lockedContents();
    const own = navigation('app://hours-and-wear/#/machines');
    contents.emit('will-navigate', own);
    expect(own.preventDefault).not.toHaveBeenCalled();
    for (const url of [
      'app://hours-and-wear.elsewhere.example/',
      'file:///etc/passwd',
      'http://127.0.0.1:8080/',
      'data:text/html,hello',
      'javascript:alert(1)',
      'blob:https://elsewhere.example/6f1c',
    ]) {
      for (const event of ['will-navigate', 'will-frame-navigate', 'will-redirect']) {
        const away = navigation(url);
        contents.emit(event, away);
        expect(away.preventDefault, `${event} ${url}`).toHaveBeenCalledOnce();
      }
    }
    expect(electron.shell.openExternal).not.toHaveBeenCalled();
  });

  test('a mail, a telephone call and a page over TLS are left to the system, nothing else is', async () => {
    const { contents, electron } = await lockedContents();
    const leaving = ['https://standards.example/', 'mailto:till@hof.example', 'tel:+4900000'];
    const staying = [
      'http://standards.example/',
      'file:///etc/passwd',
      'smb://server/share',
      'ms-settings:privacy',
      'https://bank.example@elsewhere.example/',
      'https://:bank.example@elsewhere.example/',
      'not an address',
    ];
    for (const url of [...leaving, ...staying])
      expect(contents.windowOpenHandler?.({ url })).toEqual({ action: 'deny' });
    expect(electron.shell.openExternal.mock.calls.map(([address]) => address)).toEqual(leaving);
  });

  test('nothing is embedded but a paper of ours', async () => {
    const { contents } = await lockedContents();
    const webview = navigation('https://elsewhere.example/');
    contents.emit('will-attach-webview', webview);
    expect(webview.preventDefault).toHaveBeenCalledOnce();
    const paper = navigation('blob:app://hours-and-wear/6f1c');
    contents.emit('will-frame-navigate', paper);
    expect(paper.preventDefault).not.toHaveBeenCalled();
  });

  test('every permission is denied, asked for or looked up', async () => {
    const { electron } = await lockedContents();
    const session = electron.session.defaultSession;
    for (const permission of [
      'media',
      'geolocation',
      'notifications',
      'clipboard-read',
      'openExternal',
      'fullscreen',
    ]) {
      const decide = vi.fn();
      session.permissionRequest?.({}, permission, decide);
      expect(decide).toHaveBeenCalledExactlyOnceWith(false);
    }
    expect(session.permissionCheck?.()).toBe(false);
    expect(session.devicePermission?.()).toBe(false);
  });

  test('a paper made in the window is saved where the person says; nothing is fetched from elsewhere', async () => {
    const { electron } = await lockedContents();
    const item = (url: string) => ({ getURL: () => url, getFilename: () => 'slip.pdf', setSaveDialogOptions: vi.fn() });
    const own = item('blob:app://hours-and-wear/6f1c');
    const kept = navigation('');
    electron.session.defaultSession.emit('will-download', kept, own);
    expect(own.setSaveDialogOptions).toHaveBeenCalledExactlyOnceWith({ defaultPath: 'slip.pdf' });
    expect(kept.preventDefault).not.toHaveBeenCalled();
    for (const url of ['https://elsewhere.example/tool.exe', 'blob:https://elsewhere.example/6f1c']) {
      const refused = navigation('');
      electron.session.defaultSession.emit('will-download', refused, item(url));
      expect(refused.preventDefault, url).toHaveBeenCalledOnce();
    }
  });
});

/** Whole: whatever is let in besides has to be let in here too. */
const POLICY = [
  "default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self' 'nonce-NONCE'; style-src-attr 'unsafe-inline'",
  "img-src 'self' data: blob:; font-src 'self' data:; connect-src 'self'; frame-src blob:; manifest-src 'self'",
  "base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
].join('; ');

describe('the page’s files', () => {
  test('come under app: with the content policy, and nothing else does', async () => {
    const { electron } = await startedWindow();
    const served = electron.session.defaultSession.served;
    const page = served?.({ url: 'app://hours-and-wear/', method: 'GET' });
    expect(page?.status).toBe(200);
    const nonce = /'nonce-([\w+/=]{22,})'/.exec(page?.headers.get('content-security-policy') ?? '')?.[1] ?? 'no nonce';
    expect(page?.headers.get('content-security-policy')).toBe(POLICY.replace('NONCE', nonce));
    expect(page?.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(await page?.text()).not.toContain('PAGE_NONCE');
    for (const url of [
      'app://hours-and-wear/../../etc/passwd',
      'app://hours-and-wear/%2e%2e%2f%2e%2e%2fetc/passwd',
      'app://elsewhere/index.html',
      'app://hours-and-wear/none.js',
    ]) {
      const none = served?.({ url, method: 'GET' });
      expect(none?.status, url).toBe(404);
      expect(none?.headers.get('content-security-policy'), url).toBe(POLICY.replace('NONCE', nonce));
    }
    expect(served?.({ url: 'app://hours-and-wear/', method: 'POST' }).status).toBe(404);
    // an origin of its own, secure, and past no policy
    expect(electron.protocol.registerSchemesAsPrivileged).toHaveBeenCalledExactlyOnceWith([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
    ]);
  });
});

describe('who may ask', () => {
  test('the main frame of our own page', async () => {
    const { electron } = await startedWindow();
    const ask = electron.ipcHandlers.get('ask');
    expect(await ask?.({ senderFrame: OWN_FRAME }, 'hours/add', { dialHours: 812 })).toEqual({
      ok: true,
      value: 'heard',
    });
    expect(asked).toEqual([['hours/add', { dialHours: 812 }]]);
    expect([...electron.ipcHandlers.keys()]).toEqual(['ask']);
  });

  test.each([
    ['another page', { url: 'https://elsewhere.example/', parent: null }],
    ['a page whose name begins like ours', { url: 'app://hours-and-wear.elsewhere.example/', parent: null }],
    ['a file', { url: 'file:///tmp/page.html', parent: null }],
    ['a frame inside our page', { url: 'app://hours-and-wear/', parent: OWN_FRAME }],
    ['a frame that is gone', null],
  ])('not %s', async (_who, senderFrame) => {
    const { electron } = await startedWindow();
    const reply = await electron.ipcHandlers.get('ask')?.({ senderFrame }, 'hours/add', {});
    expect(reply).toMatchObject({ ok: false, fault: { code: 'not-this-page' } });
    expect(asked).toEqual([]);
  });

  test('an operation is named by text', async () => {
    const { electron } = await startedWindow();
    const reply = await electron.ipcHandlers.get('ask')?.({ senderFrame: OWN_FRAME }, { toString: 'hours/add' }, {});
    expect(reply).toMatchObject({ ok: false, fault: { code: 'unknown-operation' } });
    expect(asked).toEqual([]);
  });
});

describe('the program', () => {
  test('runs once: a second start brings its record to the first and ends', async () => {
    const second = await start((electron) => electron.app.requestSingleInstanceLock.mockReturnValue(false));
    expect(second.electron.app.quit).toHaveBeenCalledOnce();
    expect(second.openProgram).not.toHaveBeenCalled();
    expect(second.window).toBeUndefined();

    const { electron, window } = await startedWindow();
    electron.app.emit('second-instance', {}, ['electron', 'winter.hoursandwear'], '/shop');
    expect(window.restore).toHaveBeenCalledOnce();
    expect(window.focus).toHaveBeenCalledOnce();
    await waitFor(() => expect(window.webContents.reload).toHaveBeenCalledOnce());
    expect(asked).toEqual([['record/open', { path: '/shop/winter.hoursandwear' }]]);
  });

  test('a record double-clicked before the program runs is opened once it does', async () => {
    const { window } = await start((electron) =>
      electron.app.whenReady.mockImplementation(async () => {
        electron.app.emit('open-file', navigation(''), '/shop/summer.hoursandwear');
      }),
    );
    await waitFor(() => expect(window?.webContents.reload).toHaveBeenCalledOnce());
    expect(asked).toEqual([['record/open', { path: '/shop/summer.hoursandwear' }]]);
  });

  test('a record that cannot be opened leaves the page as it is and says so', async () => {
    const { electron, window } = await startedWindow();
    answer = { ok: false, fault: { code: 'not-a-record', facts: {} } };
    electron.app.emit('open-file', navigation(''), '/shop/letter.hoursandwear');
    await waitFor(() => expect(electron.dialog.showErrorBox).toHaveBeenCalledOnce());
    expect(electron.dialog.showErrorBox.mock.calls[0]?.[1]).toMatch(/^\/shop\/letter.hoursandwear\n\n\w.* \w.*\.$/);
    expect(electron.dialog.showErrorBox.mock.calls[0]?.[1]).not.toContain('not-a-record');
    expect(window.webContents.reload).not.toHaveBeenCalled();
  });

  test('offers the records opened last, in its menu and to the system', async () => {
    const { electron } = await startedWindow();
    expect(recentInMenu(electron)).toMatchObject({ enabled: false, submenu: [] });
    state = {
      open: true,
      path: '/shop/b & c.hoursandwear',
      recent: ['/shop/b & c.hoursandwear', '/shop/a.hoursandwear'],
    };
    await electron.ipcHandlers.get('ask')?.({ senderFrame: OWN_FRAME }, 'record/open', {
      path: '/shop/b & c.hoursandwear',
    });
    await waitFor(() => expect(electron.app.addRecentDocument).toHaveBeenCalledExactlyOnceWith(state.path));
    const recent = recentInMenu(electron);
    expect(recent.submenu.map(({ label }) => label)).toEqual(['/shop/b && c.hoursandwear', '/shop/a.hoursandwear']);
    asked = [];
    recent.submenu[1]?.click();
    expect(asked).toEqual([['record/open', { path: '/shop/a.hoursandwear' }]]);
  });

  test('has the menu of its platform, with the usual keys', async () => {
    const { electron } = await startedWindow();
    const { menuTemplate } = await import('#electron/menu.ts');
    const needs = { recent: [], openRecord: () => {} };
    const menuOf = (platform: NodeJS.Platform) =>
      menuTemplate(new BrowserWindowDouble({}) as never, { ...needs, platform });
    expect(menuOf('darwin').map(({ role, label }) => role ?? label)).toEqual([
      ...['appMenu', '&File', 'editMenu', '&View', 'windowMenu'],
    ]);
    expect(menuOf('win32').map(({ role, label }) => role ?? label)).toEqual(['&File', 'editMenu', '&View']);
    const [file] = menuOf('linux');
    const accelerators = (file!.submenu as { accelerator?: string }[]).map(({ accelerator }) => accelerator);
    expect(accelerators.filter(Boolean)).toEqual(['CmdOrCtrl+O', 'CmdOrCtrl+P']);
    expect(electron.Menu.setApplicationMenu).toHaveBeenCalled();

    type Entries = { role?: string; accelerator?: string }[];
    const roles = (platform: NodeJS.Platform, label: string) =>
      ((menuOf(platform).find((menu) => menu.label === label)?.submenu ?? []) as Entries)
        .map(({ role, accelerator }) => [role, accelerator].filter(Boolean).join(' '))
        .filter(Boolean);
    // one ends the program, the other closes its window, as people of each platform expect
    expect(roles('win32', '&File').at(-1)).toBe('quit');
    expect(roles('darwin', '&File').at(-1)).toBe('close');
    // zoom, by + with Shift and without; nothing for developers in the packed program
    const view = ['resetZoom', 'zoomIn', 'zoomIn CmdOrCtrl+=', 'zoomOut', 'togglefullscreen'];
    for (const platform of ['win32', 'linux', 'darwin'] as const) expect(roles(platform, '&View')).toEqual(view);
    electron.app.isPackaged = false;
    expect(roles('linux', '&View')).toEqual([...view, 'reload', 'toggleDevTools']);
  });

  test('its menu opens the record that is picked, leaves all as it is where none is, and prints', async () => {
    const { electron, window } = await startedWindow();
    type Menus = { submenu: { label?: string; click?(): void }[] }[];
    const menus: Menus = electron.Menu.setApplicationMenu.mock.lastCall?.[0] ?? [];
    const press = (label: string) =>
      menus
        .flatMap(({ submenu }) => submenu ?? [])
        .find((entry) => entry.label === label)
        ?.click?.();
    press('&Open record…');
    await waitFor(() => expect(electron.dialog.showOpenDialog).toHaveBeenCalledOnce());
    expect(electron.dialog.showOpenDialog.mock.lastCall).toEqual([
      window,
      expect.objectContaining({
        properties: ['openFile'],
        filters: [{ name: 'Record of Hours and Wear', extensions: ['hoursandwear'] }],
      }),
    ]);
    await new Promise((settled) => setImmediate(settled));
    expect(asked).toEqual([]);
    electron.dialog.showOpenDialog.mockResolvedValue({ canceled: false, filePaths: ['/shop/spring.hoursandwear'] });
    press('&Open record…');
    await waitFor(() => expect(window.webContents.reload).toHaveBeenCalledOnce());
    expect(asked).toEqual([['record/open', { path: '/shop/spring.hoursandwear' }]]);
    press('&Print…');
    expect(window.webContents.print).toHaveBeenCalledOnce();
  });

  test('a notice that is pressed brings the window to the front, on the recall list', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout'] });
    try {
      became = [{ machineId: 1, machine: 'Vessel 118', farm: 'Hollin Top', reason: DUE }];
      const { window } = await startedWindow();
      await vi.advanceTimersByTimeAsync(5_000);
      expect(NotificationDouble.shown).toHaveLength(1);
      NotificationDouble.shown[0]?.emit('click');
      expect(window.restore).toHaveBeenCalledOnce();
      expect(window.focus).toHaveBeenCalledOnce();
      expect(window.loaded).toBe('app://hours-and-wear/#/recall');
    } finally {
      vi.useRealTimers();
    }
  });

  test('ends with its window, the record closed', async () => {
    const { electron } = await startedWindow();
    electron.app.emit('window-all-closed');
    expect(electron.app.quit).toHaveBeenCalledOnce();
    electron.app.emit('will-quit');
    expect(closed).toBe(1);
  });

  test('a start that fails is told and logged, and leaves nothing half open', async () => {
    const { electron, window } = await start((double) => {
      double.screen.getAllDisplays = () => {
        throw new Error('no screen');
      };
    });
    await waitFor(() => expect(electron.app.quit).toHaveBeenCalledOnce());
    expect(window).toBeUndefined();
    expect(electron.dialog.showErrorBox).toHaveBeenCalledOnce();
    expect(readFileSync(join(folder, 'hours-and-wear', 'log.txt'), 'utf8')).toContain('Error: no screen');
  });

  test('a defect outside any operation is told and logged, and the program goes on', async () => {
    const { electron } = await startedWindow();
    const ours = process.listeners('uncaughtException').find((listener) => !listenersBefore.has(listener));
    ours?.(new Error('spilled'), 'uncaughtException');
    expect(electron.dialog.showErrorBox).toHaveBeenCalledOnce();
    expect(electron.app.quit).not.toHaveBeenCalled();
    expect(readFileSync(join(folder, 'hours-and-wear', 'log.txt'), 'utf8')).toContain('Error: spilled');
  });

  test('a window whose process died is loaded again', async () => {
    const { window } = await startedWindow();
    window.webContents.emit('render-process-gone', {}, { reason: 'crashed' });
    expect(window.webContents.reload).toHaveBeenCalledOnce();
  });
});
