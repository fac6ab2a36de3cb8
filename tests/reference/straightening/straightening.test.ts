import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { orRefuse } from '#core/outcome.ts';
import { bendStrain, bowRadiusMm, pressStraight } from '#core/repair/straightening/pressStraight.ts';
import { type Section, sectionFigures } from '#core/repair/straightening/section.ts';

const { examples } = JSON.parse(readFileSync(join(import.meta.dirname, 'examples.json'), 'utf8')) as {
  examples: { id: string; expected: Record<string, number> }[];
};

/** The examples say their bars in words; here they are as figures. */
const BARS: Record<string, { section: Section; yieldMpa: number; spanMm: number }> = {
  ST1: { section: { shape: 'rectangle', widthMm: 60, depthMm: 80 }, yieldMpa: 355, spanMm: 500 },
  ST1b: { section: { shape: 'rectangle', widthMm: 60, depthMm: 80 }, yieldMpa: 420, spanMm: 500 },
  ST2: { section: { shape: 'round', diameterMm: 60 }, yieldMpa: 650, spanMm: 400 },
  ST3: { section: { shape: 'box', widthMm: 100, depthMm: 100, wallMm: 10 }, yieldMpa: 355, spanMm: 600 },
};

describe('pressing a bar straight', () => {
  test.each(examples)('$id', ({ id, expected }) => {
    const bar = BARS[id];
    if (!bar) throw new Error(`no bar ${id}`);
    const is = (name: string) => expected[name] ?? Number.NaN;
    const figures = orRefuse(sectionFigures(bar.section));
    const press = orRefuse(pressStraight(bar.section, { ...bar, youngsMpa: 205_000 }));
    expect(figures.plasticMm3).toBeCloseTo(is('Zp'), 2);
    expect(figures.elasticMm3).toBeCloseTo(is('Ze'), 2);
    expect(figures.shapeFactor).toBeCloseTo(is('shape'), 3);
    expect((figures.plasticMm3 * bar.yieldMpa) / 1e6).toBeCloseTo(is('Mp_kNm'), 2);
    expect(press.firstYieldN / 1e3).toBeCloseTo(is('F_first_yield_kN'), 2);
    expect(press.plasticN / 1e3).toBeCloseTo(is('F_plastic_kN'), 2);
    expect(press.plasticTonneForce).toBeCloseTo(is('F_plastic_tf'), 3);
    expect(press.pushAtFirstYieldMm).toBeCloseTo(is('defl_at_first_yield_mm'), 2);
    expect(press.springBackMm.low).toBeCloseTo(is('springback_from_plastic_mm'), 2);
  });

  test('the press is sized for steel stronger than its certificate, and the slow band reaches up to it', () => {
    const { section, ...of } = BARS.ST1 ?? { section: { shape: 'round', diameterMm: 1 }, yieldMpa: 1, spanMm: 1 };
    const press = orRefuse(pressStraight(section, of));
    expect(press.pressForTonneForce).toBeCloseTo(1.3 * press.plasticTonneForce, 9);
    expect(press.goSlowlyN).toEqual({ from: press.firstYieldN, to: press.pressForN });
    expect(press.springBackMm.high).toBeGreaterThan(press.springBackMm.low);
  });

  test('a thin tube comes near 4 / pi, and an I-section lies between 1.1 and 1.2', () => {
    const tube = orRefuse(sectionFigures({ shape: 'tube', diameterMm: 1000, wallMm: 1 }));
    expect(tube.shapeFactor).toBeCloseTo(4 / Math.PI, 2);
    const beam = { shape: 'I-section', flangeWidthMm: 100, depthMm: 200, flangeMm: 8.5, webMm: 5.6 } as const;
    const { shapeFactor } = orRefuse(sectionFigures(beam));
    expect(shapeFactor).toBeGreaterThan(1.1);
    expect(shapeFactor).toBeLessThan(1.2);
  });

  test('a deeper bar the same way round wants more, a longer span less', () => {
    const force = (depthMm: number, spanMm: number) =>
      orRefuse(pressStraight({ shape: 'rectangle', widthMm: 60, depthMm }, { yieldMpa: 355, spanMm })).plasticN;
    expect(force(90, 500)).toBeGreaterThan(force(80, 500));
    expect(force(80, 600)).toBeLessThan(force(80, 500));
  });

  test('strain of the skin: half the depth over the radius', () => {
    expect(bendStrain(80, 2000)).toBeCloseTo(0.02, 12);
    // a half circle bows by half its span
    expect(bowRadiusMm(100, 50)).toBeCloseTo(50, 12);
    expect(bowRadiusMm(500, 10)).toBeCloseTo(3130, 9);
  });

  const rectangle: Section = { shape: 'rectangle', widthMm: 60, depthMm: 80 };
  const refusals: [string, Section, number, number, string][] = [
    ['no width', { shape: 'rectangle', widthMm: 0, depthMm: 80 }, 355, 500, 'section-size'],
    ['walls that meet', { shape: 'tube', diameterMm: 20, wallMm: 10 }, 355, 500, 'section-size'],
    [
      'a web wider than its flange',
      { shape: 'I-section', flangeWidthMm: 50, depthMm: 100, flangeMm: 8, webMm: 60 },
      355,
      500,
      'section-size',
    ],
    ['a span under twice the depth', rectangle, 355, 159, 'straightening-span'],
    ['no yield stress', rectangle, 0, 500, 'straightening-span'],
  ];
  test.each(refusals)('%s is refused', (_, section, yieldMpa, spanMm, code) => {
    const outcome = pressStraight(section, { yieldMpa, spanMm });
    expect(outcome.ok ? null : outcome.refusal.code).toBe(code);
  });
});
