import { describe, expect, it } from 'vitest';
import { figureCloudFrom } from './figureCloud.ts';
import { fineMesh } from './figureGrid.ts';

/** ln of a gamma variable of shape 3: density exp(3 x - e^x) / 2; a lopsided bell. */
const lnLogGamma = (x: number): number => 3 * x - Math.exp(x) - Math.LN2;
/** @source M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 6.3.2 and 6.4.2: psi(3), psi'(3) */
const PSI_3 = 1.5 - 0.5772156649;
const PSI_1_3 = Math.PI ** 2 / 6 - 1.25;

describe('a cloud read off a surface', () => {
  for (const d of [2, 4])
    it(`carries mean, spread and evidence of a lopsided posterior of ${d} coordinates, from few askings`, () => {
      let asked = 0;
      const posterior = (x: readonly number[]) => {
        asked++;
        // coordinates turned against each other, so that none is by itself
        const turned = x.map((entry, i) => (i % 2 === 0 ? entry + 0.5 * x[(i + 1) % d]! : entry));
        return turned.reduce((sum, entry) => sum + lnLogGamma(entry), 0);
      };
      const { cloud, settled } = figureCloudFrom(new Array<number>(d).fill(0), posterior, 128);
      expect(settled).toBe(true);
      expect(asked).toBeLessThan(400);
      const weights = cloud.map(({ lnWeight }) => Math.exp(lnWeight));
      const total = weights.reduce((sum, weight) => sum + weight, 0);
      expect(total / cloud.length).toBeCloseTo(1, 1);
      const mean = cloud.reduce((sum, { x }, k) => sum + (weights[k]! * x[1]!) / total, 0);
      const variance = cloud.reduce((sum, { x }, k) => sum + (weights[k]! * (x[1]! - mean) ** 2) / total, 0);
      expect(Math.abs(mean - PSI_3) / Math.sqrt(PSI_1_3)).toBeLessThan(0.06);
      expect(Math.abs(Math.sqrt(variance / PSI_1_3) - 1)).toBeLessThan(0.04);
    });

  it('carries mean and evidence of a cheap posterior of three coordinates to three thousandths, from equal nodes along its axes', () => {
    let asked = 0;
    const posterior = (x: readonly number[]) => {
      asked++;
      return x.reduce((sum, entry, i) => sum + lnLogGamma(entry + 0.5 * (x[i - 1] ?? 0)), 0);
    };
    const { cloud } = figureCloudFrom([0, 0, 0], posterior, 64, { mesh: fineMesh });
    expect(asked).toBeLessThan(1200);
    const weights = cloud.map(({ lnWeight }) => Math.exp(lnWeight));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const mean = cloud.reduce((sum, { x }, k) => sum + (weights[k]! * x[0]!) / total, 0);
    const variance = cloud.reduce((sum, { x }, k) => sum + (weights[k]! * (x[0]! - mean) ** 2) / total, 0);
    expect(Math.abs(total / cloud.length - 1)).toBeLessThan(3e-3);
    expect(Math.abs(mean - PSI_3)).toBeLessThan(3e-3);
    expect(Math.abs(variance / PSI_1_3 - 1)).toBeLessThan(2e-2);
  });

  it('follows a cheap posterior wherever it leads: a bell bent to a bow, whose evidence is 1 and mean height 1', () => {
    const bow = ([x, y]: readonly number[]) => -0.5 * (x! * x! + (y! - x! * x!) ** 2) - Math.log(2 * Math.PI);
    const { cloud } = figureCloudFrom([0, 0], bow, 64, { mesh: fineMesh });
    const weights = cloud.map(({ lnWeight }) => Math.exp(lnWeight));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    expect(Math.abs(total / cloud.length - 1)).toBeLessThan(1e-2);
    expect(Math.abs(cloud.reduce((sum, { x }, k) => sum + (weights[k]! * x[1]!) / total, 0) - 1)).toBeLessThan(2e-2);
  });

  it('weighs nothing beyond a cliff, which no smooth surface can follow', () => {
    const stepped = ([x, y]: readonly number[]) => (x! > 0.5 ? -400 : 0) - 0.5 * (x! * x! + y! * y!);
    const { cloud } = figureCloudFrom([0, 0], stepped, 64);
    const weights = cloud.map(({ lnWeight }) => Math.exp(lnWeight));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const beyond = cloud.reduce((sum, { x }, k) => sum + (x[0]! > 0.5 ? weights[k]! : 0), 0);
    // a smooth surface would give it 0.3
    expect(beyond / total).toBeLessThan(0.1);
  });
});
