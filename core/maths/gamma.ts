/** Stirling's series is good to 1e-14 from here on. */
const LARGE = 7;
const HALF_LN_2PI = 0.5 * Math.log(2 * Math.PI);

/**
 * Natural logarithm of the gamma function, x > 0, to 1e-13 relative to max(1, |result|).
 *   ln Gamma(x) = (x - 1/2) ln x - x + ln(2 pi)/2 + 1/(12 x) - 1/(360 x^3) + ...,  small x lifted by Gamma(x+1) = x Gamma(x)
 * @source M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 6.1.40 and 6.1.15
 * @checked core/maths/gamma.test.ts
 * @example lnGamma(1) // 0
 */
export function lnGamma(x: number): number {
  if (!(x > 0)) return Number.NaN;
  let lifted = 1;
  let at = x;
  while (at < LARGE) lifted *= at++;
  const perAt = 1 / at;
  const large = (at - 0.5) * Math.log(at) - at + HALF_LN_2PI + stirling(perAt * perAt) * perAt;
  return lifted === 1 ? large : large - Math.log(lifted);
}

/** Stirling's series by 1 / x^2: its coefficients are B_2k / (2k (2k-1)), k = 1 to 7. */
function stirling(s: number): number {
  let sum = 1 / 156;
  sum = sum * s - 691 / 360360;
  sum = sum * s + 1 / 1188;
  sum = sum * s - 1 / 1680;
  sum = sum * s + 1 / 1260;
  sum = sum * s - 1 / 360;
  return sum * s + 1 / 12;
}

/**
 * Logarithm of the gamma density at x > 0:
 *   (shape - 1) ln x - x/scale - ln Gamma(shape) - shape ln scale
 * @source M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 26.1.31, with a scale
 * @checked core/maths/gamma.test.ts
 */
export const lnGammaDensity = (x: number, shape: number, scale: number): number =>
  (shape - 1) * Math.log(x) - x / scale - lnGamma(shape) - shape * Math.log(scale);
