import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import type { Answer } from '../contract/operation.ts';
import type { Ask } from './answer.ts';
import { type PageFiles, pageFilesIn, pageHeaders, readPageFile } from './page.ts';

/** The head of a request that says which record it is meant for. */
const MEANT_FOR = 'meant-for';
const MAX_REQUEST_BYTES = 32 * 1024 * 1024;

/**
 * How long a client may dawdle. Anything on this computer can knock; none of it may hold the program up.
 * Idle is long: a connection whose time runs out while the program works (a shop learned afresh, a slip printed) is closed
 * before the request that waits on it is read, and the window would be told that the program has ended.
 */
const SLOWNESS = { headersMs: 5_000, requestMs: 30_000, idleMs: 120_000, takingReplyMs: 30_000, lookEveryMs: 1_000 };

export type LoopbackOptions = {
  ask: Ask;
  /** folder of the built window */
  pageFolder: string;
  /** 0: any that is free */
  port?: number;
  maxRequestBytes?: number;
  slowness?: Partial<typeof SLOWNESS>;
};

export type Loopback = {
  /** what a browser opens; the token rides in the fragment, which no server and no log ever sees */
  address: string;
  port: number;
  token: string;
  close(): Promise<void>;
};

/**
 * The loopback shell: the same window and the same door, for a browser on this computer.
 *
 * Bound to 127.0.0.1. Every request must name that host (a page elsewhere that got its own name to point here is
 * thereby refused) and must not come from another page; everything but the window's own files needs this start's token.
 * No cross-origin headers are ever sent.
 */
export async function serveLoopback(options: LoopbackOptions): Promise<Loopback> {
  const slowness = { ...SLOWNESS, ...options.slowness };
  const token = randomBytes(32).toString('base64url');
  const nonce = randomBytes(16).toString('base64');
  const server = createServer({
    maxHeaderSize: 16 * 1024,
    headersTimeout: slowness.headersMs,
    requestTimeout: slowness.requestMs,
    keepAliveTimeout: slowness.idleMs,
    connectionsCheckingInterval: slowness.lookEveryMs,
    // a request that could be read in two ways is read in none
    insecureHTTPParser: false,
  });
  server.maxConnections = 64;

  await new Promise<void>((listening, failed) => {
    server.once('error', failed);
    server.listen({ host: '127.0.0.1', port: options.port ?? 0 }, listening);
  });
  const port = (server.address() as AddressInfo).port;
  const host = `127.0.0.1:${port}`;
  const house: House = {
    host,
    origin: `http://${host}`,
    isToken: sameAs(token),
    files: pageFilesIn(options.pageFolder),
    headers: pageHeaders(nonce),
    nonce,
    ask: options.ask,
    maxRequestBytes: options.maxRequestBytes ?? MAX_REQUEST_BYTES,
  };

  server.on('request', (request, response) => {
    replyTo(house, request).then(
      (reply) => send(house, request, response, reply, slowness.takingReplyMs),
      () => response.destroy(),
    );
  });
  // the window never asks leave to send a body, and nobody is invited to before being looked at
  server.on('checkContinue', (_request, response) => response.writeHead(417).end());
  server.on('clientError', (_error, socket) => (socket as Socket).destroy());

  return {
    address: `${house.origin}/#token=${token}`,
    port,
    token,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}

type House = {
  host: string;
  origin: string;
  isToken: (given: string) => boolean;
  files: PageFiles;
  headers: Record<string, string>;
  nonce: string;
  ask: Ask;
  maxRequestBytes: number;
};

type Reply = { status: number; contentType: string; bytes: Buffer };

async function replyTo(house: House, request: IncomingMessage): Promise<Reply> {
  const knock = refusalAtTheDoor(house, request);
  if (knock) return refusal(knock);
  const path = (request.url ?? '').split('?')[0] ?? '';
  if (path.startsWith('/op/')) return operationReply(house, request, path.slice('/op/'.length));
  return fileReply(house, request, path);
}

function fileReply(house: House, request: IncomingMessage, path: string): Reply {
  if (!isForFile(request)) return refusal('method-not-allowed');
  const file = readPageFile(house.files, path === '/favicon.ico' ? '/favicon.svg' : path, house.nonce);
  return file ? { status: 200, ...file } : refusal('not-found');
}

async function operationReply(house: House, request: IncomingMessage, name: string): Promise<Reply> {
  if (request.method !== 'POST') return refusal('method-not-allowed');
  const [scheme, given = ''] = (request.headers.authorization ?? '').split(' ');
  if (scheme !== 'Bearer' || !house.isToken(given)) return refusal('no-token');
  if (!/^application\/json(;\s*charset=utf-8)?$/i.test(request.headers['content-type'] ?? ''))
    return refusal('not-json');
  const body = await readBody(request, house.maxRequestBytes);
  if (body === 'too-large') return refusal('too-large');
  const asked = parseJson(body);
  if (!asked.ok) return refusal('broken-json');
  return answerReply(200, await house.ask(name, asked.value, saidOnce(request.headersDistinct[MEANT_FOR])));
}

/** Said not at all, or twice, it is meant for no record. */
const saidOnce = (said: readonly string[] = []): string => (said.length === 1 ? said[0]! : '');

/** Status and code of everything the shell itself refuses, before an operation is looked for. */
const REFUSALS = {
  'wrong-host': 421,
  'not-this-page': 403,
  'no-token': 401,
  'method-not-allowed': 405,
  'not-found': 404,
  'not-json': 415,
  'broken-json': 400,
  'too-large': 413,
} as const;
type RefusalCode = keyof typeof REFUSALS;

function refusalAtTheDoor(house: House, request: IncomingMessage): RefusalCode | undefined {
  const hosts = request.headersDistinct.host ?? [];
  if (hosts.length !== 1 || hosts[0] !== house.host) return 'wrong-host';
  // absolute-form and "*" targets are for proxies
  if (!request.url?.startsWith('/')) return 'not-found';
  const origins = request.headersDistinct.origin ?? [];
  if (origins.some((origin) => origin !== house.origin)) return 'not-this-page';
  // absent from tools and old browsers; "none" is a person opening the address, which only ever gets files
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && !(site === 'none' && isForFile(request))) return 'not-this-page';
  return undefined;
}

