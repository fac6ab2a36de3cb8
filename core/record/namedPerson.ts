/** What stands in place of a text that named an erased customer. */
export const ERASED = '[erased]';

/** How a person is told of in texts. */
export type NamedBy = { names: readonly string[]; phones: readonly string[]; words: readonly string[] };

/**
 * Blanks whatever names a person in a text: names, addresses and mail addresses as whole words whether written large or
 * small, telephones however their digits are set apart, and single words as they are written.
 *
 * @example blankedOf({ names: ['High Fold'], phones: [], words: [] })('Rang high fold.') // 'Rang [erased].'
 */
export function blankedOf({ names, phones, words }: NamedBy): (text: string) => string {
  const whole = (pattern: string) => `(?<![\\p{L}\\p{N}])${pattern}(?![\\p{L}\\p{N}])`;
  // the longest first: a name within a longer one would leave the rest of it standing
  const byLength = [...new Set(names.map((name) => name.trim()).filter((name) => name.length > 1))].sort(
    (a, b) => b.length - a.length,
  );
  const patterns = [
    ...byLength.map((name) => new RegExp(whole(quoted(name).replaceAll(/\s+/g, '\\s+')), 'giu')),
    ...phones
      .map((phone) => phone.replace(/\D/g, ''))
      .filter((digits) => digits.length >= 5)
      .map((digits) => new RegExp(whole(`\\+?${[...digits].join('[^\\p{L}\\p{N}]{0,2}')}`), 'gu')),
    ...words.filter((word) => word.trim() !== '').map((word) => new RegExp(whole(quoted(word.trim())), 'gu')),
  ];
  return (text) => patterns.reduce((now, pattern) => now.replace(pattern, ERASED), text);
}

const quoted = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/-]/g, '\\$&');

/** The same for every text within plain data; keys stay. */
export function blankedWithin(value: unknown, blanked: (text: string) => string): unknown {
  if (typeof value === 'string') return blanked(value);
  if (Array.isArray(value)) return value.map((one) => blankedWithin(one, blanked));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, blankedWithin(one, blanked)]));
}
