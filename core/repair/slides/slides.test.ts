import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orRefuse } from '../../outcome.ts';
import { LEAVE_ALL, type SlideChoice, slideAfter } from './slideAfter.ts';
import { hookPlayMm, type Slide, STRIP_PLACES, type StripPlace, type StripThickness } from './slidePlay.ts';
import { type StripHeld, stripOptions } from './stripOptions.ts';

const HELD: StripHeld = { headsBareAtMm: 6, endsAlike: true };
const ALL_HELD = Object.fromEntries(STRIP_PLACES.map((place) => [place, HELD])) as Record<StripPlace, StripHeld>;
const strip = (front: number | null, middle: number | null, rear: number | null) => ({
  newMm: 12,
  thicknessMm: { front, middle, rear } satisfies StripThickness,
});

/** Worn 2.5 mm at each outer end, 1 mm in the middle. */
const worn: Slide = {
  strips: {
    'top-front': strip(9.5, 11, 11),
    'top-rear': strip(11, 11, 9.5),
    'bottom-front': strip(9.5, 11, 11),
    'bottom-rear': strip(11, 11, 9.5),
  },
  channelWornMm: { front: 0, rear: 0 },
  ...{ newPlayMm: 0.4, spanMm: 500, overhangMm: 420 },
};
const after = (choice: Partial<SlideChoice>, slide = worn) =>
  orRefuse(slideAfter(slide, { ...LEAVE_ALL, ...choice }, ALL_HELD));

describe('play of a slide', () => {
  test('top and bottom front renewed gives back 4.2 mm at the hook', () => {
    const found = after({ 'top-front': 'renew', 'bottom-front': 'renew' });
    expect(found.before).toEqual({ frontMm: 5.4, rearMm: 5.4, hookMm: expect.closeTo(5.4 + 10.8 * 0.84, 9) });
    expect(found.givesBack.hookMm).toBeCloseTo(4.2, 9);
    expect(found.after.frontMm).toBeCloseTo(0.4, 9);
    expect(found.after.rearMm).toBeCloseTo(5.4, 9);
  });

  test('play at the rear weighs more at the hook than play at the front', () => {
    const at = { spanMm: 500, overhangMm: 420 };
    expect(hookPlayMm({ frontMm: 0, rearMm: 1 }, at)).toBeCloseTo(1.84, 9);
    expect(hookPlayMm({ frontMm: 1, rearMm: 0 }, at)).toBeCloseTo(0.84, 9);
  });

  test('channel wear adds to the play and no strip gives it back', () => {
    const slide: Slide = { ...worn, channelWornMm: { front: 1, rear: 0 } };
    const all = Object.fromEntries(STRIP_PLACES.map((place) => [place, 'renew'])) as SlideChoice;
    expect(after(all, slide).after.frontMm).toBeCloseTo(1.4, 9);
  });

  test('renewing one strip more never adds play, and what two give back together is what each gives back', () => {
    const wear = fc.double({ min: 0, max: 4, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(wear, wear, wear, wear), fc.subarray([...STRIP_PLACES]), (wears, renewed) => {
        const strips = Object.fromEntries(
          STRIP_PLACES.map((place, i) => [place, strip(12 - (wears[i] ?? 0), 12, 12 - (wears[i] ?? 0))]),
        ) as Slide['strips'];
        const slide = { ...worn, strips };
        const choice = Object.fromEntries(renewed.map((place) => [place, 'renew'])) as Partial<SlideChoice>;
        const together = after(choice, slide).givesBack.hookMm;
        const apart = renewed.map((place) => after({ [place]: 'renew' }, slide).givesBack.hookMm);
        expect(together).toBeGreaterThanOrEqual(-1e-9);
        expect(together).toBeCloseTo(
          apart.reduce((sum, mm) => sum + mm, 0),
          9,
        );
      }),
    );
  });

  test('a strip nobody measured is named and counts as not worn', () => {
    const slide: Slide = { ...worn, strips: { ...worn.strips, 'top-rear': strip(null, null, null) } };
    expect(after({}, slide).notMeasured).toEqual(['top-rear']);
    expect(after({}, slide).before.rearMm).toBeCloseTo(2.9, 9);
  });
});

describe('what can be done with a strip', () => {
  const option = (choice: string, thickness: ReturnType<typeof strip>, held: StripHeld = HELD) => {
    const found = stripOptions('top-front', thickness, held).find((one) => one.choice === choice);
    if (!found) throw new Error(`no ${choice}`);
    return found;
  };
  const codes = (of: { closed: { code: string }[] }) => of.closed.map(({ code }) => code);

  test('an even strip can be shimmed by what is worn everywhere', () => {
    const found = option('shim', strip(10.2, 10.4, 10.4));
    expect(codes(found)).toEqual([]);
    expect(found.shimMm).toBeCloseTo(1.6, 9);
    expect(found.gapMm).toBeCloseTo(0.2, 9);
    expect(found.bearingThicknessMm).toBe(10.2);
  });

  test('a wedge is not shimmed', () =>
    expect(option('shim', strip(9.5, 11, 11)).closed).toEqual([
      { code: 'strip-worn-to-a-wedge', facts: { unevenMm: 1.5, evenWithinMm: 0.5 } },
    ]));

  test('no shim where screw heads are near, and a caution where nobody knows how deep they lie', () => {
    expect(codes(option('shim', strip(10, 10, 10), { headsBareAtMm: 9.5, endsAlike: true }))).toEqual([
      'screw-heads-near',
    ]);
    expect(option('shim', strip(10, 10, 10), { headsBareAtMm: null, endsAlike: true }).cautions).toEqual([
      { code: 'screw-head-depth-not-known' },
    ]);
  });

  test('nothing worn, nothing measured: no shim', () => {
    expect(codes(option('shim', strip(12, 12, 12)))).toEqual(['nothing-to-shim']);
    expect(codes(option('shim', strip(null, null, null)))).toEqual(['strip-not-measured']);
  });

  test('turned end for end the thicker end bears', () => {
    const found = option('turn', strip(9.5, 11, 11));
    expect(codes(found)).toEqual([]);
    expect(found.gapMm).toBeCloseTo(1, 9);
  });

  test('turning is closed when it gains nothing, when the holes do not fit, when an end was not measured', () => {
    expect(codes(option('turn', strip(10, 11, 10)))).toEqual(['other-end-no-thicker']);
    expect(codes(option('turn', strip(9, 11, 10), { ...HELD, endsAlike: false }))).toEqual(['strip-holes-not-alike']);
    expect(codes(option('turn', strip(9, 11, null)))).toEqual(['strip-ends-not-measured']);
    expect(option('turn', strip(9, 11, 10), { ...HELD, endsAlike: null }).cautions).toEqual([
      { code: 'strip-holes-not-known' },
    ]);
  });

  test('renewing is always open; a closed choice is refused with why', () => {
    expect(codes(option('renew', strip(null, null, null)))).toEqual([]);
    expect(slideAfter(worn, { ...LEAVE_ALL, 'top-front': 'shim' }, ALL_HELD)).toMatchObject({
      refusal: { code: 'slide-choice-closed', facts: { place: 'top-front', because: 'strip-worn-to-a-wedge' } },
    });
    expect(slideAfter({ ...worn, spanMm: 0 }, LEAVE_ALL, ALL_HELD)).toMatchObject({
      refusal: { code: 'slide-length-not-positive' },
    });
  });
});
