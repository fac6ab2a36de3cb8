/**
 * Small symmetric positive definite matrices, kept whole in a Float64Array: entry (i, j) at i * n + j.
 * Everything works in place on arrays the caller owns, so that nothing is allocated where parts are counted.
 * @source G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. (2013), algorithm 4.2.2
 */

/**
 * Lower factor L of a = L L^T, into the lower triangle of `a` itself.
 * @returns ln of the determinant of a; NaN when a is not positive definite (then `a` is spoilt)
 */
export function choleskyInPlace(a: Float64Array, n: number): number {
  let lnDet = 0;
  let product = 1;
  for (let j = 0; j < n; j++) {
    let pivot = a[j * n + j]!;
    for (let k = 0; k < j; k++) pivot -= a[j * n + k]! * a[j * n + k]!;
    if (!(pivot > 0)) return Number.NaN;
    const root = Math.sqrt(pivot);
    const perRoot = 1 / root;
    a[j * n + j] = root;
    product *= pivot;
    if (product < 1e-100 || product > 1e100) {
      lnDet += Math.log(product);
      product = 1;
    }
    for (let i = j + 1; i < n; i++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= a[i * n + k]! * a[j * n + k]!;
      a[i * n + j] = sum * perRoot;
    }
  }
  return lnDet + Math.log(product);
}

/**
 * Inverse of a symmetric positive definite matrix.
 * @param a the matrix; its lower triangle is spoilt
 * @param inverse where the whole (symmetric) inverse goes; not `a`
 * @returns ln of the determinant of a; NaN when a is not positive definite
 */
export function invertPositive(a: Float64Array, inverse: Float64Array, n: number): number {
  if (n === 1) {
    const only = a[0]!;
    if (!(only > 0)) return Number.NaN;
    inverse[0] = 1 / only;
    return Math.log(only);
  }
  const lnDet = choleskyInPlace(a, n);
  if (Number.isNaN(lnDet)) return lnDet;
  // L^-1, into the lower triangle of a itself
  for (let i = 0; i < n; i++) {
    const row = i * n;
    const perRoot = 1 / a[row + i]!;
    for (let j = 0; j < i; j++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= a[row + k]! * a[k * n + j]!;
      a[row + j] = sum * perRoot;
    }
    a[row + i] = perRoot;
  }
  // L^-T L^-1
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += a[k * n + i]! * a[k * n + j]!;
      inverse[i * n + j] = sum;
      inverse[j * n + i] = sum;
    }
  return lnDet;
}
