const SQRT_2PI = Math.sqrt(2 * Math.PI);

export const LN_2PI = Math.log(2 * Math.PI);

/** Density of the standard normal at z. */
export const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) / SQRT_2PI;

/**
 * Chance that a standard normal lies below z, to 1e-15 absolute.
 * @source G. West, "Better approximations to cumulative normal functions", Wilmott 2005, after
 *   J. F. Hart et al., Computer Approximations (1968), algorithm 5666: a ratio of polynomials within 7.07 sd,
 *   a continued fraction beyond
 * @checked core/maths/normal.test.ts
 * @example normalCdf(0) // 0.5
 */
export function normalCdf(z: number): number {
  const x = Math.abs(z);
  if (x > 37) return z > 0 ? 1 : 0;
  const bell = Math.exp(-0.5 * x * x);
  let tail: number;
  if (x < 7.07106781186547) {
    let top = 3.52624965998911e-2 * x + 0.700383064443688;
    top = top * x + 6.37396220353165;
    top = top * x + 33.912866078383;
    top = top * x + 112.079291497871;
    top = top * x + 221.213596169931;
    top = top * x + 220.206867912376;
    let under = 8.83883476483184e-2 * x + 1.75566716318264;
    under = under * x + 16.064177579207;
    under = under * x + 86.7807322029461;
    under = under * x + 296.564248779674;
    under = under * x + 637.333633378831;
    under = under * x + 793.826512519948;
    under = under * x + 440.413735824752;
    tail = (bell * top) / under;
  } else {
    tail = bell / (x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65))))) / SQRT_2PI;
  }
  return z > 0 ? 1 - tail : tail;
}

const PER_SD = 64;
/** So far out {@link quickNormalCdf} is 0 or 1 to the last digit [sd]. */
export const QUICK_NORMAL_SD = 9;
/** At every 64th of an sd below 0: the chance there, and its slope a 64th. One after the other, as they are read. */
const TABLE = Float64Array.from({ length: 2 * (QUICK_NORMAL_SD * PER_SD + 2) }, (_, index) => {
  const z = (index >> 1) / PER_SD;
  return index % 2 === 0 ? normalCdf(-z) : normalDensity(z) / PER_SD;
});

/**
 * {@link normalCdf} to 2e-10 absolute, four times as quick: a cubic between values and slopes at every 64th of an sd. For sums over many normals.
 * @source Hermite interpolation: its error is h^4 / 384 times the fourth derivative, which is below 1.4
 * @checked core/maths/normal.test.ts
 */
export function quickNormalCdf(z: number): number {
  const at = Math.abs(z) * PER_SD;
  if (!(at < QUICK_NORMAL_SD * PER_SD)) return z > 0 ? 1 : z < 0 ? 0 : Number.NaN;
  const index = at | 0;
  const x = at - index;
  const y = 1 - x;
  const row = index << 1;
  const tail =
    y * y * ((1 + 2 * x) * TABLE[row]! - x * TABLE[row + 1]!) +
    x * x * ((1 + 2 * y) * TABLE[row + 2]! + y * TABLE[row + 3]!);
  return z > 0 ? 1 - tail : tail;
}

const A = [
  -3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2, -3.066479806614716e1,
  2.506628277459239,
];
const B = [
  -5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1, -1.328068155288572e1, 1,
];
const C = [
  -7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
];
const D = [7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416, 1];

/** A polynomial, its highest coefficient first. */
function horner(coefficients: readonly number[], x: number): number {
  let sum = coefficients[0]!;
  for (let k = 1; k < coefficients.length; k++) sum = sum * x + coefficients[k]!;
  return sum;
}

/**
 * The z below which a standard normal lies with chance p, 0 < p < 1, to 1.2e-9 of itself: where it is a scale to look along.
 * @source P. J. Acklam, "An algorithm for computing the inverse normal cumulative distribution function" (2003)
 * @checked core/maths/normal.test.ts
 */
export function quickNormalQuantile(p: number): number {
  if (p <= 0) return -Infinity;
  if (p >= 1) return Infinity;
  if (p > 0.5) return -quickNormalQuantile(1 - p);
  if (p < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(p));
    return horner(C, q) / horner(D, q);
  }
  const q = p - 0.5;
  const r = q * q;
  return (horner(A, r) * q) / horner(B, r);
}

/**
 * The same to 1e-15: one Halley step against {@link normalCdf}.
 * @source P. J. Acklam, as above
 * @checked core/maths/normal.test.ts
 * @example normalQuantile(0.5) // 0
 */
export function normalQuantile(p: number): number {
  if (p > 0.5) return -normalQuantile(1 - p);
  const z = quickNormalQuantile(p);
  if (!Number.isFinite(z)) return z;
  const miss = (normalCdf(z) - p) * SQRT_2PI * Math.exp(0.5 * z * z);
  return z - miss / (1 + 0.5 * z * miss);
}

/**
 * A chance as a normal's quantile, on which chances of wear, dates and rates are nearly straight.
 * @param sure chances nearer than this to 0 or 1 are told apart no more
 */
export const normalScore = (chance: number, sure: number): number =>
  quickNormalQuantile(Math.min(1 - sure, Math.max(sure, chance)));
