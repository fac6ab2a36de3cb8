import { expect, it } from 'vitest';
import { aPoint, aSize } from '#tests/support/aShopLife.ts';
import { USUAL_SHOP_FIGURES } from '../../repair/shopFigures.ts';
import { day } from '../../units/day.ts';
import { usualFacts } from './usualFacts.ts';

const factsOfBore = (newSizeMm: number) => {
  const bore = aPoint(1, {
    sizes: [aSize(1, '2026-11-01', newSizeMm + 0.25)],
    limits: [{ ...aPoint(1).limits[0]!, newSizeMm }],
  });
  return usualFacts({ asOf: day('2026-11-10') }, { all: [bore], bore, pin: null, slack: null }, USUAL_SHOP_FIGURES);
};

it('the drawn size of a hole without a pin is its new size in whole millimetres', () => {
  expect(factsOfBore(40.2)).toMatchObject({
    standardMm: 40,
    newBoreMm: 40.2,
    axesMm: [40.45, null, null, null],
  });
});

it('a gap written down as a hole tells no size of it', () => {
  expect(factsOfBore(0.3)).toMatchObject({ standardMm: null, newBoreMm: null, axesMm: [null, null, null, null] });
});
