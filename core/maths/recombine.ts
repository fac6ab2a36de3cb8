/** Sums are taken as dependent when what is left of them is less than this of the largest value. */
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

/**
 * One point after another dropped, until as many are left as there are sums. Of the combinations that move no sum one is added
 * until a weight is nothing; the others are then freed of that point.
 */
function dropped(values: readonly (readonly number[])[], weights: readonly number[]): number[] {
  const held = positive(weights);
  const left = held.map((point) => weights[point]!);
  const combinations = nullVectors(held.map((point) => values[point]!));
  for (let v = combinations.pop(); v !== undefined; v = combinations.pop()) {
    // the way that reaches a weight's end first
    let step = Number.POSITIVE_INFINITY;
    let end = -1;
    for (let k = 0; k < held.length; k++) {
      if (v[k] === 0 || left[k] === 0) continue;
      const reach = -left[k]! / v[k]!;
      if (Math.abs(reach) < Math.abs(step)) [step, end] = [reach, k];
    }
    if (end < 0) continue;
    for (let k = 0; k < held.length; k++) left[k] = Math.max(0, left[k]! + step * v[k]!);
    left[end] = 0;
    for (const other of combinations) {
      const share = other[end]! / v[end]!;
      if (share === 0) continue;
      for (let k = 0; k < held.length; k++) other[k] = other[k]! - share * v[k]!;
      other[end] = 0;
    }
  }
  const all = new Array<number>(weights.length).fill(0);
  held.forEach((point, k) => {
    all[point] = left[k]!;
  });
  return all;
}

/** All weights under which rows sum to nothing: one vector for each row beyond the rank. Gauss and Jordan's elimination, whole pivots. */
function nullVectors(rows: readonly (readonly number[])[]): Float64Array[] {
  const count = rows.length;
  const sums = rows[0]?.length ?? 0;
  // unknown k is the weight of row k; equation j is column j
  const a = Array.from({ length: sums }, (_, j) => Float64Array.from(rows, (row) => row[j]!));
  const largest = a.reduce(
    (most, equation) => equation.reduce((top, entry) => Math.max(top, Math.abs(entry)), most),
    0,
  );
  const order = rows.map((_, k) => k);
  let rank = 0;
  for (; rank < sums && rank < count; rank++) {
    let [row, place, most] = [rank, rank, 0];
    for (let j = rank; j < sums; j++)
      for (let k = rank; k < count; k++) {
        const entry = Math.abs(a[j]![order[k]!]!);
        if (entry > most) [row, place, most] = [j, k, entry];
      }
    if (most <= NOTHING * largest) break;
    [a[rank], a[row]] = [a[row]!, a[rank]!];
    [order[rank], order[place]] = [order[place]!, order[rank]!];
    const from = a[rank]!;
    const pivot = order[rank]!;
    const scale = 1 / from[pivot]!;
    for (let k = 0; k < count; k++) from[k] = from[k]! * scale;
    for (let j = 0; j < sums; j++) {
      const factor = a[j]![pivot]!;
      if (j === rank || factor === 0) continue;
      for (let k = 0; k < count; k++) a[j]![k] = a[j]![k]! - factor * from[k]!;
    }
  }
  return order.slice(rank).map((free) => {
    const v = new Float64Array(count);
    v[free] = 1;
    for (let j = 0; j < rank; j++) v[order[j]!] = -a[j]![free]!;
    return v;
  });
}
