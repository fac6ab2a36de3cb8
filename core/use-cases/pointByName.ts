import type { PointOnRecord, ShopLife } from '../shop/shopLife.ts';

/** A point asked for by its names; else the full names of those it may have been, or of those most like it. */
export type PointByName =
  | { found: PointOnRecord }
  | { found: null; oneOf: readonly string[] }
  | { found: null; oneOf: null; near: readonly string[] };

/** Names told at most when one was not enough. */
const MOST_NAMED = 12;
const MOST_NEAR = 5;

/**
 * The measuring point of the name MACHINE/ASSEMBLY/POSITION/POINT. Case, accents, spaces and stops between words do not
 * matter; parts of the name may be left out while what is left names one point.
 */
export function pointByName(life: ShopLife, asked: string): PointByName {
  const machines = new Map(life.machines.map(({ machineId, name }) => [machineId, name]));
  const named = life.points.map((point) => {
    const names = [machines.get(point.machineId) ?? '', point.assembly, point.position, point.point];
    return { point, names, name: names.join('/') };
  });
  const wanted = fold(asked);
  const whole = named.filter(({ name }) => fold(name) === wanted);
  const likely = whole.length > 0 ? whole : named.filter(({ names }) => shorterNames(names.map(fold)).includes(wanted));
  const exact = likely.filter(({ name }) => name === asked);
  const [only, ...more] = exact.length > 0 ? exact : likely;
  if (only && more.length === 0) return { found: only.point };
  if (only) return { found: null, oneOf: [only, ...more].slice(0, MOST_NAMED).map(({ name }) => name) };
  const near = named
    .map(({ name }) => ({ name, apart: lettersApart(wanted, fold(name)) }))
    .sort((a, b) => a.apart - b.apart || (a.name < b.name ? -1 : 1));
  return { found: null, oneOf: null, near: near.slice(0, MOST_NEAR).map(({ name }) => name) };
}

/** Letters that stand for two, or carry a stroke and no accent that could be taken off. */
const PLAIN: Record<string, string> = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd' };

/** Small plain letters and digits; whatever else stands between them is one space, but for the strokes between names. */
const fold = (name: string): string =>
  name
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[ßæœøłđ]/g, (letter) => PLAIN[letter] ?? letter)
    .replace(/[^\p{L}\p{N}/]+/gu, ' ')
    .replace(/ ?\/ ?/g, '/')
    .trim();

/** Every name with some of its parts left out; a part may itself have a stroke in it ("Ridge 15/6"). */
function shorterNames(names: readonly string[]): string[] {
  const made: string[] = [];
  for (const name of names) made.push(name, ...made.map((one) => `${one}/${name}`));
  return made;
}

/**
 * Letters to be put in, left out or changed to make one text of the other.
 * @source V. I. Levenshtein, "Binary codes capable of correcting deletions, insertions, and reversals", 1966
 */
function lettersApart(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(changed, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}
