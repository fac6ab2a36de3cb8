import { isoFit } from '../../iso286/isoFit.ts';
import { type LimitsOfSize, limitsOfSize } from '../../iso286/limitsOfSize.ts';
import type { HoleClass, ShaftClass } from '../../iso286/toleranceClass.ts';
import { type Outcome, ok, refuse } from '../../outcome.ts';
import type { Material } from './material.ts';
import { interferenceLeftMm, type PressedPair, type PressFit, pressFit } from './pressFit.ts';
import { FRICTION, type Lubrication, pressForceN, slipTorqueNmm } from './pressForce.ts';
import { type ShrinkPlan, shrinkPlan } from './shrink.ts';

/** A bush and the boss it goes into, as drawn. */
export type BushInBoss = {
  /** nominal diameter at which they meet [mm] */
  interfaceMm: number;
  bossClass: HoleClass;
  bushClass: ShaftClass;
  /** smallest outside of the boss about the hole [mm] */
  bossOutsideMm: number;
  /** nominal bore of the bush [mm]; 0: a solid pin or plug */
  bushBoreMm: number;
  /** class its bore is made to before pressing, and the class it should have after; null: finished after pressing */
  bushBoreClass: HoleClass | null;
  wantedBoreClass: HoleClass | null;
  lengthMm: number;
  /** Rz of both surfaces: pressing flattens part of it, which then no longer holds; absent: none is taken off [micrometre] */
  roughnessUm?: { bossRzUm: number; bushRzUm: number };
  boss: Material;
  bush: Material;
  lubrication: Lubrication;
  roomC: number;
};

/** A pressed bush between its loosest and tightest. */
export type PressedBush = {
  /** diametral, least and most the two classes may give, what pressing flattens taken off; a least below 0 is clearance [mm] */
  leastInterferenceMm: number;
  mostInterferenceMm: number;
  /** true: within the classes, bushes may come out that nothing holds */
  mayBeLoose: boolean;
  loosest: PressFit | null;
  tightest: PressFit;
  /** force to end the pressing, from loosest with least friction to tightest with most [N] */
  pressForceN: { low: number; high: number };
  /** turning moment it carries before it slips, loosest and tightest, with the least friction [N mm] */
  slipTorqueNmm: { low: number; high: number };
  boreAfter: BoreAfterPressing | null;
  shrink: ShrinkPlan;
};

/** What becomes of a bush's bore. */
export type BoreAfterPressing = {
  before: LimitsOfSize;
  closesInMm: { low: number; high: number };
  /** limits it may have once in [mm] */
  smallestMm: number;
  largestMm: number;
  /** the wanted limits, and whether every bush within its limits comes out within them; null: none asked for */
  wanted: LimitsOfSize | null;
  withinWanted: boolean | null;
};

/**
 * A bush pressed into a boss: both ends of what its tolerance classes allow.
 *
 * @refuses press-clearance-fit (the classes never bear on one another), what limitsOfSize and pressFit refuse
 * @source Lame and Coulomb as in pressFit.ts and pressForce.ts, at the limits of ISO 286-2
 * @checked tests/reference/press-fit/pressFit.test.ts
 */
export function pressBush(of: BushInBoss): Outcome<PressedBush> {
  const fit = isoFit(of.interfaceMm, of.bossClass, of.bushClass);
  if (!fit.ok) return fit;
  const left = (clearanceUm: number) =>
    interferenceLeftMm(-clearanceUm / 1000, of.roughnessUm ?? { bossRzUm: 0, bushRzUm: 0 });
  const leastInterferenceMm = left(fit.value.mostClearanceUm);
  const mostInterferenceMm = left(fit.value.leastClearanceUm);
  if (!(mostInterferenceMm > 0))
    return refuse({ code: 'press-clearance-fit', facts: { leastClearanceMm: -mostInterferenceMm } });
  const pair: PressedPair = { ...of, diametralInterferenceMm: mostInterferenceMm };
  const tightest = pressFit(pair);
  if (!tightest.ok) return tightest;
  const loosest = leastInterferenceMm > 0 ? pressFit({ ...pair, diametralInterferenceMm: leastInterferenceMm }) : null;
  if (loosest && !loosest.ok) return loosest;
  const boreAfter = boreAfterPressing(of, loosest?.value.bushCloseInMm ?? 0, tightest.value.bushCloseInMm);
  if (!boreAfter.ok) return boreAfter;
  const friction = FRICTION[of.lubrication].value;
  const forceN = (fitted: PressFit | null, mu: number) =>
    fitted === null ? 0 : pressForceN({ ...of, pressureMpa: fitted.pressureMpa, friction: mu });
  return ok({
    ...{ leastInterferenceMm, mostInterferenceMm, mayBeLoose: leastInterferenceMm <= 0 },
    ...{ loosest: loosest?.value ?? null, tightest: tightest.value },
    pressForceN: {
      low: forceN(loosest?.value ?? null, friction.low),
      high: forceN(tightest.value, friction.high),
    },
    slipTorqueNmm: {
      low: slipTorqueNmm(forceN(loosest?.value ?? null, friction.low), of.interfaceMm),
      high: slipTorqueNmm(forceN(tightest.value, friction.low), of.interfaceMm),
    },
    boreAfter: boreAfter.value,
    // the tops of the surfaces have to come past one another: nothing is taken off here
    shrink: shrinkPlan({ ...of, interferenceMm: -fit.value.leastClearanceUm / 1000 }),
  });
}

/**
 * Bore of a bush once it is in: the tightest fit closes the smallest bore, the loosest the largest.
 *   smallest after = smallest before - most close-in;  largest after = largest before - least close-in
 * @source own derivation: worst limits of both
 */
function boreAfterPressing(
  of: Pick<BushInBoss, 'bushBoreMm' | 'bushBoreClass' | 'wantedBoreClass'>,
  leastCloseInMm: number,
  mostCloseInMm: number,
): Outcome<BoreAfterPressing | null> {
  if (of.bushBoreMm === 0 || of.bushBoreClass === null) return ok(null);
  const before = limitsOfSize(of.bushBoreMm, of.bushBoreClass);
  if (!before.ok) return before;
  const wanted = of.wantedBoreClass === null ? ok(null) : limitsOfSize(of.bushBoreMm, of.wantedBoreClass);
  if (!wanted.ok) return wanted;
  const smallestMm = before.value.smallestMm - mostCloseInMm;
  const largestMm = before.value.largestMm - leastCloseInMm;
  const within = wanted.value && smallestMm >= wanted.value.smallestMm && largestMm <= wanted.value.largestMm;
  return ok({
    ...{ before: before.value, closesInMm: { low: leastCloseInMm, high: mostCloseInMm } },
    ...{ smallestMm, largestMm, wanted: wanted.value, withinWanted: within },
  });
}
