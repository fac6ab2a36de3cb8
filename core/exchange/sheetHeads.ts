import { editDistance } from './editDistance.ts';
import { columnsOfNoun, headAliases, type SheetNoun, sheetNouns } from './sheetNouns.ts';

/** A head as it is compared: small plain letters, words parted by one space, its unit taken off. */
export type FoldedHead = { text: string; unit: 'mm' | 'in' | 'h' | null };

const UNITS: readonly (readonly [RegExp, 'mm' | 'in' | 'h'])[] = [
  [/^(mm|millimet(er|re)s?)$/, 'mm'],
  [/^(in|inch|inches|")$/, 'in'],
  [/^(h|hr|hrs|hours|std)$/, 'h'],
];
const unitNamed = (word: string): FoldedHead['unit'] => UNITS.find(([named]) => named.test(word))?.[1] ?? null;

/**
 * @example foldHead('Größe [mm]') // { text: 'grosse', unit: 'mm' }
 * @example foldHead('Dial_Hours (h)') // { text: 'dial hours', unit: 'h' }
 */
export function foldHead(head: string): FoldedHead {
  const plain = head
    .replace(/[ßẞ]/g, 'ss')
    .replace(/[øØ]/g, 'o')
    .replace(/[æÆ]/g, 'ae')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase();
  const inBrackets = /[([{]\s*([a-z"]+)\s*[)\]}]/.exec(plain);
  const bracketUnit = inBrackets ? unitNamed(inBrackets[1] ?? '') : null;
  const words = (inBrackets && bracketUnit ? plain.replace(inBrackets[0], ' ') : plain)
    .replace(/[^\p{L}\p{N}"]+/gu, ' ')
    .trim()
    .split(' ');
  const last = words.at(-1) ?? '';
  // "size mm" names its unit, "hours" alone is the thing itself
  const lastUnit = words.length > 1 && /^(mm|in|inch|inches|"|h|hrs)$/.test(last) ? unitNamed(last) : null;
  const text = (lastUnit && !bracketUnit ? words.slice(0, -1) : words).join(' ').replaceAll('"', '').trim();
  return { text, unit: bracketUnit ?? lastUnit };
}

/** How a column of the sheet came to be taken for one of ours. */
export type HeadMatch = { place: number; how: 'same' | 'alias' | 'near'; distance: number };

/** A head this far off may be a slip of the pen: one letter in five, two in nine or more, none in short words. */
const mostSlips = (text: string): number => Math.min(2, Math.floor((text.length - 1) / 4));

/**
 * Which column of a sheet stands for which of a noun's, as far as heads tell. Each stands for one at most; the surer match
 * goes first. What is only near is a suggestion for a person to confirm.
 */
export function matchHeads(noun: SheetNoun, heads: readonly string[]): Map<string, HeadMatch> {
  const folded = heads.map((head) => foldHead(head).text);
  const candidates = columnsOfNoun(noun).flatMap(({ name }) => {
    const own = foldHead(name).text;
    const aliases = headAliases[name] ?? [];
    return folded.flatMap((text, place) => {
      const match = text === '' ? null : matchOf(text, own, aliases);
      return match ? [{ name, place, ...match }] : [];
    });
  });
  candidates.sort((a, b) => a.distance - b.distance || RANK[a.how] - RANK[b.how] || a.place - b.place);
  const matches = new Map<string, HeadMatch>();
  const taken = new Set<number>();
  for (const { name, place, how, distance } of candidates) {
    if (matches.has(name) || taken.has(place)) continue;
    matches.set(name, { place, how, distance });
    taken.add(place);
  }
  return matches;
}

const RANK = { same: 0, alias: 1, near: 2 } as const;

function matchOf(text: string, own: string, aliases: readonly string[]): Omit<HeadMatch, 'place'> | null {
  if (text === own) return { how: 'same', distance: 0 };
  if (aliases.includes(text)) return { how: 'alias', distance: 0 };
  const slips = Math.min(...[own, ...aliases].map((name) => (mostSlips(name) === 0 ? 9 : editDistance(text, name, 2))));
  return slips <= mostSlips(text) ? { how: 'near', distance: slips } : null;
}

/** Nouns a sheet may hold, likeliest first: by how many of the columns each needs, then has, are there. */
export function likelyNouns(heads: readonly string[]): SheetNoun[] {
  const scores = sheetNouns.map((noun) => {
    const matches = matchHeads(noun, heads);
    const needed = columnsOfNoun(noun).filter((column) => column.needed);
    const found = needed.filter(({ name }) => matches.has(name)).length;
    // a column's own name tells more than an alias that several nouns share
    const weight = [...matches.values()].reduce((sum, { how }) => sum + (how === 'same' ? 2 : 1), 0);
    return { noun, score: weight - 3 * (needed.length - found) };
  });
  return scores.sort((a, b) => b.score - a.score).map(({ noun }) => noun);
}
