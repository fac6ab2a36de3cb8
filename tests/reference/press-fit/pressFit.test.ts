import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { orRefuse } from '#core/outcome.ts';
import { adhesiveFit } from '#core/repair/press-fit/adhesiveFit.ts';
import { material } from '#core/repair/press-fit/material.ts';
import { pressBush } from '#core/repair/press-fit/pressBush.ts';
import { interferenceLeftMm, pressFit } from '#core/repair/press-fit/pressFit.ts';
import { pressForceN, slipTorqueNmm } from '#core/repair/press-fit/pressForce.ts';
import { shrinkPlan, temperatureChangeK } from '#core/repair/press-fit/shrink.ts';

type Figures = Record<string, number>;
type Example = { id: string; status: string; input: Figures; expected: Figures };
const file = JSON.parse(readFileSync(join(import.meta.dirname, 'examples.json'), 'utf8')) as {
  examples: Example[];
  shrink: Example[];
};
const example = (id: string): Example => {
  const found = [...file.examples, ...file.shrink].find((one) => one.id === id);
  if (!found) throw new Error(`no example ${id}`);
  return found;
};
const of = (figures: Figures, name: string): number => {
  const value = figures[name];
  if (value === undefined) throw new Error(`no ${name}`);
  return value;
};

/** A pair as the examples write it: yield so high that nothing yields. */
const pairOf = (input: Figures) => ({
  interfaceMm: of(input, 'd'),
  bossOutsideMm: of(input, 'do'),
  bushBoreMm: of(input, 'di'),
  boss: { youngsMpa: of(input, 'E_outer'), poisson: of(input, 'nu_outer'), yieldMpa: 1e6 },
  bush: { youngsMpa: of(input, 'E_inner'), poisson: of(input, 'nu_inner'), yieldMpa: 1e6 },
});

describe('a bush or pin pressed into a boss', () => {
  test.each(['PF1', 'PF4-bush', 'PF5-bush', 'PF6-bush'])('%s: pressure, stresses, growth and force', (id) => {
    const { input, expected } = example(id);
    const fit = orRefuse(pressFit({ ...pairOf(input), diametralInterferenceMm: of(input, 'delta') }));
    const force = pressForceN({
      pressureMpa: fit.pressureMpa,
      interfaceMm: of(input, 'd'),
      lengthMm: of(input, 'L'),
      friction: of(input, 'mu'),
    });
    expect(fit.pressureMpa).toBeCloseTo(of(expected, 'p_MPa'), 4);
    expect(fit.bossHoopMpa).toBeCloseTo(of(expected, 'hub_hoop_bore_MPa'), 4);
    expect(fit.bossVonMisesMpa).toBeCloseTo(of(expected, 'hub_vonMises_bore_MPa'), 4);
    expect(fit.bushHoopOutsideMpa).toBeCloseTo(of(expected, 'shaft_hoop_MPa_at_interface'), 4);
    expect(fit.bossGrowthMm).toBeCloseTo(of(expected, 'hub_OD_growth_mm'), 4);
    expect(force).toBeCloseTo(of(expected, 'press_force_N'), 3);
    if (expected.bush_hoop_at_bore_MPa !== undefined) {
      expect(fit.bushHoopBoreMpa).toBeCloseTo(expected.bush_hoop_at_bore_MPa, 4);
      expect(fit.bushCloseInMm).toBeCloseTo(of(expected, 'bush_bore_close_in_mm'), 4);
      expect(fit.bushCloseInMm / of(input, 'delta')).toBeCloseTo(of(expected, 'close_in_over_delta'), 4);
    } else {
      expect(fit.bushCloseInMm).toBe(0);
      expect(fit.bushVonMisesMpa).toBe(fit.pressureMpa);
    }
  });

  test('PF2: a hub hoop stress of 30 MPa asks for this interference, and carries this force and moment', () => {
    const { input, expected } = example('PF2');
    const pair = pairOf(input);
    const one = orRefuse(pressFit({ ...pair, diametralInterferenceMm: 1 }));
    const pressureMpa = of(input, 'hub_hoop_limit') / (one.bossHoopMpa / one.pressureMpa);
    // pressure is in proportion to interference
    const delta = pressureMpa / one.pressureMpa;
    const force = pressForceN({ pressureMpa, interfaceMm: 100, lengthMm: of(input, 'L'), friction: of(input, 'mu') });
    expect(pressureMpa).toBeCloseTo(of(expected, 'p_MPa'), 4);
    expect(delta).toBeCloseTo(of(expected, 'delta_diametral_mm'), 5);
    expect(delta / 2).toBeCloseTo(of(expected, 'delta_radial_mm'), 5);
    expect(force / 1e3).toBeCloseTo(of(expected, 'force_kN'), 3);
    expect(slipTorqueNmm(force, 100) / 1e6).toBeCloseTo(of(expected, 'torque_kNm'), 4);
  });

  test('the interference is diametral: the radial one of a textbook gives half the pressure', () => {
    const { input, expected } = example('PF2');
    const pair = pairOf(input);
    const right = orRefuse(pressFit({ ...pair, diametralInterferenceMm: of(expected, 'delta_diametral_mm') }));
    const trapped = orRefuse(pressFit({ ...pair, diametralInterferenceMm: of(expected, 'delta_radial_mm') }));
    expect(right.bossHoopMpa).toBeCloseTo(30, 2);
    expect(trapped.bossHoopMpa).toBeCloseTo(15, 2);
  });

  test('a part pressed past its yield stress is said to yield, and its stress is not cut down', () => {
    const { input } = example('PF4-bush');
    const pair = { ...pairOf(input), diametralInterferenceMm: of(input, 'delta') };
    const soft = orRefuse(
      pressFit({
        ...pair,
        boss: { ...pair.boss, yieldMpa: 103 },
        bush: { ...pair.bush, yieldMpa: 196 },
      }),
    );
    const hard = orRefuse(pressFit({ ...pair, boss: { ...pair.boss, yieldMpa: 104 } }));
    expect([soft.bossYields, soft.bushYields, hard.bossYields, hard.bushYields]).toEqual([true, true, false, false]);
    expect(soft.bossVonMisesMpa).toBe(hard.bossVonMisesMpa);
    expect(soft.bossVonMisesMpa).toBeGreaterThan(103);
  });

  test.each([
    [{ diametralInterferenceMm: 0 }, 'press-no-interference'],
    [{ diametralInterferenceMm: -0.02 }, 'press-no-interference'],
    [{ diametralInterferenceMm: Number.NaN }, 'press-no-interference'],
    [{ bossOutsideMm: 50 }, 'press-no-boss-wall'],
    [{ interfaceMm: 0, bushBoreMm: 0 }, 'press-no-boss-wall'],
    [{ bushBoreMm: 50 }, 'press-no-bush-wall'],
    [{ bushBoreMm: -1 }, 'press-no-bush-wall'],
  ])('%j is refused: %s', (change, code) => {
    const outcome = pressFit({ ...pairOf(example('PF4-bush').input), diametralInterferenceMm: 0.05, ...change });
    expect(outcome.ok ? null : outcome.refusal.code).toBe(code);
  });

  test('surfaces are smoothed by four fifths of both roughnesses', () => {
    expect(interferenceLeftMm(0.04, { bossRzUm: 10, bushRzUm: 10 })).toBeCloseTo(0.024, 12);
  });
});

