import { randomBytes } from 'node:crypto';
import { protocol, type Session } from 'electron';
import { pageFilesIn, pageHeaders, readPageFile } from '#core/shells/page.ts';

const SCHEME = 'app';
const PAGE_ORIGIN = `${SCHEME}://hours-and-wear`;
export const PAGE_ADDRESS = `${PAGE_ORIGIN}/`;

/** True for an address of our own page; the slash keeps out "app://hours-and-wear.elsewhere". */
export const isOwnPage = (address: string): boolean => address.startsWith(PAGE_ADDRESS);

/** Before the program is ready: makes app: an origin of its own, unlike file:, which sees the whole disk. */
export function announcePage(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/** Serves the built window's files under app:, with the headers the loopback server gives them. */
export function servePage(session: Session, folder: string): void {
  const files = pageFilesIn(folder);
  const nonce = randomBytes(16).toString('base64');
  const headers = pageHeaders(nonce);
  session.protocol.handle(SCHEME, (request) => {
    const url = new URL(request.url);
    const file = request.method === 'GET' && isOwnPage(url.href) ? readPageFile(files, url.pathname, nonce) : undefined;
    if (!file) return new Response(null, { status: 404, headers });
    return new Response(new Uint8Array(file.bytes), { headers: { ...headers, 'content-type': file.contentType } });
  });
}
