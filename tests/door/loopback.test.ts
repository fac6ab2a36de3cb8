import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Loopback, serveLoopback } from '#core/shells/web.ts';
import { type RawReply, rawRequest } from '#tests/support/rawHttp.ts';

const folder = mkdtempSync(join(tmpdir(), 'loopback-'));
const LARGE_BYTES = 24_000_000;
const asked: { name: string; request: unknown }[] = [];
let loopback: Loopback;

beforeAll(async () => {
  mkdirSync(join(folder, 'page/assets'), { recursive: true });
  writeFileSync(join(folder, 'page/index.html'), '<!doctype html><title>page</title><meta nonce="PAGE_NONCE">');
  writeFileSync(join(folder, 'page/assets/main.js'), 'globalThis.started = true;');
  writeFileSync(join(folder, 'page/favicon.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  writeFileSync(join(folder, 'page/.secret'), 'hidden');
  writeFileSync(join(folder, 'page/assets/large.png'), Buffer.alloc(LARGE_BYTES));
  writeFileSync(join(folder, 'record.hours'), 'the shop record');
  symlinkSync(join(folder, 'record.hours'), join(folder, 'page/linked.html'));
  loopback = await serveLoopback({
    ask: async (name, request) => {
      asked.push({ name, request });
      return { ok: true, value: { heard: request } };
    },
    pageFolder: join(folder, 'page'),
    maxRequestBytes: 1000,
    slowness: { headersMs: 300, requestMs: 600, idleMs: 300, takingReplyMs: 400, lookEveryMs: 50 },
  });
});

afterAll(async () => {
  await loopback.close();
  rmSync(folder, { recursive: true, force: true });
});

type Knock = {
  method?: string;
  path?: string;
  headers?: Record<string, string | undefined>;
  body?: string;
};

/** A request as the window sends it, with anything about it changed. */
function knock({ method = 'POST', path = '/op/hours/add', headers = {}, body = '{"dialHours":812}' }: Knock) {
  const all: Record<string, string | undefined> = {
    Host: `127.0.0.1:${loopback.port}`,
    Origin: `http://127.0.0.1:${loopback.port}`,
    'Sec-Fetch-Site': 'same-origin',
    Authorization: `Bearer ${loopback.token}`,
    'Content-Type': 'application/json',
    'Content-Length': String(Buffer.byteLength(body)),
    ...headers,
  };
  const lines = Object.entries(all).filter(([, value]) => value !== undefined);
  const head = [`${method} ${path} HTTP/1.1`, ...lines.map(([name, value]) => `${name}: ${value}`)].join('\r\n');
  return rawRequest(loopback.port, `${head}\r\n\r\n${body}`);
}

const codeOf = (reply: RawReply | undefined) => JSON.parse(reply?.body ?? 'null')?.fault?.code;

describe('what the window may do', () => {
  test('it asks with its token, and is answered in JSON', async () => {
    asked.length = 0;
    const reply = await knock({});
    expect(reply?.status).toBe(200);
    expect(JSON.parse(reply?.body ?? '')).toEqual({ ok: true, value: { heard: { dialHours: 812 } } });
    expect(asked).toEqual([{ name: 'hours/add', request: { dialHours: 812 } }]);
  });

  test('it gets its own files, with this start’s nonce in the page and in the policy', async () => {
    const reply = await knock({
      method: 'GET',
      path: '/',
      headers: { 'Sec-Fetch-Site': 'none', Origin: undefined },
      body: '',
    });
    expect(reply?.status).toBe(200);
    const nonce = /nonce="([^"]+)"/.exec(reply?.body ?? '')?.[1];
    expect(nonce).toMatch(/^[\w+/]{22}==$/);
    expect(reply?.headers['content-security-policy']).toContain(`style-src 'self' 'nonce-${nonce}'`);
    expect((await knock({ method: 'GET', path: '/assets/main.js?v=2', body: '' }))?.headers['content-type']).toBe(
      'text/javascript; charset=utf-8',
    );
    expect((await knock({ method: 'GET', path: '/favicon.ico', body: '' }))?.status).toBe(200);
  });

  test('its scripts come from the program alone: no inline script, no eval, nothing from elsewhere, no frame around it', async () => {
    const policy = (await knock({ method: 'GET', path: '/', body: '' }))?.headers['content-security-policy'] ?? '';
    const directives = Object.fromEntries(policy.split('; ').map((line) => [line.split(' ')[0], line]));
    expect(directives['default-src']).toBe("default-src 'none'");
    expect(directives['script-src']).toBe("script-src 'self'");
    expect(directives['connect-src']).toBe("connect-src 'self'");
    expect(directives['frame-ancestors']).toBe("frame-ancestors 'none'");
    expect(directives['base-uri']).toBe("base-uri 'none'");
    expect(directives['form-action']).toBe("form-action 'none'");
    expect(policy).not.toContain('unsafe-eval');
    expect(policy).not.toMatch(/https?:/);
  });

  test('no reply of any kind is opened to other pages', async () => {
    const replies = [
      await knock({}),
      await knock({ method: 'OPTIONS', headers: { 'Access-Control-Request-Method': 'POST' } }),
      await knock({ headers: { Origin: 'https://elsewhere.example' } }),
    ];
    for (const reply of replies) {
      expect(Object.keys(reply?.headers ?? {}).filter((name) => name.startsWith('access-control'))).toEqual([]);
      expect(reply?.headers['x-content-type-options']).toBe('nosniff');
      expect(reply?.headers['content-security-policy']).toBeDefined();
    }
  });
});

