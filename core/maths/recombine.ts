/** A sum is taken as following from the ones before when what is left of its values is less than this of the largest. */
const NOTHING = 1e-10;

/**
 * Fewer points with the same sums: of weighted points, at most as many as there are sums to be kept, with new weights (0 for
 * those dropped, none negative), so that every sum of weight x value is what it was. Many points go by groups first, each
 * standing for its own: half the groups fall at a time.
 * @param functions one row a sum to be kept, its value at each point; 1 among them
 * @param weights not negative
 * @source C. Litterer and T. Lyons, "High order recombination and an application to cubature on Wiener space",
 *   Annals of Applied Probability 22 (2012), section 3 (cited from memory); that so few suffice: V. Tchakaloff (1957)
 * @example recombine([[1, 1, 1], [0, 1, 2]], [0.25, 0.5, 0.25]) // two points, weight 1, mean 1
 */
export function recombine(functions: readonly ArrayLike<number>[], weights: readonly number[]): number[] {
  const left = [...weights];
  for (;;) {
    const heavy = left.flatMap((weight, point) => (weight > 0 ? [point] : []));
    const count = Math.min(heavy.length, 2 * functions.length);
    const totals = new Float64Array(count);
    heavy.forEach((point, k) => {
      totals[k % count]! += left[point]!;
    });
    const shares = heavy.map((point, k) => left[point]! / totals[k % count]!);
    const means = functions.map((values) => {
      const ofGroups = new Float64Array(count);
      for (let k = 0; k < heavy.length; k++) ofGroups[k % count]! += shares[k]! * values[heavy[k]!]!;
      return ofGroups;
    });
    const kept = fewest(means, totals);
    heavy.forEach((point, k) => {
      left[point] = kept[k % count]! * shares[k]!;
    });
    if (count === heavy.length) return left;
  }
}

/**
 * Weights of as few points as there are sums that do not follow from each other. These points are the basis; weight added to any
 * other point is made up for by theirs. Each other point in turn takes weight or gives it until a weight is nothing, its own or that
 * of a point of the basis, whose place it takes then.
 * @param equations one row a sum, one column a point
 * @source the steps of the simplex method, without a price: G. B. Dantzig, Linear Programming and Extensions (1963; cited from memory)
 */
function fewest(equations: Float64Array[], weights: Float64Array): Float64Array {
  const { rows, order } = solved(equations);
  const left = Float64Array.from(order, (point) => weights[point]!);
  for (let free = left.length - 1; free >= rows.length; free--) {
    // weight given up by the free point until it has none, or given to it or taken until one of the basis has none
    let give = left[free]!;
    let end = -1;
    for (let i = 0; i < rows.length; i++) {
      const reach = -left[i]! / rows[i]![free]!;
      if (Math.abs(reach) < Math.abs(give)) [give, end] = [reach, i];
    }
    for (let i = 0; i < rows.length; i++) left[i] = Math.max(0, left[i]! + give * rows[i]![free]!);
    left[free] = Math.max(0, left[free]! - give);
    if (end < 0) continue;
    [order[end], order[free]] = [order[free]!, order[end]!];
    left[end] = left[free]!;
    left[free] = 0;
    pivot(rows, end, free, rows.length);
  }
  const all = new Float64Array(weights.length);
  order.forEach((point, k) => {
    all[point] = left[k]!;
  });
  return all;
}

/**
 * The equations solved for as many points, which come first in the order: Gauss and Jordan's elimination, the largest of a row its
 * pivot. Each row is freed of those before when its turn comes, and of those behind when all have had theirs.
 */
function solved(equations: Float64Array[]): { rows: Float64Array[]; order: number[] } {
  const order = Array.from(equations[0] ?? [], (_, point) => point);
  const rows: Float64Array[] = [];
  equations.forEach((equation) => {
    const row = new Float64Array(equation.length);
    let largest = 0;
    for (let k = 0; k < row.length; k++) {
      row[k] = equation[order[k]!]!;
      largest = Math.max(largest, Math.abs(row[k]!));
    }
    freeOf(row, rows, 0);
    const rank = rows.length;
    let place = rank;
    for (let k = rank + 1; k < row.length; k++) if (Math.abs(row[k]!) > Math.abs(row[place]!)) place = k;
    if (!(Math.abs(row[place] ?? 0) > NOTHING * largest)) return;
    rows.push(row);
    for (const one of [...rows, order]) [one[rank], one[place]] = [one[place]!, one[rank]!];
    const scale = 1 / row[rank]!;
    for (let k = rank + 1; k < row.length; k++) row[k] = row[k]! * scale;
  });
  for (const [j, row] of rows.entries()) freeOf(row, rows, j + 1);
  return { rows, order };
}

/** A row freed of the columns of those from `first` on, each 1 in its own; four at a time, for the sake of speed. */
function freeOf(row: Float64Array, rows: readonly Float64Array[], first: number): void {
  let j = first;
  for (; j + 4 <= rows.length; j += 4) {
    const [a, b, c, d] = [rows[j]!, rows[j + 1]!, rows[j + 2]!, rows[j + 3]!];
    const ofA = row[j]!;
    const ofB = row[j + 1]! - ofA * a[j + 1]!;
    const ofC = row[j + 2]! - ofA * a[j + 2]! - ofB * b[j + 2]!;
    const ofD = row[j + 3]! - ofA * a[j + 3]! - ofB * b[j + 3]! - ofC * c[j + 3]!;
    for (let k = j + 4; k < row.length; k++) row[k] = row[k]! - ofA * a[k]! - ofB * b[k]! - ofC * c[k]! - ofD * d[k]!;
  }
  for (; j < rows.length; j++) {
    const factor = row[j]!;
    const from = rows[j]!;
    for (let k = j + 1; k < row.length; k++) row[k] = row[k]! - factor * from[k]!;
  }
}

/** Each row freed of a column but the pivot's, in which it becomes 1; columns from `first` on, up to that. */
function pivot(rows: readonly Float64Array[], at: number, column: number, first: number): void {
  const from = rows[at]!;
  const scale = 1 / from[column]!;
  for (let k = first; k < column; k++) from[k] = from[k]! * scale;
  for (const row of rows) {
    const factor = row[column]!;
    if (row === from || factor === 0) continue;
    for (let k = first; k < column; k++) row[k] = row[k]! - factor * from[k]!;
  }
}
