import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orRefuse } from '../../outcome.ts';
import { type CleanUpAsked, cleanUpBore } from './cleanUpBore.ts';
import { angleOfWay, HOLE_RUNS, towards, waysOf } from './wayRound.ts';
import { wearFromAxes } from './wearFromAxes.ts';
import type { BoreGauge, WornBore } from './wornOutline.ts';

const RAD = Math.PI / 180;
const slot = (newBoreMm: number, wearMm: number, wornTowardsDeg: number | null = 0, oppositeMm = 0): WornBore => ({
  ...{ by: 'slot', newBoreMm, lengthMm: newBoreMm + wearMm + oppositeMm, widthMm: newBoreMm },
  ...{ wornTowardsDeg, oppositeMm },
});
const axes = (newBoreMm: number, wearMm: number, lineDeg: number, at: readonly number[]) =>
  at.map((axisDeg) => ({ axisDeg, diameterMm: newBoreMm + wearMm * Math.abs(Math.cos((axisDeg - lineDeg) * RAD)) }));
const read = (
  newBoreMm: number,
  stations: ReturnType<typeof axes>[],
  gauge: BoreGauge = 'two-point',
  wornTowardsDeg: number | null = 0,
): WornBore => ({ by: 'axes', newBoreMm, gauge, stations, wornTowardsDeg });
const ask = (bosses: readonly WornBore[], more: Partial<CleanUpAsked> = {}) =>
  orRefuse(cleanUpBore({ run: 'across', bosses, aSideMm: 0, mayMoveMm: 2, datum: 'unworn-lip', ...more }));

const wear = fc.double({ min: 0, max: 4, noNaN: true });
const angle = fc.double({ min: 0, max: 359, noNaN: true });
const pointAt = (deg: number, reach: number) => ({ x: reach * Math.cos(deg * RAD), y: reach * Math.sin(deg * RAD) });

/** A slot with the two ends somebody measured, and a hole read on some axes with the points read. */
const aSlot = fc.record({ wear, towardsDeg: angle, opposite: wear }).map((of) => ({
  bore: slot(40, of.wear, of.towardsDeg, of.opposite),
  points: [pointAt(of.towardsDeg, 20 + of.wear), pointAt(of.towardsDeg + 180, 20 + of.opposite)],
}));
const someAxes = fc
  .record({ over: fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 2, maxLength: 6 }), side: angle })
  .map(({ over, side }) => {
    const readings = over.map((mm, i) => ({ axisDeg: (i * 180) / over.length, diameterMm: 40 + mm }));
    const points = readings.map(({ axisDeg, diameterMm }) =>
      pointAt(Math.cos((axisDeg - side) * RAD) >= 0 ? axisDeg : axisDeg + 180, diameterMm - 20),
    );
    return { bore: read(40, [readings], 'two-point', side), points };
  });
const some = fc.array(fc.oneof(aSlot, someAxes), { minLength: 1, maxLength: 3 });
const mayMove = fc.double({ min: 0.01, max: 2, noNaN: true });

describe('what holds of any worn hole', () => {
  test('the clean-up circle takes in every measured point, on either centre and between', () => {
    fc.assert(
      fc.property(some, mayMove, (bosses, mayMoveMm) => {
        const bores = bosses.map(({ bore }) => bore);
        const found = ask(bores, { mayMoveMm });
        const points = bosses.flatMap((boss) => boss.points);
        for (const about of [found.onOldCentre, found.onBestCentre, found.withinLimit].filter((one) => one !== null))
          for (const { x, y } of points) {
            const out = Math.hypot(x - about.shift.xMm, y - about.shift.yMm);
            expect(out).toBeLessThanOrEqual(about.boreMm / 2 + 1e-8);
          }
      }),
    );
  });

  test('the best centre never needs more than the old one, and a limited shift lies between', () => {
    fc.assert(
      fc.property(some, mayMove, (bosses, mayMoveMm) => {
        const bores = bosses.map(({ bore }) => bore);
        const found = ask(bores, { mayMoveMm });
        const best = found.onBestCentre?.boreMm ?? Number.NaN;
        const limited = found.withinLimit?.boreMm ?? best;
        expect(best).toBeLessThanOrEqual(found.onOldCentre.boreMm + 1e-8);
        expect(limited).toBeGreaterThanOrEqual(best - 1e-8);
        expect(limited).toBeLessThanOrEqual(found.onOldCentre.boreMm + 1e-8);
      }),
    );
  });

  test('turning the whole hole turns the shift and nothing else', () => {
    fc.assert(
      fc.property(wear, angle, wear, (wearMm, turnDeg, opposite) => {
        const straight = ask([slot(40, wearMm, 0, opposite)]).onBestCentre;
        const turned = ask([slot(40, wearMm, turnDeg, opposite)]).onBestCentre;
        expect(turned?.boreMm).toBeCloseTo(straight?.boreMm ?? Number.NaN, 7);
        expect(turned?.shiftMm).toBeCloseTo(straight?.shiftMm ?? Number.NaN, 6);
      }),
    );
  });

  test('four axes find the wear and its line wherever it lies', () => {
    const someWear = fc.double({ min: 0.05, max: 3, noNaN: true });
    fc.assert(
      fc.property(someWear, fc.double({ min: 0, max: 179, noNaN: true }), (wearMm, lineDeg) => {
        const lines = wearFromAxes(40, axes(40, wearMm, lineDeg, [0, 45, 90, 135]));
        expect(lines).toHaveLength(1);
        expect(lines[0]?.wearMm).toBeCloseTo(wearMm, 6);
        expect(Math.abs(Math.sin(((lines[0]?.lineDeg ?? 0) - lineDeg) * RAD))).toBeLessThan(1e-3);
      }),
    );
  });

  test('two square axes find the wear and leave two lines', () => {
    const lines = wearFromAxes(50, axes(50, 1.2, 30, [0, 90]));
    expect(lines.map(({ lineDeg }) => Math.round(lineDeg)).sort((a, b) => a - b)).toEqual([30, 150]);
    for (const { wearMm } of lines) expect(wearMm).toBeCloseTo(1.2, 9);
  });
});