describe('who is refused', () => {
  const own = () => `127.0.0.1:${loopback.port}`;
  const refusals: [string, () => Knock, number, string][] = [
    [
      'a page whose own name was pointed here',
      () => ({ headers: { Host: `elsewhere.example:${loopback.port}` } }),
      421,
      'wrong-host',
    ],
    ['the name localhost', () => ({ headers: { Host: `localhost:${loopback.port}` } }), 421, 'wrong-host'],
    ['another port', () => ({ headers: { Host: '127.0.0.1:1' } }), 421, 'wrong-host'],
    ['another page', () => ({ headers: { Origin: 'https://elsewhere.example' } }), 403, 'not-this-page'],
    ['a page with no origin to name', () => ({ headers: { Origin: 'null' } }), 403, 'not-this-page'],
    ['another program on this computer', () => ({ headers: { Origin: 'http://127.0.0.1:1' } }), 403, 'not-this-page'],
    [
      'a request across sites',
      () => ({ headers: { Origin: undefined, 'Sec-Fetch-Site': 'cross-site' } }),
      403,
      'not-this-page',
    ],
    ['a request from a sister site', () => ({ headers: { 'Sec-Fetch-Site': 'same-site' } }), 403, 'not-this-page'],
    ['a navigation that asks an operation', () => ({ headers: { 'Sec-Fetch-Site': 'none' } }), 403, 'not-this-page'],
    [
      'a link from another site to the page',
      () => ({ method: 'GET', path: '/', headers: { 'Sec-Fetch-Site': 'cross-site' } }),
      403,
      'not-this-page',
    ],
    ['no token', () => ({ headers: { Authorization: undefined } }), 401, 'no-token'],
    ['a wrong token', () => ({ headers: { Authorization: `Bearer ${'x'.repeat(43)}` } }), 401, 'no-token'],
    [
      'a part of the token',
      () => ({ headers: { Authorization: `Bearer ${loopback.token.slice(0, -1)}` } }),
      401,
      'no-token',
    ],
    [
      'the token under another scheme',
      () => ({ headers: { Authorization: `Basic ${loopback.token}` } }),
      401,
      'no-token',
    ],
    [
      'the token in the address',
      () => ({ path: `/op/hours/add?token=${loopback.token}`, headers: { Authorization: undefined } }),
      401,
      'no-token',
    ],
    ['asking by GET', () => ({ method: 'GET' }), 405, 'method-not-allowed'],
    ['asking by PUT', () => ({ method: 'PUT' }), 405, 'method-not-allowed'],
    ['posting to a file', () => ({ path: '/' }), 405, 'method-not-allowed'],
    ['a form', () => ({ headers: { 'Content-Type': 'application/x-www-form-urlencoded' } }), 415, 'not-json'],
    [
      'plain text that a page may send unasked',
      () => ({ headers: { 'Content-Type': 'text/plain;application/json' } }),
      415,
      'not-json',
    ],
    ['no content type', () => ({ headers: { 'Content-Type': undefined } }), 415, 'not-json'],
    ['broken JSON', () => ({ body: '{"dialHours":' }), 400, 'broken-json'],
    ['an empty body', () => ({ body: '' }), 400, 'broken-json'],
    ['a body over the limit', () => ({ body: JSON.stringify('x'.repeat(1000)) }), 413, 'too-large'],
    ['a body that says it is over the limit', () => ({ headers: { 'Content-Length': '999999999' } }), 413, 'too-large'],
    ['an address of another server', () => ({ path: `http://${own()}/op/hours/add` }), 404, 'not-found'],
    ['a file that is not there', () => ({ method: 'GET', path: '/none.js', body: '' }), 404, 'not-found'],
    ['a hidden file', () => ({ method: 'GET', path: '/.secret', body: '' }), 404, 'not-found'],
    ['a link out of the folder', () => ({ method: 'GET', path: '/linked.html', body: '' }), 404, 'not-found'],
    ['a folder', () => ({ method: 'GET', path: '/assets', body: '' }), 404, 'not-found'],
  ];

  test.each(refusals)('%s', async (_who, request, status, code) => {
    asked.length = 0;
    const reply = await knock(request());
    expect({ status: reply?.status, code: codeOf(reply) }).toEqual({ status, code });
    expect(asked).toEqual([]);
  });

  test.each([
    '/../record.hours',
    '/assets/../../record.hours',
    '/%2e%2e/record.hours',
    '/%2e%2e%2frecord.hours',
    '/..%5crecord.hours',
    '/..\\record.hours',
    '//record.hours',
    '/assets/%00/../../record.hours',
    '/....//record.hours',
    '/%c0%ae%c0%ae/record.hours',
  ])('a way out of the folder: %s', async (path) => {
    const reply = await knock({ method: 'GET', path, body: '' });
    expect(reply?.status).toBe(404);
    expect(reply?.body).not.toContain('the shop record');
  });

  test('a body in pieces that grows over the limit', async () => {
    asked.length = 0;
    const piece = `1f4\r\n${' '.repeat(500)}\r\n`;
    const reply = await knock({
      headers: { 'Content-Length': undefined, 'Transfer-Encoding': 'chunked' },
      body: `${piece}${piece}${piece}2\r\n{}\r\n0\r\n\r\n`,
    });
    expect(codeOf(reply)).toBe('too-large');
    expect(asked).toEqual([]);
  });

  test('a body that asks whether it may come', async () => {
    const reply = await knock({ headers: { Expect: '100-continue' } });
    expect(reply?.status).toBe(417);
  });

  test('a request that could be read in two ways', async () => {
    asked.length = 0;
    const reply = await knock({
      headers: { 'Transfer-Encoding': 'chunked', 'Content-Length': '4' },
      body: '2\r\n{}\r\n0\r\n\r\n',
    });
    expect(reply?.status ?? 0).not.toBe(200);
    const twoHosts = await knock({ headers: { host: '127.0.0.1' } });
    expect(codeOf(twoHosts)).toBe('wrong-host');
    expect(asked).toEqual([]);
  });
});

