/**
 * Letters that have to be put in, taken out, changed, or swapped with their neighbour to make one word of another.
 *
 * @param most more than this is not counted on: the answer is then `most + 1`
 * @source R. A. Wagner and M. J. Fischer, The string-to-string correction problem, Journal of the ACM 21 (1974) 168-173;
 *   the swap after F. J. Damerau, Communications of the ACM 7 (1964) 171-176, each letter moved once (from memory)
 * @example editDistance('machnie', 'machine') // 1
 */
export function editDistance(a: string, b: string, most = Number.POSITIVE_INFINITY): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(row[j - 1]! + 1, last[j]! + 1, last[j - 1]! + change);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, before[j - 2]! + 1);
      row.push(least);
    }
    before = last;
    last = row;
  }
  return Math.min(last[b.length]!, most + 1);
}
