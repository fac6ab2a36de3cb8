/** A size as the plain model reads it: hours run, wear, 1 sd of the reading. */
export type PlainReading = { hours: number; wearMm: number; sdMm: number };

/** A part with the 1 sd of its new size; readings first to last. */
export type PlainPart = { tau0Mm: number; readings: readonly PlainReading[] };

export type Kernel = { lnChance: number; meanMm: number; varMm2: number; time: number };

/** Chance of a part's readings and its true wear at the last one, at given beta, c and g: a scalar recursion. */
export const kernel = (part: PlainPart, hRefHours: number, beta: number, c: number, g: number): Kernel =>
  kernelAt(part, timesOf(part, hRefHours, g), beta, c);

/** Model time (h / H)^g of each reading. */
export const timesOf = (part: PlainPart, hRefHours: number, g: number): number[] =>
  part.readings.map((reading) => (reading.hours / hRefHours) ** g);

/** {@link kernel} with the readings' times in hand. */
export function kernelAt(part: PlainPart, times: readonly number[], beta: number, c: number): Kernel {
  const found = { lnChance: 0, meanMm: 0, varMm2: 0, time: 0 };
  fillKernel(found, part, times, beta, c);
  return found;
}

/** The same, for sums that ask often. */
export function fillKernel(found: Kernel, part: PlainPart, times: readonly number[], beta: number, c: number): void {
  const b = Math.exp(beta);
  const { readings } = part;
  let mean = 0;
  let variance = part.tau0Mm ** 2;
  let time = 0;
  let lnChance = 0;
  for (let j = 0; j < times.length; j++) {
    const { wearMm, sdMm } = readings[j]!;
    const dt = times[j]! - time;
    mean += b * dt;
    variance += b * b * c * c * dt;
    const s = variance + sdMm * sdMm;
    const v = wearMm - mean;
    lnChance -= 0.5 * (Math.log(2 * Math.PI * s) + (v * v) / s);
    const gain = variance / s;
    mean += gain * v;
    variance *= 1 - gain;
    time = times[j]!;
  }
  found.lnChance = lnChance;
  found.meanMm = mean;
  found.varMm2 = variance;
  found.time = time;
}
