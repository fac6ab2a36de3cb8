import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { operation } from '#core/contract/operation.ts';
import { answerWith } from '#core/shells/answer.ts';
import { type Loopback, serveLoopback } from '#core/shells/web.ts';
import { INSTALL_LINE, testBrowserPath } from '#tests/support/browser.ts';
import { testBrowser } from './windowTest.ts';

const top = join(import.meta.dirname, '../..');
const browserPath = testBrowserPath();

/** A page of a few lines, built as the window is, that asks one operation of a program of one operation. */
const MAIN = `
  import { z } from 'zod';
  import { answerTo, pathOfFile } from '${join(top, 'renderer/ask.ts').replaceAll('\\', '/')}';
  const operation = { name: 'hours/add', zRequest: z.object({ dialHours: z.number() }), zReply: z.object({}) };
  globalThis.askHours = (dialHours) => answerTo(operation, { dialHours });
  globalThis.readsByZod = operation.zRequest.safeParse({ dialHours: 812 }).success;
  globalThis.pathOfFile = pathOfFile;
  // on a timer: what a test runs by the browser's own tools is let off the policy
  globalThis.runText = () => new Promise((done) => setTimeout(() => {
    try { done(new Function('return 1')()); } catch (thrown) { done(thrown.name); }
  }));
`;

let folder: string;
let loopback: Loopback;
let browser: Browser;
let asks = 0;

beforeAll(async () => {
  if (browserPath === undefined) expect.fail(`no Chromium for the window tests; install one: ${INSTALL_LINE}`);
  folder = mkdtempSync(join(tmpdir(), 'ask-in-window-'));
  mkdirSync(join(folder, 'source'));
  writeFileSync(
    join(folder, 'source/index.html'),
    '<!doctype html><title>page</title><script type="module" src="./main.ts"></script>',
  );
  writeFileSync(join(folder, 'source/main.ts'), MAIN);
  await build({
    configFile: join(top, 'renderer/vite.config.ts'),
    root: join(folder, 'source'),
    publicDir: join(top, 'renderer/public'),
    build: { outDir: join(folder, 'built') },
    logLevel: 'error',
  });
  const add = operation(
    'hours/add',
    z.object({ dialHours: z.number().min(0) }),
    z.object({ machineHours: z.number() }),
    {
      title: 'Add a dial reading',
    },
  );
  const ask = answerWith({
    operations: [add],
    handlers: {
      'hours/add': (offset, { dialHours }) => {
        asks += 1;
        return { machineHours: offset + dialHours };
      },
    },
    context: 4120,
    log: () => {},
  });
  loopback = await serveLoopback({ ask, pageFolder: join(folder, 'built') });
  browser = await testBrowser(browserPath);
});

afterAll(async () => {
  await loopback?.close();
  if (folder) rmSync(folder, { recursive: true, force: true });
});

/** Runs in the page; text, since types of the test do not hold there. */
const inPage = (page: Page, code: string): Promise<unknown> => page.evaluate(code);

async function opened(address = loopback.address) {
  const context = await browser.newContext();
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(address);
  return { context, page, errors };
}