test('each start has a token of its own, and takes no other', async () => {
  const next = await serveLoopback({ ask: async () => ({ ok: true, value: null }), pageFolder: folder });
  expect(Buffer.from(next.token, 'base64url').length).toBe(32);
  expect(next.token).not.toBe(loopback.token);
  const reply = await knock({ headers: { Authorization: `Bearer ${next.token}` } });
  expect(codeOf(reply)).toBe('no-token');
  await next.close();
});

describe('who dawdles', () => {
  const openedFor = (bytes: string, port = loopback.port) =>
    new Promise<number>((closed) => {
      const from = performance.now();
      const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
      socket.on('error', () => {});
      socket.on('close', () => closed(performance.now() - from));
      socket.resume();
    });

  test('a head that is never finished is hung up on, long before a body would be', async () => {
    const slowness = { headersMs: 300, requestMs: 600_000, idleMs: 600_000, takingReplyMs: 600_000, lookEveryMs: 50 };
    const patient = await serveLoopback({ ask: async () => ({ ok: true, value: null }), pageFolder: folder, slowness });
    const head = `GET / HTTP/1.1\r\nHost: 127.0.0.1:${patient.port}\r\n`;
    expect(await openedFor(head, patient.port)).toBeLessThan(20_000);
    await patient.close();
  });

  test('a body that is never finished is hung up on', async () => {
    const head = `POST /op/hours/add HTTP/1.1\r\nHost: 127.0.0.1:${loopback.port}\r\nAuthorization: Bearer ${loopback.token}\r\n`;
    asked.length = 0;
    expect(await openedFor(`${head}Content-Type: application/json\r\nContent-Length: 900\r\n\r\n{`)).toBeLessThan(
      20_000,
    );
    expect(asked).toEqual([]);
  });

  test('a client that does not take the reply it asked for is hung up on', async () => {
    const taken = await new Promise<number>((closed) => {
      let bytes = 0;
      const socket = connect(loopback.port, '127.0.0.1', () => {
        socket.pause();
        socket.write(`GET /assets/large.png HTTP/1.1\r\nHost: 127.0.0.1:${loopback.port}\r\n\r\n`);
        setTimeout(() => socket.resume(), 1_200);
      });
      socket.on('data', (chunk) => {
        bytes += chunk.length;
      });
      socket.on('error', () => {});
      socket.on('close', () => closed(bytes));
    });
    expect(taken).toBeLessThan(LARGE_BYTES);
  });

  test('a connection that says nothing is hung up on', async () => {
    expect(await openedFor('')).toBeLessThan(20_000);
  });
});

test('it listens on the loopback address and on no other of this computer', async () => {
  const others = Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter((address) => address.family === 'IPv4' && !address.internal)
    .map((address) => address.address);
  for (const address of [...others, '127.0.0.2']) {
    const opened = await new Promise((done) => {
      const socket = connect(loopback.port, address, () => done(true));
      socket.on('error', () => done(false));
    });
    expect(opened, address).toBe(false);
  }
});
