/**
 * Continuous ranked probability score of a foretold law against what came:
 *   CRPS = integral of (F(x) - 1[x >= y])^2 dx
 * In the unit of x; 0 only for a law that said y and nothing else. Of a single figure it is the absolute error.
 * Simpson's rule on each side of y, 64 panels a side.
 *
 * @param cdf chance that it lies below x
 * @param from,to where the law has no chance worth speaking of below and above
 * @param y what came
 * @source T. Gneiting and A. E. Raftery, "Strictly proper scoring rules, prediction, and estimation", Journal of the
 *   American Statistical Association 102 (2007), equation 20
 * @checked tests/reference/crps/crps.test.ts
 */
export function crps(cdf: (x: number) => number, from: number, to: number, y: number): number {
  const below = simpson((x) => cdf(x) ** 2, Math.min(from, y), y);
  const above = simpson((x) => (1 - cdf(x)) ** 2, y, Math.max(to, y));
  return below + above;
}

const PANELS = 64;

function simpson(f: (x: number) => number, from: number, to: number): number {
  if (to <= from) return 0;
  const h = (to - from) / PANELS;
  let sum = f(from) + f(to);
  for (let i = 1; i < PANELS; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (sum * h) / 3;
}
