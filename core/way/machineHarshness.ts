import { type HarshnessWord, harshness } from '../fit/classEvidence.ts';
import type { ShopLearning } from '../fit/learnShop.ts';
import { normalQuantile } from '../maths/normal.ts';

/** How many times as fast as on the usual machine parts wear on this one: 10, 50 and 90 % points, and who says so. */
export type MachineHarshness = {
  lowTimes: number;
  middleTimes: number;
  highTimes: number;
  /** part classes whose sizes on the machine have been heard */
  classesHeard: number;
};

const Z_90 = normalQuantile(0.9);

/**
 * A machine's harshness a (driver, dirt, greasing) as its measured parts of all classes say it, for parts of one class:
 *   a ~ N(expected, om^2) times the classes' words,  om over the class's nodes by weight
 * @param expected ln harshness by the shop's word on the machine; 0 without one
 * @returns null where the class tells no machines apart
 */
export function machineHarshness(
  pool: ShopLearning,
  machineId: number,
  partClass: string,
  expected: number,
): MachineHarshness | null {
  const nodes = pool.classes.find((one) => one.partClass === partClass)?.nodes ?? [];
  const words = pool.classes.flatMap((one) => {
    const word = one.machines.find((machine) => machine.machineId === machineId)?.harshness;
    return word && (word.lambda !== 0 || word.eta !== 0) ? [word] : [];
  });
  const all = words.reduce<HarshnessWord>(
    (sum, { eta, lambda }) => ({ eta: sum.eta + eta, lambda: sum.lambda + lambda }),
    { eta: 0, lambda: 0 },
  );
  let mean = 0;
  let square = 0;
  for (const { weight, machineScatter } of nodes) {
    const at = harshness(machineScatter, all, expected);
    mean += weight * at.mean;
    square += weight * (at.variance + at.mean ** 2);
  }
  const variance = square - mean * mean;
  if (!(variance > 0)) return null;
  const at = (z: number) => Math.exp(mean + z * Math.sqrt(variance));
  return { lowTimes: at(-Z_90), middleTimes: at(0), highTimes: at(Z_90), classesHeard: words.length };
}
