import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Loopback, serveLoopback } from '#core/shells/web.ts';
import { caseCount } from '#tests/support/counts.ts';
import { rawRequest } from '#tests/support/rawHttp.ts';

const folder = mkdtempSync(join(tmpdir(), 'loopback-fuzz-'));
const SECRET = 'the shop record of an invented shop';
let loopback: Loopback;
let asks = 0;

beforeAll(async () => {
  mkdirSync(join(folder, 'page'));
  writeFileSync(join(folder, 'page/index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(folder, 'record.hours'), SECRET);
  loopback = await serveLoopback({
    ask: async () => {
      asks += 1;
      return { ok: true, value: null };
    },
    pageFolder: join(folder, 'page'),
    maxRequestBytes: 4000,
    slowness: { headersMs: 80, requestMs: 120, idleMs: 80, takingReplyMs: 500, lookEveryMs: 20 },
  });
});

afterAll(async () => {
  await loopback.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A right request, as lines: what the cases below bend. */
const rightLines = () => [
  'POST /op/hours/add HTTP/1.1',
  `Host: 127.0.0.1:${loopback.port}`,
  `Origin: http://127.0.0.1:${loopback.port}`,
  'Sec-Fetch-Site: same-origin',
  `Authorization: Bearer ${loopback.token}`,
  'Content-Type: application/json',
  'Content-Length: 18',
];
const RIGHT_BODY = '{"dialHours": 812}';

const STRANGE_LINES = [
  'GET / HTTP/1.1',
  'GET /../record.hours HTTP/1.1',
  'GET /%2e%2e/record.hours HTTP/1.1',
  'GET http://elsewhere.example/ HTTP/1.1',
  'OPTIONS * HTTP/1.1',
  'CONNECT 127.0.0.1:22 HTTP/1.1',
  'POST /op/__proto__ HTTP/1.0',
  'Host: elsewhere.example',
  'Host: localhost',
  'Host:',
  'Origin: null',
  'Origin: https://elsewhere.example',
  'Sec-Fetch-Site: cross-site',
  'Authorization: Bearer',
  'Authorization: Bearer aaaa',
  'Content-Type: text/plain',
  'Content-Length: -1',
  'Content-Length: 99999999999999999999',
  'Content-Length: 5',
  'Transfer-Encoding: chunked',
  'Transfer-Encoding: gzip, chunked',
  'Expect: 100-continue',
  'Upgrade: websocket',
  'Connection: upgrade',
  'X-Forwarded-Host: 127.0.0.1',
  ' folded: line',
  'a'.repeat(20_000),
];

type Bend =
  | { kind: 'drop'; at: number }
  | { kind: 'swap'; at: number; line: string }
  | { kind: 'add'; at: number; line: string }
  | { kind: 'byte'; at: number; byte: number }
  | { kind: 'cut'; at: number }
  | { kind: 'body'; body: string; counted: boolean };

const line = fc.oneof(fc.constantFrom(...STRANGE_LINES), fc.string({ unit: 'binary', maxLength: 60 }));
const position = fc.nat({ max: 10_000 });
const bend: fc.Arbitrary<Bend> = fc.oneof(
  fc.record({ kind: fc.constant('drop' as const), at: position }),
  fc.record({ kind: fc.constant('swap' as const), at: position, line }),
  fc.record({ kind: fc.constant('add' as const), at: position, line }),
  fc.record({ kind: fc.constant('byte' as const), at: position, byte: fc.nat({ max: 255 }) }),
  fc.record({ kind: fc.constant('cut' as const), at: position }),
  fc.record({
    kind: fc.constant('body' as const),
    body: fc.oneof(fc.json(), fc.string({ maxLength: 300 }), fc.constantFrom('', '{}', ' '.repeat(5000))),
    counted: fc.boolean(),
  }),
);

function bent(bends: readonly Bend[]): Buffer {
  const lines = rightLines();
  let body = RIGHT_BODY;
  for (const one of bends) {
    if (one.kind === 'drop') lines.splice(one.at % lines.length, 1);
    if (one.kind === 'swap') lines[one.at % Math.max(1, lines.length)] = one.line;
    if (one.kind === 'add') lines.splice(one.at % (lines.length + 1), 0, one.line);
    if (one.kind === 'body') {
      body = one.body;
      const at = lines.findIndex((each) => each.startsWith('Content-Length'));
      if (one.counted && at >= 0) lines[at] = `Content-Length: ${Buffer.byteLength(body)}`;
    }
  }
  let bytes: Buffer = Buffer.from(`${lines.join('\r\n')}\r\n\r\n${body}`);
  for (const one of bends) {
    if (one.kind === 'byte') bytes[one.at % bytes.length] = one.byte;
    if (one.kind === 'cut') bytes = bytes.subarray(0, one.at % bytes.length);
  }
  return bytes;
}

/** All that a request must carry to be let in, looked for in the raw bytes: necessary, whatever else it carries. */
const mayBeLetIn = (bytes: Buffer) => {
  const text = bytes.toString('latin1');
  return (
    text.includes('POST /op/') &&
    text.includes(loopback.token) &&
    text.includes(`127.0.0.1:${loopback.port}`) &&
    /json/i.test(text)
  );
};

const AT_ONCE = 24;
const STATUSES = new Set([200, 400, 401, 403, 404, 405, 408, 413, 415, 417, 421, 431]);

test('however a request is bent, it is refused or hung up on, nothing leaks and the program goes on', async () => {
  const cases = fc.sample(fc.array(bend, { minLength: 1, maxLength: 4 }), { numRuns: caseCount(5000), seed: 1911 });
  const seen = new Map<string, number>();
  // some at once: those that are hung up on take their time
  for (let from = 0; from < cases.length; from += AT_ONCE) {
    const batch = cases.slice(from, from + AT_ONCE).map((bends) => ({ bends, bytes: bent(bends) }));
    const asksBefore = asks;
    await Promise.all(
      batch.map(async ({ bends, bytes }) => {
        const reply = await rawRequest(loopback.port, bytes);
        const outcome = reply ? String(reply.status) : 'hung up';
        seen.set(outcome, (seen.get(outcome) ?? 0) + 1);
        if (!reply) return;
        expect(STATUSES, JSON.stringify(bends)).toContain(reply.status);
        expect(reply.body).not.toContain(SECRET);
        expect(reply.body).not.toContain(loopback.token);
      }),
    );
    expect(asks - asksBefore).toBeLessThanOrEqual(batch.filter(({ bytes }) => mayBeLetIn(bytes)).length);
  }
  // the cases reach past the first check: some are let in, most kinds of refusal are met
  expect([...seen.keys()].sort()).toEqual(expect.arrayContaining(['200', '400', '401', '403', '413', '415', '421']));

  const asksBefore = asks;
  const right = await rawRequest(loopback.port, bent([]));
  expect(right?.status).toBe(200);
  expect(asks).toBe(asksBefore + 1);
});
