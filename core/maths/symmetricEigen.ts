/**
 * Eigenvalues and eigenvectors of a small symmetric matrix, by Jacobi's rotations.
 * @param matrix rows of a symmetric matrix; not changed
 * @returns values, and vectors[i] belonging to values[i], of length 1; in no particular order
 * @source G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. (2013), section 8.5
 */
export function symmetricEigen(matrix: readonly (readonly number[])[]): { values: number[]; vectors: number[][] } {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = a.map((_, i) => a.map((_, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    let on = 0;
    for (let i = 0; i < n; i++) {
      on += a[i]![i]! ** 2;
      for (let j = 0; j < i; j++) off += a[i]![j]! ** 2;
    }
    if (off <= 1e-30 * on || off === 0) break;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) rotate(a, v, p, q);
  }
  return { values: a.map((row, i) => row[i]!), vectors: a.map((_, i) => v.map((row) => row[i]!)) };
}

/** One rotation that makes entry (p, q) zero. */
function rotate(a: number[][], v: number[][], p: number, q: number): void {
  const apq = a[p]![q]!;
  if (apq === 0) return;
  const theta = (a[q]![q]! - a[p]![p]!) / (2 * apq);
  const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const cos = 1 / Math.sqrt(t * t + 1);
  const sin = t * cos;
  for (let k = 0; k < a.length; k++) {
    const kp = a[k]![p]!;
    const kq = a[k]![q]!;
    a[k]![p] = cos * kp - sin * kq;
    a[k]![q] = sin * kp + cos * kq;
  }
  for (let k = 0; k < a.length; k++) {
    const pk = a[p]![k]!;
    const qk = a[q]![k]!;
    a[p]![k] = cos * pk - sin * qk;
    a[q]![k] = sin * pk + cos * qk;
    const vp = v[k]![p]!;
    const vq = v[k]![q]!;
    v[k]![p] = cos * vp - sin * vq;
    v[k]![q] = sin * vp + cos * vq;
  }
}