describe('what is said of how it was measured', () => {
  const codes = (found: ReturnType<typeof ask>) => found.cautions.map(({ code }) => code);
  const fourAxes = axes(50, 1.2, 0, [0, 45, 90, 135]);

  test('two square axes at 45 degrees to the slot read round and hide 29 % of the wear', () => {
    const found = ask([read(50, [axes(50, 1.2, 45, [0, 90])])]);
    expect(codes(found)).toEqual(['four-axes-wanted', 'square-axes-read-round']);
    const facts = found.cautions[1]?.facts;
    expect(facts?.readMm).toBeCloseTo(0.849, 3);
    expect(facts?.mayBeMm).toBeCloseTo(1.2, 9);
    expect(facts?.hiddenShare).toBeCloseTo(0.29, 2);
  });

  test('four axes and a two-point gauge bring no caution', () =>
    expect(codes(ask([read(50, [fourAxes])]))).toEqual([]));

  test('a three-jaw gauge cannot judge an oval hole', () =>
    expect(codes(ask([read(50, [fourAxes], 'three-jaw')]))).toEqual(['three-jaw-averages-ovality']));

  test('the worst station along the hole decides', () => {
    const found = ask([read(50, [axes(50, 0.4, 0, [0, 45, 90, 135]), fourAxes])]);
    expect(found.onOldCentre.boreMm).toBeCloseTo(52.4, 9);
  });

  test('no worn side: the old centre is answered, no shift is named', () => {
    const found = ask([slot(50, 1.2, null)]);
    expect(found.onOldCentre.boreMm).toBeCloseTo(52.4, 9);
    expect(found.onBestCentre).toBeNull();
    expect(found.withinLimit).toBeNull();
    expect(codes(found)).toEqual(['worn-side-not-known']);
  });
});

describe('whether the centre may move', () => {
  test('no datum, no limit said, far enough, no shift needed', () => {
    expect(ask([slot(50, 1.2)], { datum: null }).allowed).toBe('datum-not-named');
    expect(ask([slot(50, 1.2)], { mayMoveMm: null }).allowed).toBe('limit-not-said');
    expect(ask([slot(50, 1.2)], { mayMoveMm: 0.6 }).allowed).toBe('yes');
    expect(ask([slot(50, 0)]).allowed).toBe('no-shift-needed');
    expect(ask([slot(50, 1.2)], { mayMoveMm: 0 }).withinLimit).toBeNull();
  });

  test('bosses of unlike new sizes share the centre and keep their own sizes', () => {
    const about = ask([slot(50, 1.2, 0), slot(40, 0.8, 180)]).onBestCentre;
    expect(about?.shift.xMm).toBeCloseTo(0.2, 9);
    expect(about?.boresMm).toEqual([expect.closeTo(52, 9), expect.closeTo(42, 9)]);
  });
});

test('nothing read, or a size of nothing, is refused', () => {
  const asked = { run: 'across', aSideMm: 0, mayMoveMm: null, datum: null } as const;
  expect(cleanUpBore({ ...asked, bosses: [] })).toMatchObject({ refusal: { code: 'clean-up-no-readings' } });
  expect(cleanUpBore({ ...asked, bosses: [read(50, [])] })).toMatchObject({
    refusal: { code: 'clean-up-no-readings' },
  });
  expect(cleanUpBore({ ...asked, bosses: [slot(50, -60)] })).toMatchObject({
    refusal: { code: 'clean-up-size-not-positive', facts: { sizeMm: -10 } },
  });
});

describe('ways in the machine', () => {
  test('left is left and front is front from the seat, whichever way the hole runs', () => {
    expect(towards('across', { xMm: -0.3, yMm: 0.5 })).toEqual([
      { way: 'up', mm: 0.5 },
      { way: 'front', mm: 0.3 },
    ]);
    expect(towards('upright', { xMm: -0.3, yMm: 0 })).toEqual([{ way: 'left', mm: 0.3 }]);
    expect(towards('lengthwise', { xMm: 0.3, yMm: -0.1 }).map(({ way }) => way)).toEqual(['right', 'down']);
    expect(angleOfWay('across', 'left')).toBeNull();
  });

  test('a shift along each way is named that way', () => {
    for (const run of HOLE_RUNS)
      for (const way of waysOf(run)) {
        const turn = (angleOfWay(run, way) ?? Number.NaN) * RAD;
        expect(towards(run, { xMm: Math.cos(turn), yMm: Math.sin(turn) })).toEqual([{ way, mm: expect.closeTo(1, 9) }]);
      }
  });
});
