/**
 * Text of a file: UTF-8, with or without a byte order mark; what is not UTF-8 is read as Windows-1252, in which every byte
 * stands for something. Null: the bytes are UTF-16, which neither is.
 *
 * @source WHATWG Encoding Standard, decoders "utf-8" and "windows-1252"
 */
export function decodeText(bytes: Uint8Array): string | null {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes); // takes a byte order mark off by itself
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
