import { normalQuantile } from '#core/maths/normal.ts';

/** Seeded chance for simulations: the same seed, the same shop. */
export type Chance = { uniform: () => number; normal: () => number; gamma: (shape: number) => number };

/**
 * @source uniform: mulberry32 by T. Ettinger (public domain, from memory); gamma: G. Marsaglia and W. W. Tsang,
 *   "A simple method for generating gamma variables", ACM TOMS 26 (2000)
 */
export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  const normal = () => normalQuantile(uniform());
  const gamma = (shape: number): number => {
    if (shape < 1) return gamma(shape + 1) * uniform() ** (1 / shape);
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const v = (1 + c * x) ** 3;
      if (v > 0 && Math.log(uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  return { uniform, normal, gamma };
}
