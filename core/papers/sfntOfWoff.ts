import { inflateSync } from 'node:zlib';

const WOFF = { signature: 0x774f4646, head: 44, entry: 20 } as const;
const SFNT = { head: 12, entry: 16 } as const;
const onFour = (length: number): number => (length + 3) & ~3;

/**
 * A font as its bare tables, out of the packed form it is handed round in: the printer of the papers would unpack the packed
 * one anew for every letter.
 *
 * @throws where the bytes are no WOFF font
 * @source W3C, WOFF File Format 1.0 (2012), sections 3 to 5; the result as in OpenType 1.9, "Organization of an OpenType Font"
 */
export function sfntOfWoff(woff: Uint8Array): Uint8Array {
  const packed = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (packed.getUint32(0) !== WOFF.signature) throw new Error('no WOFF font');
  const count = packed.getUint16(12);
  const tables = Array.from({ length: count }, (_, n) => {
    const at = WOFF.head + n * WOFF.entry;
    const [tag, offset, packedLength, length, checksum] = [0, 4, 8, 12, 16].map((field) =>
      packed.getUint32(at + field),
    );
    const bytes = woff.subarray(offset!, offset! + packedLength!);
    return { tag: tag!, checksum: checksum!, bytes: packedLength! < length! ? inflateSync(bytes) : bytes };
  });
  const start = SFNT.head + count * SFNT.entry;
  const sfnt = new Uint8Array(start + tables.reduce((sum, { bytes }) => sum + onFour(bytes.length), 0));
  const bare = new DataView(sfnt.buffer);
  const power = Math.floor(Math.log2(count));
  bare.setUint32(0, packed.getUint32(4));
  for (const [n, figure] of [count, 16 * 2 ** power, power, 16 * (count - 2 ** power)].entries())
    bare.setUint16(4 + 2 * n, figure);
  let offset = start;
  for (const [n, { tag, checksum, bytes }] of tables.entries()) {
    const at = SFNT.head + n * SFNT.entry;
    for (const [field, figure] of [tag, checksum, offset, bytes.length].entries())
      bare.setUint32(at + 4 * field, figure);
    sfnt.set(bytes, offset);
    offset += onFour(bytes.length);
  }
  return sfnt;
}
