/** What is wrong with bytes that should be a bare JPEG picture. */
export type NotABareJpeg = 'not-a-jpeg' | 'carries-data';
export type JpegFrame = { widthPx: number; heightPx: number };

const START_OF_IMAGE = 0xd8;
const END_OF_IMAGE = 0xd9;
const START_OF_SCAN = 0xda;
const COMMENT = 0xfe;
/** start of frame: C0 to CF, but for the tables and extensions that stand among them */
const isFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
/**
 * Application segments that say nothing of where, when and by whom: JFIF (APP0), colour profile (APP2), colour transform
 * (APP14). Exif and XMP stand in APP1, where cameras put place and time; others in APP3 to APP13.
 */
const isPlainSegment = (marker: number): boolean =>
  marker < 0xe0 || marker === 0xe0 || marker === 0xe2 || marker === 0xee || (marker > 0xef && marker !== COMMENT);

/**
 * Width and height of a JPEG, read from its markers, and only where nothing else is told in it: no place, time or camera.
 *
 * @source ITU-T T.81 (09/92) = ISO/IEC 10918-1, annex B.1 and B.2: markers, lengths and the frame header
 * @source CIPA DC-008 (Exif 2.3x), 4.5.4 and 4.7.2: Exif data stand in application segment 1
 */
export function jpegFrame(bytes: Uint8Array): JpegFrame | NotABareJpeg {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const ends = bytes.length > 4 && bytes.at(-2) === 0xff && bytes.at(-1) === END_OF_IMAGE;
  if (!ends || bytes[0] !== 0xff || bytes[1] !== START_OF_IMAGE) return 'not-a-jpeg';
  let frame: JpegFrame | null = null;
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return 'not-a-jpeg';
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++; // fill bytes may stand before a marker
      continue;
    }
    const length = view.getUint16(at + 2);
    if (marker < 0xc0 || length < 2 || at + 2 + length > bytes.length) return 'not-a-jpeg';
    if (!isPlainSegment(marker)) return 'carries-data';
    if (isFrame(marker)) {
      if (length < 8) return 'not-a-jpeg';
      frame = { heightPx: view.getUint16(at + 5), widthPx: view.getUint16(at + 7) };
    }
    at += 2 + length;
    if (marker === START_OF_SCAN) return afterScan(bytes, at) ?? frame ?? 'not-a-jpeg';
  }
  return 'not-a-jpeg';
}

/** What follows the first scan: more scans and tables, and nothing behind the end of the image. */
function afterScan(bytes: Uint8Array, from: number): NotABareJpeg | null {
  for (let at = from; at + 1 < bytes.length; at++) {
    if (bytes[at] !== 0xff) continue;
    const marker = bytes[at + 1]!;
    if (marker === END_OF_IMAGE) return at + 2 === bytes.length ? null : 'carries-data';
    if (marker === 0xff || marker === 0x00 || (marker >= 0xd0 && marker <= 0xd7)) continue; // fill, stuffing, restart
    if (!isPlainSegment(marker)) return 'carries-data';
    if (at + 3 >= bytes.length) return 'not-a-jpeg';
    at += 1 + bytes[at + 2]! * 256 + bytes[at + 3]!;
  }
  return 'not-a-jpeg';
}