describe('heat and cold', () => {
  test.each(['SH1', 'SH2'])('%s: how much hotter the boss has to be', (id) => {
    const { input, expected } = example(id);
    const dT = temperatureChangeK({
      interfaceMm: of(input, 'd'),
      interferenceMm: of(input, 'delta'),
      entryClearanceMm: of(input, 'entry_clearance'),
      expansionPerK: of(input, 'alpha_per_K'),
    });
    expect(dT).toBeCloseTo(of(expected, 'dT_K'), 2);
  });

  const steel = material('structural-steel');
  const plan = (interferenceMm: number) =>
    shrinkPlan({ interfaceMm: 50, interferenceMm, roomC: 20, boss: steel, bush: steel });

  test('a boss of 50 with 0.059 mm is heated to about 210 °C, within what quenched steel stands', () => {
    expect(plan(0.059).heatToC).toBeCloseTo(20 + 189.57, 1);
    expect(plan(0.059).heatTooHot).toBe(false);
    expect(plan(0.12).heatTooHot).toBe(true);
  });

  test('cold alone: the warmest that is enough, and none when even nitrogen is too warm', () => {
    expect(plan(0.02)).toMatchObject({ freezeWith: 'liquid-nitrogen' });
    expect(plan(0.0001).freezeToC).toBeCloseTo(20 - 0.0501 / (8.5e-6 * 50), 6);
    expect(plan(0.059)).toMatchObject({ freezeWith: null, freezeToC: null });
  });

  test('a colder bush asks for a cooler boss, never below the room', () => {
    const heats = plan(0.03).both.map(({ heatToC }) => heatToC);
    expect(heats).toEqual([...heats].sort((one, other) => other - one));
    expect(heats.at(-1)).toBe(20);
    expect(plan(0.03).both.map(({ heatNeeded }) => heatNeeded)).toEqual([true, true, false]);
  });
});

