import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { orRefuse } from '#core/outcome.ts';
import { jointStresses } from '#core/repair/pin-joint/jointStresses.ts';
import { notWorse } from '#core/repair/pin-joint/notWorse.ts';
import { type PinJoint, roundBoss } from '#core/repair/pin-joint/pinJoint.ts';
import {
  doubleShearMpa,
  pinBendingMpa,
  pinMomentNmm,
  pinMomentStiffLugsNmm,
} from '#core/repair/pin-joint/pinStress.ts';
import {
  contactStressMpa,
  lugLigaments,
  lugProportions,
  pinResistance,
} from '#core/repair/pin-joint/publishedRules.ts';
import { leastBossWallMm, leastBushWallMm, leastEndLigamentMm } from '#core/repair/shopFigures.ts';

type Example = { id: string; input: Record<string, number>; expected: Record<string, number> };
const { examples } = JSON.parse(readFileSync(join(import.meta.dirname, 'examples.json'), 'utf8')) as {
  examples: Example[];
};
const example = (id: string): Example => {
  const found = examples.find((one) => one.id === id);
  if (!found) throw new Error(`no example ${id}`);
  return found;
};

/** The examples have the pin's own diameter for the hole's. */
function jointOf({ input }: Example): PinJoint {
  const { d_pin = 0, D_boss = 0, t_eye = 0, t_fork_each = 0, gap_c_each_side = 0 } = input;
  const boss = (thicknessMm: number) => roundBoss({ boreMm: d_pin, outsideMm: D_boss, thicknessMm });
  return { pinMm: d_pin, eye: boss(t_eye), fork: boss(t_fork_each), gapEachSideMm: gap_c_each_side };
}

describe('stresses of a pin joint', () => {
  test.each(['K1', 'K6-new', 'K7-worn'])('%s', (id) => {
    const one = example(id);
    const joint = jointOf(one);
    const { F_N: forceN = 0 } = one.input;
    const stresses = orRefuse(jointStresses(joint, forceN));
    const { expected } = one;
    expect(stresses['pin-shear']).toBeCloseTo(expected.tau_pin ?? Number.NaN, 3);
    expect(stresses['eye-net-tension']).toBeCloseTo(expected.sig_eye ?? Number.NaN, 3);
    expect(stresses['eye-tear-out']).toBeCloseTo(expected.tear_eye ?? Number.NaN, 3);
    expect(stresses['eye-bearing']).toBeCloseTo(expected.crush_eye ?? Number.NaN, 3);
    expect(stresses['fork-net-tension']).toBeCloseTo(expected.sig_fork ?? Number.NaN, 3);
    expect(stresses['fork-bearing']).toBeCloseTo(expected.crush_fork ?? Number.NaN, 3);
    expect(stresses['pin-bending']).toBeCloseTo(expected.sb_EC3 ?? Number.NaN, 2);
    expect(pinMomentNmm(forceN, joint)).toBeCloseTo(expected.M_EC3 ?? Number.NaN, 3);
    expect(pinMomentStiffLugsNmm(forceN, joint)).toBeCloseTo(expected.M_text ?? Number.NaN, 3);
    expect(pinBendingMpa(pinMomentStiffLugsNmm(forceN, joint), joint.pinMm)).toBeCloseTo(
      expected.sb_text ?? Number.NaN,
      2,
    );
  });

  test('K3: a 20 mm pin of 540 MPa yield, safety 4, carries the published 42.4 kN in double shear', () => {
    const { input, expected } = example('K3');
    const { Sy = 0, n = 1 } = input;
    // Tresca: shear yields at half the yield stress
    const carriedN = Sy / (2 * n) / doubleShearMpa(1, 20);
    expect(carriedN / 1000).toBeCloseTo(expected.F_double_shear_kN ?? Number.NaN, 3);
  });

  test('K4: a knuckle pin under 45 000 N mm', () => {
    const { input, expected } = example('K4');
    const { M_Nmm = 0, Sy = 0, n = 1 } = input;
    const diameterMm = (pinBendingMpa(M_Nmm, 1) / (Sy / n)) ** (1 / 3);
    expect(diameterMm).toBeCloseTo(expected.d_mm ?? Number.NaN, 2);
  });

  test.each([
    ['a pin of no diameter', { pinMm: 0 }, 'pin-joint-size'],
    ['a gap under 0', { gapEachSideMm: -1 }, 'pin-joint-size'],
    ['an eye without thickness', { eye: roundBoss({ boreMm: 50, outsideMm: 100, thicknessMm: 0 }) }, 'pin-joint-size'],
    [
      'a hole as wide as its lug',
      { fork: roundBoss({ boreMm: 100, outsideMm: 100, thicknessMm: 25 }) },
      'pin-joint-no-ligament',
    ],
    ['a hole past its end', { eye: { boreMm: 50, thicknessMm: 60, widthMm: 100, endMm: 25 } }, 'pin-joint-no-ligament'],
  ])('%s is refused', (_, change, code) => {
    const outcome = jointStresses({ ...jointOf(example('K6-new')), ...change }, 1000);
    expect(outcome.ok ? null : outcome.refusal.code).toBe(code);
  });
});

