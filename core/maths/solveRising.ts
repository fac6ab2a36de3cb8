/**
 * Where a rising function reaches a value: false position with the Illinois change, kept inside its bracket.
 * @param f rising on [low, high], with f(low) <= target <= f(high)
 * @param fLow f(low), @param fHigh f(high)
 * @param tolerance width of x at which to stop, as a share of |x| + 1e-12
 * @source M. Dowell and P. Jarratt, "A modified regula falsi method", BIT 11 (1971)
 */
export function solveRising(
  f: (x: number) => number,
  target: number,
  low: number,
  high: number,
  fLow: number,
  fHigh: number,
  tolerance: number,
): number {
  let a = low;
  let b = high;
  let fa = fLow - target;
  let fb = fHigh - target;
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  let side = 0;
  for (let step = 0; step < 200; step++) {
    if (b - a <= tolerance * (Math.abs(a) + Math.abs(b)) + 1e-12) break;
    // every fourth step halves, so that no shape of f can hold the search up
    const x = step % 4 === 3 ? 0.5 * (a + b) : (a * fb - b * fa) / (fb - fa);
    const inside = x > a && x < b ? x : 0.5 * (a + b);
    const fx = f(inside) - target;
    if (fx === 0) return inside;
    if (fx < 0) {
      a = inside;
      fa = fx;
      if (side === -1) fb *= 0.5;
      side = -1;
    } else {
      b = inside;
      fb = fx;
      if (side === 1) fa *= 0.5;
      side = 1;
    }
  }
  return 0.5 * (a + b);
}