describe('a bush within its tolerance classes', () => {
  const steel = material('structural-steel');
  const bush = {
    interfaceMm: 50,
    bossClass: { of: 'hole', letter: 'H', grade: 7 },
    bushClass: { of: 'shaft', letter: 's', grade: 6 },
    bossOutsideMm: 80,
    bushBoreMm: 40,
    bushBoreClass: { of: 'hole', letter: 'E', grade: 6 },
    wantedBoreClass: { of: 'hole', letter: 'H', grade: 8 },
    lengthMm: 45,
    boss: { ...steel, youngsMpa: 205_000 },
    bush: { ...steel, youngsMpa: 205_000 },
    lubrication: 'dry',
    roomC: 20,
  } as const;

  test('50 H7/s6: the two ends are the hand-worked examples', () => {
    const pressed = orRefuse(pressBush(bush));
    expect([pressed.leastInterferenceMm, pressed.mostInterferenceMm]).toEqual([0.018, 0.059]);
    expect(pressed.tightest.pressureMpa).toBeCloseTo(of(example('PF4-bush').expected, 'p_MPa'), 4);
    expect(pressed.loosest?.pressureMpa).toBeCloseTo(of(example('PF5-bush').expected, 'p_MPa'), 4);
    expect(pressed.mayBeLoose).toBe(false);
    // mu 0.12 in the examples; 0.10 and 0.15 here
    expect(pressed.pressForceN.low).toBeCloseTo((of(example('PF5-bush').expected, 'press_force_N') / 0.12) * 0.1, 2);
    expect(pressed.pressForceN.high).toBeCloseTo((of(example('PF4-bush').expected, 'press_force_N') / 0.12) * 0.15, 2);
  });

  test('a bore of E6 closes in to about H8, and is said when it does not', () => {
    const after = orRefuse(pressBush(bush)).boreAfter;
    // 40 E6 is +66/+50; closes 0.0117 to 0.0383
    expect(after?.smallestMm).toBeCloseTo(40.05 - 0.0383, 3);
    expect(after?.largestMm).toBeCloseTo(40.066 - 0.0117, 3);
    // 40 H8 ends at +39
    expect(after?.withinWanted).toBe(false);
    expect(
      orRefuse(pressBush({ ...bush, wantedBoreClass: { of: 'hole', letter: 'H', grade: 9 } })).boreAfter?.withinWanted,
    ).toBe(true);
    expect(orRefuse(pressBush({ ...bush, bushBoreClass: null })).boreAfter).toBeNull();
  });

  test('what pressing flattens no longer holds: both roughnesses, four fifths of each', () => {
    const rough = orRefuse(pressBush({ ...bush, roughnessUm: { bossRzUm: 10, bushRzUm: 6.3 } }));
    expect(rough.leastInterferenceMm).toBeCloseTo(0.018 - 0.01304, 9);
    expect(rough.mostInterferenceMm).toBeCloseTo(0.059 - 0.01304, 9);
    // heat and cold have to let the tops past one another all the same
    expect(rough.shrink).toEqual(orRefuse(pressBush(bush)).shrink);
  });

  test('the moment it carries is the force along it times half the diameter', () => {
    const { slipTorqueNmm: moment, pressForceN: force } = orRefuse(pressBush(bush));
    expect(moment.low).toBeCloseTo((force.low * 50) / 2, 6);
    // forces from least to most friction, moments with the least
    expect(moment.high).toBeCloseTo(((force.high / 0.15) * 0.1 * 50) / 2, 6);
  });

  test('classes that may leave it loose, and classes that never bear', () => {
    const taps = orRefuse(pressBush({ ...bush, bushClass: { of: 'shaft', letter: 'k', grade: 6 } }));
    expect(taps).toMatchObject({ mayBeLoose: true, loosest: null });
    expect(taps.pressForceN.low).toBe(0);
    const slides = pressBush({ ...bush, bushClass: { of: 'shaft', letter: 'g', grade: 6 } });
    expect(slides.ok ? null : slides.refusal.code).toBe('press-clearance-fit');
  });
});

describe('a glued bush', () => {
  test('every bore within its limits leaves a gap the adhesive fills', () => {
    const fit = orRefuse(adhesiveFit({ smallestMm: 50, largestMm: 50.025, lengthMm: 40 }));
    expect(fit.bushOutsideLargestMm).toBeCloseTo(49.97, 9);
    expect(fit.bushOutsideSmallestMm).toBeCloseTo(49.925, 9);
    // 5 MPa on a cylinder of 50 by 40
    expect(fit.holdsN.low).toBeCloseTo(5 * Math.PI * 50 * 40, 6);
  });

  test('a bore wider than the gap is refused', () => {
    const outcome = adhesiveFit({ smallestMm: 50, largestMm: 50.1, lengthMm: 40 });
    expect(outcome.ok ? null : outcome.refusal.code).toBe('adhesive-bore-too-wide');
  });
});
