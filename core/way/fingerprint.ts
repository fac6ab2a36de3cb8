/**
 * Short name of a text, to see whether what something was worked out from has changed. Not for secrets.
 * Two runs of 32 bits over the same text, the second stirred differently: about 1 in 10^19 that two texts share it.
 * @source FNV-1a: G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV non-cryptographic hash algorithm"
 * @example fingerprint('') // '811c9dc5-01234567'
 */
export function fingerprint(text: string): string {
  let a = 0x811c9dc5;
  let b = 0x1234567;
  for (let i = 0; i < text.length; i++) {
    a = Math.imul(a ^ text.charCodeAt(i), 0x01000193);
    b = Math.imul(b ^ text.charCodeAt(i), 0x01000193) ^ (b >>> 15);
  }
  return `${hex(a)}-${hex(b)}`;
}

const hex = (word: number): string => (word >>> 0).toString(16).padStart(8, '0');
