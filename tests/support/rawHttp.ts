import { connect } from 'node:net';

export type RawReply = { status: number; headers: Record<string, string>; body: string };

/**
 * Writes bytes to a port of this computer as they are and reads until the server closes or has sent one whole reply.
 * fetch() and node:http put a request right before it leaves; a hostile client does not.
 * @param waitMs how long a reply is waited for: ample, a computer may be busy
 * @returns undefined when the server closed without a reply
 */
export function rawRequest(port: number, bytes: string | Buffer, waitMs = 60_000): Promise<RawReply | undefined> {
  return new Promise((done, failed) => {
    const socket = connect(port, '127.0.0.1');
    let received = Buffer.alloc(0);
    const finish = () => {
      clearTimeout(timer);
      socket.destroy();
      done(wholeReply(received, true));
    };
    const timer = setTimeout(() => {
      socket.destroy();
      failed(new Error(`no reply within ${waitMs} ms; so far: ${received.toString('latin1').slice(0, 200)}`));
    }, waitMs);
    socket.on('data', (chunk) => {
      received = Buffer.concat([received, chunk]);
      if (wholeReply(received, false)) finish();
    });
    socket.on('close', finish);
    socket.on('error', finish);
    socket.on('connect', () => socket.write(bytes));
  });
}

function wholeReply(received: Buffer, closed: boolean): RawReply | undefined {
  const text = received.toString('latin1');
  const headEnd = text.indexOf('\r\n\r\n');
  if (headEnd < 0) return undefined;
  const [statusLine = '', ...lines] = text.slice(0, headEnd).split('\r\n');
  const headers = Object.fromEntries(
    lines.map((line) => [line.slice(0, line.indexOf(':')).toLowerCase(), line.slice(line.indexOf(':') + 1).trim()]),
  );
  const body = received.subarray(headEnd + 4);
  if (!closed && body.length < Number(headers['content-length'] ?? Number.POSITIVE_INFINITY)) return undefined;
  return { status: Number(statusLine.split(' ')[1]), headers, body: body.toString('utf8') };
}
