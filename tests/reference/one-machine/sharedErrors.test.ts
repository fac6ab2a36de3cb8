import { describe, expect, it } from 'vitest';
import { classEvidence } from '#core/fit/classEvidence.ts';
import { machineBlock } from '#core/fit/machineBlock.ts';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';

/** Normal law only: no odd parts. */
const settings = { ...defaultModelSettings, oddPartShare: 0 };
const prior = { partClass: 'slide', hRefHours: 5500, m0: Math.log(2.5), s0: 0.35, from: 'trade' as const };
const figures = { partScatter: 0.2, pathScatter: 0.12, machineScatter: 0.3, visitErrorMm: 0.08 };

const part = (sizes: Record<number, number>) =>
  aSeries({
    newSizeSdMm: 0.03,
    readings: Object.entries(sizes).map(([hours, wearMm]) =>
      aReading({ workedHours: Number(hours), wearMm, errorSdMm: 0.05, visit: hours }),
    ),
  });

/** ln Z by quadrature with all unknowns summed out one by one; see SOURCE.md. */
const cases = [
  { title: 'one visit, two parts', power: 1, parts: [{ 2000: 1.1 }, { 2000: 0.8 }], lnZ: -0.454593, u: 0.937307 },
  {
    title: 'two visits, three parts, quickening wear',
    power: 1.1,
    parts: [{ 1500: 0.5, 4000: 1.6 }, { 4000: 2.1 }, { 1500: 0.75 }],
    lnZ: -0.473147,
    u: 0.982966,
  },
];

describe('parts of one machine with shared visit errors, against quadrature', () => {
  for (const { title, power, parts, lnZ, u } of cases)
    it(title, () => {
      const block = machineBlock(1, parts.map(part), { sharedErrors: true, fewParts: false });
      const found = classEvidence({ prior, blocks: [block] }, { ...figures, power }, [undefined], settings, 4);
      expect(Math.abs(found.lnZ - lnZ)).toBeLessThan(0.003);
      expect(Math.abs(block.mean[0]! - u)).toBeLessThan(0.001);
    });
});
