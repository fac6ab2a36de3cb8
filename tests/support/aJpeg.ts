/** A small grey JPEG of 8 by 8 pixels, baseline, one component: start, tables, frame, scan, end (ITU-T T.81, annex B). */
export function aJpeg({
  widthPx = 8,
  heightPx = 8,
  before = [],
}: {
  widthPx?: number;
  heightPx?: number;
  /** further segments, right after the start */
  before?: readonly number[];
} = {}): Uint8Array {
  const word = (n: number) => [n >> 8, n & 255];
  const quantities = [0xff, 0xdb, ...word(67), 0, ...Array<number>(64).fill(16)];
  const frame = [0xff, 0xc0, ...word(11), 8, ...word(heightPx), ...word(widthPx), 1, 1, 0x11, 0];
  const counts = [1, ...Array<number>(15).fill(0)];
  const huffman = (which: number) => [0xff, 0xc4, ...word(20), which, ...counts, 0];
  const scan = [0xff, 0xda, ...word(8), 1, 1, 0, 0, 63, 0, 0b00111111];
  const body = [...quantities, ...frame, ...huffman(0), ...huffman(0x10), ...scan];
  return Uint8Array.from([0xff, 0xd8, ...before, ...body, 0xff, 0xd9]);
}

/** A segment as cameras write it (CIPA DC-008, 4.7.2): "Exif", then a place. */
export const anExifSegment = (text: string): number[] => {
  const data = [...new TextEncoder().encode(`Exif\0\0${text}`)];
  return [0xff, 0xe1, (data.length + 2) >> 8, (data.length + 2) & 255, ...data];
};

export const base64Of = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