describe('a repaired joint beside the same as drawn', () => {
  const [asNew, worn] = [jointOf(example('K6-new')), jointOf(example('K7-worn'))];

  test('K6 to K7: the pin bends 16 % more, from side slop and 1 mm of wear', () => {
    const compared = orRefuse(notWorse(asNew, worn, 60_000));
    expect(compared.notWorse).toBe(false);
    expect(compared.worst.figure).toBe('pin-bending');
    expect(compared.worst.ratio).toBeCloseTo(79.22 / 68.449, 4);
    expect(compared.worst.repairedMpa).toBeCloseTo(79.22, 2);
  });

  test('the ratio needs no force', () => {
    const [known, unknown] = [orRefuse(notWorse(asNew, worn, 60_000)), orRefuse(notWorse(asNew, worn, null))];
    unknown.figures.forEach((figure, at) => {
      expect(figure.ratio).toBeCloseTo(known.figures[at]?.ratio ?? Number.NaN, 12);
      expect([figure.asDrawnMpa, figure.repairedMpa]).toEqual([null, null]);
    });
  });

  test('a joint beside itself is not worse; an oversize pin helps the pin and costs the lug', () => {
    expect(orRefuse(notWorse(asNew, asNew, null))).toMatchObject({ notWorse: true, worst: { word: 'the same' } });
    const boss = (thicknessMm: number) => roundBoss({ boreMm: 54, outsideMm: 100, thicknessMm });
    const oversize = orRefuse(notWorse(asNew, { ...asNew, pinMm: 54, eye: boss(60), fork: boss(25) }, null));
    const words = Object.fromEntries(oversize.figures.map(({ figure, word }) => [figure, word]));
    expect(words).toMatchObject({
      ...{ 'pin-shear': 'better', 'pin-bending': 'better', 'eye-bearing': 'better' },
      ...{ 'eye-net-tension': 'worse', 'fork-tear-out': 'worse' },
    });
    expect(oversize.notWorse).toBe(false);
  });
});

describe('published rules', () => {
  test('L1: opening the hole raises the ligament wanted and uses some of it up', () => {
    const { input, expected } = example('L1') as unknown as {
      input: { F_N: number; t: number; fy: number; d0: [number, number] };
      expected: { a_min: [number, number]; c_min: [number, number] };
    };
    const lug = (boreMm: number) => ({ boreMm, thicknessMm: input.t, widthMm: 110, endMm: 70 });
    const [before, after] = input.d0.map((d0) => lugLigaments(lug(d0), input.F_N, input.fy, 1));
    expect(before?.endWantedMm).toBeCloseTo(expected.a_min[0], 3);
    expect(after?.endWantedMm).toBeCloseTo(expected.a_min[1], 3);
    expect(before?.sideWantedMm).toBeCloseTo(expected.c_min[0], 3);
    expect(after?.sideWantedMm).toBeCloseTo(expected.c_min[1], 3);
    expect([before?.endMm, after?.endMm]).toEqual([44, 40]);
    expect([before?.wideEnough, after?.wideEnough]).toEqual([true, false]);
  });

  test('a pin of 50: shear, bearing and moment by hand from the printed formulas', () => {
    const joint = jointOf(example('K6-new'));
    const steel = { pinYieldMpa: 650, pinUltimateMpa: 900, lugYieldMpa: 355 };
    const factors = { m0: 1, m2: 1.25, m6Ser: 1 };
    const stays = pinResistance(joint, 60_000, steel, false, factors);
    const drawn = pinResistance(joint, 60_000, steel, true, factors);
    // 0.6 x 1963.5 x 900 / 1.25; 1.5 x 60 x 50 x 355; 1.5 x 12271.8 x 650
    expect(stays.shearN / 1e3).toBeCloseTo(848.23, 2);
    expect(stays.bearingEyeN).toBeCloseTo(1_597_500, 3);
    expect(stays.momentNmm / 1e6).toBeCloseTo(11.965, 3);
    // 0.6 x 60 x 50 x 355; 0.8 x 12271.8 x 650
    expect(drawn.bearingEyeN).toBeCloseTo(639_000, 3);
    expect(drawn.momentNmm / 1e6).toBeCloseTo(6.3814, 4);
    expect(drawn.momentUse).toBeCloseTo(0.84 / 6.3814, 4);
    expect(drawn.shearUse).toBeCloseTo(30 / 848.23, 5);
    expect(drawn.combinedUse).toBeCloseTo((0.84 / 11.965) ** 2 + (30 / 848.23) ** 2, 5);
    expect(drawn.bearingUse).toBeCloseTo(30_000 / (0.6 * 25 * 50 * 355), 6);
  });

  test('proportions of a shaped lug, and contact stress of a loose pin', () => {
    const lug = { boreMm: 50, thicknessMm: 25, widthMm: 125, endMm: 80 };
    expect(lugProportions(lug, 142_000, 355, 1)).toEqual({
      thicknessMm: 14,
      boreUpToMm: 62.5,
      widthMm: 125,
      endMm: 80,
    });
    // 0.591 sqrt(210000 x 60000 x 1 / (49^2 x 25))
    expect(contactStressMpa(60_000, 49, lug)).toBeCloseTo(270.77, 1);
    expect(contactStressMpa(60_000, 50, lug)).toBe(0);
  });

  test('what a shop leaves standing: common practice, whichever is more', () => {
    expect([leastBossWallMm(20), leastBossWallMm(50)]).toEqual([8, 15]);
    expect([leastBushWallMm(40), leastBushWallMm(80)]).toEqual([3, 4]);
    expect(leastEndLigamentMm(50)).toBe(45);
  });
});
