/**
 * Random numbers for the invented shop, the same on every machine and run.
 * Every stream is seeded from the shop's seed and a name, so a machine added later leaves the others as they were.
 */
export type Random = {
  /** even over 0 to 1 */
  uniform: () => number;
  /** normal, mean 0, sd 1 */
  normal: () => number;
  /** gamma, mean shape x scale */
  gamma: (shape: number, scale: number) => number;
};

export function random(seed: number, name: string): Random {
  const uniform = mulberry32(hash(`${seed}/${name}`));
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal, gamma: (shape, scale) => scale * standardGamma(shape, uniform, normal) };
}

/** Even numbers from a 32-bit counter, stirred. @source mulberry32, T. Ettinger 2017, public domain (from memory) */
function mulberry32(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let stirred = Math.imul(state ^ (state >>> 15), 1 | state);
    stirred = (stirred + Math.imul(stirred ^ (stirred >>> 7), 61 | stirred)) ^ stirred;
    return ((stirred ^ (stirred >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** 32-bit hash of a text. @source FNV-1a, offset 2166136261 and prime 16777619 (from memory) */
function hash(text: string): number {
  let sum = 2166136261;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 16777619);
  return sum;
}

/** @source Marsaglia and Tsang, A simple method for generating gamma variables, ACM TOMS 26 (2000) 363 (from memory) */
function standardGamma(shape: number, uniform: () => number, normal: () => number): number {
  if (shape < 1) return standardGamma(shape + 1, uniform, normal) * (1 - uniform()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal();
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}
