import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { orRefuse } from '#core/outcome.ts';
import { type CleanUpAsked, cleanUpBore } from '#core/repair/clean-up/cleanUpBore.ts';
import { growthAtAngle, growthFirstOrder } from '#core/repair/clean-up/growthAtAngle.ts';
import { wallLeftMm } from '#core/repair/clean-up/wallLeft.ts';
import type { WornBore } from '#core/repair/clean-up/wornOutline.ts';

type Figures = Record<string, number | number[]>;
type Example = { id: string; input: Figures; expected: Figures };
const { examples } = JSON.parse(readFileSync(join(import.meta.dirname, 'examples.json'), 'utf8')) as {
  examples: Example[];
};

/** Figures of an example by name: one, or a row. */
function example(id: string) {
  const found = examples.find((one) => one.id === id);
  if (!found) throw new Error(`no example ${id}`);
  const all: Figures = { ...found.input, ...found.expected };
  return { of: (name: string) => all[name] as number, row: (name: string) => all[name] as number[] };
}

const slot = (newBoreMm: number, wearMm: number, wornTowardsDeg = 0, oppositeMm = 0): WornBore => ({
  ...{ by: 'slot', newBoreMm, lengthMm: newBoreMm + wearMm + oppositeMm, widthMm: newBoreMm },
  ...{ wornTowardsDeg, oppositeMm },
});
const ask = (bosses: readonly WornBore[], more: Partial<CleanUpAsked> = {}) =>
  orRefuse(cleanUpBore({ run: 'across', bosses, aSideMm: 0, mayMoveMm: 2, datum: 'unworn-lip', ...more }));

test('BC1: a one-sided slot costs twice on the old centre', () => {
  const { of } = example('BC1');
  const found = ask([slot(of('D0'), of('Dmax') - of('Dmin'))]);
  expect(found.outlines[0]?.wearMm).toBeCloseTo(of('w'), 9);
  expect(found.onOldCentre.boreMm).toBeCloseTo(of('D_orig'), 9);
  expect(found.onBestCentre?.boreMm).toBeCloseTo(of('D_shift'), 9);
  expect(found.onBestCentre?.shiftMm).toBeCloseTo(of('e'), 9);
  expect(found.oldCentreCostsMm).toBeCloseTo(of('w'), 9);
  expect(found.onBestCentre?.toward).toEqual([{ way: 'rear', mm: expect.closeTo(0.6, 9) }]);
});

test('BC2: moved only as far as the joint allows', () => {
  const { of } = example('BC2');
  const found = ask([slot(of('D0'), of('w'))], { mayMoveMm: of('e_max') });
  expect(found.allowed).toBe('too-far');
  expect(found.withinLimit?.boreMm).toBeCloseTo(of('D'), 9);
  expect(found.withinLimit?.shiftMm).toBeCloseTo(of('e_max'), 9);
});

test('BC3: with an allowance on each side', () => {
  const { of } = example('BC3');
  const found = ask([slot(of('D0'), of('w'))], { aSideMm: of('allowance_per_side') });
  expect(found.onOldCentre.boreMm).toBeCloseTo(of('D_orig'), 9);
  expect(found.onBestCentre?.boreMm).toBeCloseTo(of('D_shift'), 9);
});

test('BC4: two bosses on one bar, worn opposite ways, need more than either alone', () => {
  const { of } = example('BC4');
  const pair = [slot(of('D0'), of('bossA'), 0), slot(of('D0'), of('bossB_opposite'), 180)];
  const found = ask(pair);
  expect(found.onBestCentre?.boreMm).toBeCloseTo(of('D'), 9);
  expect(found.onBestCentre?.shift.xMm).toBeCloseTo(of('e_towards_A'), 9);
  for (const one of pair) expect(ask([one]).onBestCentre?.boreMm).toBeLessThan(of('D'));
  const sameWay = ask([slot(50, 1.2, 0), slot(50, 0.8, 0)]);
  expect(sameWay.onBestCentre?.boreMm).toBeCloseTo(51.2, 9);
  expect(sameWay.onBestCentre?.shiftMm).toBeCloseTo(0.6, 9);
});

test('BC5: worn on two sides', () => {
  const { of, row } = example('BC5');
  const [one = 0, other = 0] = row('two_sided');
  const found = ask([slot(of('D0'), one, 0, other)]);
  expect(found.onOldCentre.boreMm).toBeCloseTo(of('D_orig'), 9);
  expect(found.onBestCentre?.boreMm).toBeCloseTo(of('D_shift'), 9);
  expect(found.onBestCentre?.shiftMm).toBeCloseTo(of('e'), 9);
});

describe('a profile of radii from the old centre', () => {
  test.each(['BC6', 'BC7'])('%s', (id) => {
    const { of, row } = example(id);
    const radii = row('profile_radii');
    const readings = radii.map((radiusMm, i) => ({ angleDeg: i * of('step_deg'), radiusMm }));
    const found = ask([{ by: 'radii', newBoreMm: 2 * Math.min(...radii), readings }]);
    expect(found.onOldCentre.boreMm).toBeCloseTo(of('D_orig'), 9);
    expect(found.onBestCentre?.boreMm).toBeCloseTo(of('D_min_circle'), 2);
    const [xMm = 0, yMm = 0] = row('shift');
    expect(found.onBestCentre?.shift.xMm).toBeCloseTo(xMm, 2);
    expect(found.onBestCentre?.shift.yMm).toBeCloseTo(yMm, 2);
  });
});

test('BC8: what a gauge reads off the way of wear', () => {
  const { of, row } = example('BC8');
  row('read_at_deg').forEach((deg, i) => {
    expect(of('D0') + growthFirstOrder(of('w'), deg)).toBeCloseTo(row('reading')[i] ?? Number.NaN, 3);
  });
});

test('BC9: growth at an angle for a pin smaller than its hole', () => {
  const { of, row } = example('BC9');
  row('phi_deg').forEach((angleDeg, i) => {
    const at = { newBoreMm: of('D0'), wearMm: of('w'), pinMm: of('pin_dia'), angleDeg };
    expect(growthAtAngle(at)).toBeCloseTo(row('growth')[i] ?? Number.NaN, 4);
  });
});

test('BC10: wall left', () => {
  const { of } = example('BC10');
  const bored = { bossOutsideMm: of('D_boss'), boredMm: of('D_bored'), shiftMm: of('shift'), offMiddleMm: of('ecc') };
  expect(wallLeftMm(bored)).toBeCloseTo(of('wall_min'), 9);
});