describe.skipIf(browserPath === undefined && !process.env.CI)('the window over loopback', () => {
  test('asks and is answered, takes the token out of the address, and goes on after a reload', async () => {
    const { page, errors } = await opened();
    expect(await inPage(page, 'askHours(100)')).toEqual({ ok: true, value: { machineHours: 4220 } });
    expect(page.url()).toBe(`http://127.0.0.1:${loopback.port}/`);
    expect(await inPage(page, 'history.length')).toBeLessThanOrEqual(2);
    await page.reload();
    expect(await inPage(page, 'askHours(1)')).toEqual({ ok: true, value: { machineHours: 4121 } });
    expect(await inPage(page, 'askHours(-1)')).toMatchObject({
      fault: { code: 'not-as-expected', path: 'dialHours' },
    });
    expect(await inPage(page, 'readsByZod')).toBe(true);
    expect(await inPage(page, "pathOfFile(new File([], 'a.csv'))")).toBeNull();
    // zod looked for new Function nowhere, the icon was there: nothing is reported
    expect(errors).toEqual([]);
  });

  test('without its address it is told that the token is missing', async () => {
    const { page } = await opened(`http://127.0.0.1:${loopback.port}/`);
    expect(await inPage(page, 'askHours(1)')).toEqual({ ok: false, fault: { code: 'no-token', facts: {} } });
  });

  test('runs no script made from text, inline or from elsewhere', async () => {
    const { page } = await opened();
    expect(await inPage(page, 'runText()')).toBe('EvalError');
    const tried = `new Promise((done) => {
      const inline = document.createElement('script');
      inline.textContent = 'globalThis.inlineRan = true';
      document.head.append(inline);
      const foreign = document.createElement('script');
      foreign.src = 'https://elsewhere.example/x.js';
      foreign.onerror = () => done(globalThis.inlineRan ?? 'not run');
      document.head.append(foreign);
    })`;
    expect(await inPage(page, tried)).toBe('not run');
    expect(await inPage(page, "fetch('https://elsewhere.example/').then(() => 'sent', () => 'kept')")).toBe('kept');
  });

  test('another page on this computer can neither ask nor read nor frame it', async () => {
    const foreign = createServer((_request, response) =>
      response.setHeader('content-type', 'text/html').end('<title>other</title>'),
    );
    await new Promise<void>((listening) => foreign.listen(0, '127.0.0.1', listening));
    const { page } = await opened(`http://127.0.0.1:${(foreign.address() as AddressInfo).port}/`);
    const asksBefore = asks;
    const target = `http://127.0.0.1:${loopback.port}`;
    const headers = `{ 'content-type': 'application/json', authorization: 'Bearer ${loopback.token}' }`;
    const asked = `fetch('${target}/op/hours/add', { method: 'POST', headers: ${headers}, body: '{"dialHours":1}' }).then(() => 'answered', () => 'refused')`;
    expect(await inPage(page, asked)).toBe('refused');
    expect(await inPage(page, `fetch('${target}/').then((r) => r.text(), () => 'refused')`)).toBe('refused');
    const blind = `fetch('${target}/op/hours/add', { method: 'POST', mode: 'no-cors', body: '{"dialHours":1}' }).then(() => 'sent and answered', () => 'refused')`;
    expect(await inPage(page, blind)).toBe('refused');
    const framed = `new Promise((done) => {
      const frame = document.createElement('iframe');
      frame.onload = () => { try { done(frame.contentWindow.askHours ? 'inside' : 'empty'); } catch { done('closed off'); } };
      frame.src = '${target}/';
      document.body.append(frame);
    })`;
    expect(await inPage(page, framed)).toBe('closed off');
    expect(asks).toBe(asksBefore);
    foreign.close();
  });

  test('when the program has ended, says so', async () => {
    const gone = await serveLoopback({
      ask: async () => ({ ok: true, value: 1 }),
      pageFolder: join(folder, 'built'),
    });
    const { page } = await opened(gone.address);
    expect(await inPage(page, 'askHours(1)')).toEqual({ ok: true, value: 1 });
    await gone.close();
    expect(await inPage(page, 'askHours(1)')).toEqual({ ok: false, fault: { code: 'no-connection', facts: {} } });
  });

  test('over Electron’s bridge it asks there, and learns where a file lies', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.addInitScript(`window.hoursAndWear = {
      ask: async (name, request) => ({ ok: true, value: { name, request } }),
      pathOfFile: (file) => '/shop/' + file.name,
    }`);
    await page.goto(`http://127.0.0.1:${loopback.port}/`);
    expect(await inPage(page, 'askHours(7)')).toEqual({
      ok: true,
      value: { name: 'hours/add', request: { dialHours: 7 } },
    });
    expect(await inPage(page, "pathOfFile(new File([], 'a.csv'))")).toBe('/shop/a.csv');
  });
});
