/** Columns are taken as dependent when what is left of one is less than this of its pivot row's largest. */
const NOTHING = 1e-11;

/**
 * Fewer points with the same sums: of weighted points, at most as many as there are sums to be kept, with new weights (0 for
 * those dropped, none negative), so that every sum of weight x value is what it was.
 *   while more points are left than sums: a combination v of them with sum v value = 0 for all values is added to the
 *   weights until the first falls to nothing; that point is dropped
 * @param values one row a point: the functions whose sums are kept, 1 among them
 * @param weights not negative
 * @source C. Litterer and T. Lyons, "High order recombination and an application to cubature on Wiener space",
 *   Annals of Applied Probability 22 (2012), section 3 (cited from memory); that so few suffice: V. Tchakaloff (1957)
 * @example recombine([[1, 0], [1, 1], [1, 2]], [0.25, 0.5, 0.25]) // two points, weight 1, mean 1
 */
export function recombine(values: readonly (readonly number[])[], weights: readonly number[]): number[] {
  const sums = values[0]?.length ?? 0;
  let left = [...weights];
  let heavy = positive(left);
  // many points go by groups first, each standing for its own: half the groups fall at a time
  while (heavy.length > 4 * sums) {
    const groups = Array.from({ length: 2 * sums }, (_, g) => heavy.filter((_, k) => k % (2 * sums) === g));
    const totals = groups.map((group) => group.reduce((sum, point) => sum + left[point]!, 0));
    const means = groups.map((group, g) =>
      Array.from(
        { length: sums },
        (_, j) => group.reduce((sum, point) => sum + left[point]! * values[point]![j]!, 0) / totals[g]!,
      ),
    );
    const kept = dropped(means, totals);
    groups.forEach((group, g) => {
      for (const point of group) left[point] = left[point]! * (kept[g]! / totals[g]!);
    });
    const next = positive(left);
    if (next.length === heavy.length) break;
    heavy = next;
  }
  left = dropped(values, left);
  return left;
}

const positive = (weights: readonly number[]): number[] =>
  weights.flatMap((weight, point) => (weight > 0 ? [point] : []));

/** One point after another dropped, until as many are left as there are sums. */
function dropped(values: readonly (readonly number[])[], weights: readonly number[]): number[] {
  const left = [...weights];
  const sums = values[0]?.length ?? 0;
  const held: number[] = [];
  for (let point = 0; point < values.length; point++) {
    if (!(left[point]! > 0)) continue;
    held.push(point);
    while (held.length > sums) {
      const v = nullVector(held.map((index) => values[index]!));
      // the way that reaches a weight's end first
      let step = Number.POSITIVE_INFINITY;
      let end = 0;
      for (let k = 0; k < held.length; k++) {
        const reach = Math.abs(left[held[k]!]! / v[k]!);
        if (v[k] !== 0 && reach < Math.abs(step)) {
          step = -left[held[k]!]! / v[k]!;
          end = k;
        }
      }
      for (let k = 0; k < held.length; k++) left[held[k]!] = Math.max(0, left[held[k]!]! + step * v[k]!);
      left[held[end]!] = 0;
      for (let k = held.length - 1; k >= 0; k--) if (left[held[k]!] === 0) held.splice(k, 1);
    }
  }
  return left;
}

/** Weights, not all 0, under which more rows than columns sum to nothing. Gauss's elimination with row pivots. */
function nullVector(rows: readonly (readonly number[])[]): number[] {
  const count = rows.length;
  const sums = rows[0]!.length;
  // unknown k is the weight of row k; equation j is column j
  const a = Array.from({ length: sums }, (_, j) => rows.map((row) => row[j]!));
  let free = -1;
  let level = 0;
  for (let k = 0; k < count && free < 0; k++) {
    let best = level;
    for (let j = level; j < sums; j++) if (Math.abs(a[j]![k]!) > Math.abs(a[best]?.[k] ?? 0)) best = j;
    const largest = rows[k]!.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    if (level === sums || Math.abs(a[best]![k]!) <= NOTHING * largest) {
      free = k;
      break;
    }
    [a[level], a[best]] = [a[best]!, a[level]!];
    const from = a[level]!;
    for (let j = level + 1; j < sums; j++) {
      const to = a[j]!;
      const factor = to[k]! / from[k]!;
      if (factor === 0) continue;
      for (let l = k; l < count; l++) to[l] = to[l]! - factor * from[l]!;
    }
    level++;
  }
  const v = new Array<number>(count).fill(0);
  v[free] = 1;
  for (let k = free - 1; k >= 0; k--) {
    let rest = a[k]![free]!;
    for (let l = k + 1; l < free; l++) rest += a[k]![l]! * v[l]!;
    v[k] = -rest / a[k]![k]!;
  }
  return v;
}
