import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sfntOfWoff } from './sfntOfWoff.ts';

const files = join(import.meta.dirname, '../../node_modules/@fontsource/sofia-sans/files');

/** Sum of a table's words, as OpenType defines it ("Calculating checksums"); the head's own entry counts as nought. */
function checksumOf(bytes: Uint8Array, tag: string): number {
  const padded = new Uint8Array((bytes.length + 3) & ~3);
  padded.set(bytes);
  if (tag === 'head') padded.fill(0, 8, 12);
  const words = new DataView(padded.buffer);
  let sum = 0;
  for (let at = 0; at < padded.length; at += 4) sum = (sum + words.getUint32(at)) >>> 0;
  return sum;
}

test('every table comes out whole, by the checksum its maker gave it', () => {
  const woff = readFileSync(join(files, 'sofia-sans-latin-400-normal.woff'));
  const sfnt = sfntOfWoff(woff);
  const bare = new DataView(sfnt.buffer);
  const count = bare.getUint16(4);
  const tags = [];
  for (let n = 0; n < count; n++) {
    const at = 12 + 16 * n;
    const tag = String.fromCharCode(...sfnt.subarray(at, at + 4));
    const [checksum, offset, length] = [4, 8, 12].map((field) => bare.getUint32(at + field));
    expect(offset! % 4).toBe(0);
    expect(checksumOf(sfnt.subarray(offset!, offset! + length!), tag), tag).toBe(checksum);
    tags.push(tag);
  }
  expect(tags).toEqual([...tags].sort());
  expect(tags).toEqual(expect.arrayContaining(['cmap', 'glyf', 'head', 'hmtx', 'loca', 'maxp', 'name']));
  // the length the packed font says it has when it is unpacked
  expect(sfnt.length).toBe(woff.readUInt32BE(16));
});

test('what is no such font is refused', () => {
  expect(() => sfntOfWoff(new Uint8Array(64))).toThrow('no WOFF font');
});
