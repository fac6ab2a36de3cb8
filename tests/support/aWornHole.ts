import type { RepairFacts } from '#core/contract/repair.ts';

/** A hole worn 0.9 mm to the rear, read on four axes, in a round boss with wall enough: what the bench might say of it. */
export const aWornHole = (facts: RepairFacts, change: Partial<RepairFacts> = {}): RepairFacts => {
  const standardMm = facts.standardMm ?? 40;
  const axesMm = [0.9, 0.64, 0, 0.64].map((wornMm) => standardMm + wornMm);
  return {
    ...facts,
    ...{
      standardMm,
      newBoreMm: standardMm,
      gauge: 'two-point',
      axesMm,
      wornTowards: 'rear',
      datum: 'unworn-lip',
      mayMoveMm: 1,
    },
    ...{ bossOutsideMm: 2 * standardMm + 6, bossLengthMm: 45, material: 'structural-steel', plate: 'sound' },
    ...{ pinLengthMm: 150, nylonNear: false, forgedOrHeatTreated: false },
    ...change,
  };
};
