import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { runScript } from '#tests/support/runScript.ts';

const ADDRESS = /Hours and Wear: (http:\/\/127\.0\.0\.1:\d+)\/#token=([\w-]{43})\n/;
let folder: string;
let env: Record<string, string>;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'start-'));
  env = {
    XDG_DATA_HOME: join(folder, 'data'),
    APPDATA: join(folder, 'data'),
    DISPLAY: '',
    WAYLAND_DISPLAY: '',
    CHROMIUM: '',
  };
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Stands for a browser: notes what it was called with and what it found in its folder, and is closed after a while. */
function aBrowser({ openForMs, code = 0 }: { openForMs: number; code?: number }): {
  program: string;
  notes: () => { args: string[]; found: string[] };
} {
  const program = join(folder, 'browser.mjs');
  const notesFile = join(folder, 'notes.json');
  writeFileSync(
    program,
    `#!${process.execPath}
    import { readdirSync, writeFileSync } from 'node:fs';
    const args = process.argv.slice(2);
    const own = args.find((arg) => arg.startsWith('--user-data-dir=')).slice('--user-data-dir='.length);
    writeFileSync(${JSON.stringify(notesFile)}, JSON.stringify({ args, found: readdirSync(own) }));
    writeFileSync(own + '/history', 'x');
    setTimeout(() => process.exit(${code}), ${openForMs});
    `,
  );
  chmodSync(program, 0o755);
  return { program, notes: () => JSON.parse(readFileSync(notesFile, 'utf8')) };
}

describe('npm start', () => {
  test('with --no-open tells the address, serves the window and the program there, and ends when told to', async () => {
    const start = runScript('electron/start.ts', ['--no-open', '--record', 'winter/shop.hoursandwear'], {
      standingIn: folder,
      env,
    });
    const [, origin = '', token = ''] = await start.until(ADDRESS);
    const page = await fetch(`${origin}/`);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<div id="root">');
    const asked = await fetch(`${origin}/op/record/state`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
      body: '{}',
    });
    const answer = (await asked.json()) as {
      ok: boolean;
      value: { open: boolean; today: string; defaultPath: string };
    };
    expect(answer).toMatchObject({ ok: true, value: { open: false } });
    start.child.kill('SIGTERM');
    expect((await start.ended).code).toBe(0);
  });

  test('on a computer without a screen tells the address and opens nothing, whatever browser there is', async () => {
    const browser = aBrowser({ openForMs: 0 });
    const start = runScript('electron/start.ts', [], { env: { ...env, CHROMIUM: browser.program } });
    await start.until(ADDRESS);
    start.child.kill('SIGTERM');
    await start.ended;
    expect(browser.notes).toThrow();
  });

  // a script cannot stand for a program on Windows, and a Mac always has a screen
  describe.runIf(process.platform === 'linux')('in a browser', () => {
    test('opens a window of its own with an empty folder of its own, and ends when that is closed', async () => {
      const browser = aBrowser({ openForMs: 300 });
      const leftOver = join(folder, 'data/hours-and-wear/window-999999999');
      mkdirSync(leftOver, { recursive: true });
      const start = runScript('electron/start.ts', ['--in-browser'], {
        env: { ...env, DISPLAY: ':9', CHROMIUM: browser.program },
      });
      expect(await start.ended).toMatchObject({ code: 0, out: '' });
      const { args, found } = browser.notes();
      expect(args[0]).toMatch(/^--app=http:\/\/127\.0\.0\.1:\d+\/#token=[\w-]{43}$/);
      const own = args[1]?.replace('--user-data-dir=', '') ?? '';
      expect(own.startsWith(join(folder, 'data/hours-and-wear/window-'))).toBe(true);
      expect(found).toEqual([]);
      expect(existsSync(own)).toBe(false);
      expect(existsSync(leftOver)).toBe(false);
      expect(args.includes('--no-sandbox')).toBe(process.getuid?.() === 0);
    });

    test('a browser that does not come up leaves the program running, and the address is told', async () => {
      const browser = aBrowser({ openForMs: 0, code: 1 });
      const start = runScript('electron/start.ts', ['--in-browser'], {
        env: { ...env, DISPLAY: ':9', CHROMIUM: browser.program, PATH: folder },
      });
      const [, origin] = await start.until(ADDRESS);
      expect((await fetch(`${origin}/`)).status).toBe(200);
      start.child.kill('SIGTERM');
      expect((await start.ended).code).toBe(0);
    });
  });
});
