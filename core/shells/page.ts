import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';

/**
 * The built window's files, by the path they are asked for. The list is drawn up once, from what lies in the folder:
 * a path that is not on it is not served, so no spelling of ".." can leave the folder.
 */
export type PageFiles = ReadonlyMap<string, { file: string; contentType: string }>;

/** Stands in index.html wherever the start's own nonce belongs; see vite.config.ts. */
export const NONCE_PLACE = 'PAGE_NONCE';

export function pageFilesIn(folder: string): PageFiles {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const files = new Map<string, { file: string; contentType: string }>();
  for (const entry of entries) {
    const file = join(entry.parentPath, entry.name);
    const contentType = CONTENT_TYPES[extname(file)];
    if (contentType) files.set(`/${relative(folder, file).split(sep).join('/')}`, { file, contentType });
  }
  const index = files.get('/index.html');
  if (index) files.set('/', index);
  return files;
}

/** The file's bytes, with the nonce put into the page itself; undefined when no such file is on the list. */
export function readPageFile(
  files: PageFiles,
  path: string,
  nonce: string,
): { bytes: Buffer; contentType: string } | undefined {
  const found = files.get(path);
  if (!found) return undefined;
  const bytes = readFileSync(found.file);
  if (!found.contentType.startsWith('text/html')) return { bytes, contentType: found.contentType };
  return { bytes: Buffer.from(bytes.toString('utf8').replaceAll(NONCE_PLACE, nonce)), contentType: found.contentType };
}

/**
 * Headers of everything the window is given. Scripts come from the program alone and are never made from text; nothing
 * is fetched from, sent to, or framed by anything else. The nonce is for the few style elements a control library makes.
 *
 * @source W3C Content Security Policy Level 3; OWASP Secure Headers list (from memory)
 */
export function pageHeaders(nonce: string): Record<string, string> {
  return {
    'content-security-policy': [
      "default-src 'none'",
      "script-src 'self'",
      "worker-src 'self'",
      `style-src 'self' 'nonce-${nonce}'`,
      "style-src-attr 'unsafe-inline'",
      "img-src 'self' data: blob:",
      "font-src 'self' data:",
      "connect-src 'self'",
      'frame-src blob:',
      "manifest-src 'self'",
      "base-uri 'none'",
      "form-action 'none'",
      "frame-ancestors 'none'",
    ].join('; '),
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'permissions-policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=()',
    'cache-control': 'no-store',
  };
}

const CONTENT_TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.ttf': 'font/ttf',
  '.webmanifest': 'application/manifest+json',
};