const isForFile = (request: IncomingMessage): boolean => request.method === 'GET' || request.method === 'HEAD';

/** The whole body as text; stops keeping it once it is over the limit. Rejects when the client goes away. */
function readBody(request: IncomingMessage, maxBytes: number): Promise<Buffer | 'too-large'> {
  return new Promise((read, gone) => {
    if (Number(request.headers['content-length'] ?? 0) > maxBytes) return read('too-large');
    const chunks: Buffer[] = [];
    let bytes = 0;
    request.on('data', (chunk: Buffer) => {
      bytes += chunk.length;
      if (bytes <= maxBytes) chunks.push(chunk);
      else read('too-large');
    });
    request.on('end', () => read(Buffer.concat(chunks)));
    request.on('error', gone);
    request.on('close', () => gone(new Error('the client went away')));
  });
}

function parseJson(body: Buffer): { ok: true; value: unknown } | { ok: false } {
  try {
    return { ok: true, value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(body)) };
  } catch {
    return { ok: false };
  }
}

const refusal = (code: RefusalCode): Reply => answerReply(REFUSALS[code], { ok: false, fault: { code, facts: {} } });

const answerReply = (status: number, answer: Answer): Reply => ({
  status,
  contentType: 'application/json; charset=utf-8',
  bytes: Buffer.from(JSON.stringify(answer)),
});

function send(
  house: House,
  request: IncomingMessage,
  response: ServerResponse,
  reply: Reply,
  takingReplyMs: number,
): void {
  // a client that asks and then does not take what it asked for; node:http closes a socket that is idle so long
  request.socket.setTimeout(takingReplyMs);
  response.writeHead(reply.status, {
    ...house.headers,
    'content-type': reply.contentType,
    'content-length': reply.bytes.length,
  });
  response.end(request.method === 'HEAD' ? undefined : reply.bytes);
}

/** Compares digests, so that neither the length nor the first wrong letter shows in the time taken. */
function sameAs(secret: string): (given: string) => boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  const wanted = digest(secret);
  return (given) => timingSafeEqual(digest(given), wanted);
}
