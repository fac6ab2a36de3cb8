import { expect, test } from 'vitest';
import { orRefuse } from '#core/outcome.ts';
import { addedHours, jobHours, type PositionWork } from '#core/repair/strip-down-tree/jobHours.ts';
import { pickUpHitchStripDown } from '#core/shop/assembly-kinds/stripDownSteps.ts';

const strip = (item: number): PositionWork => ({ item, work: [{ step: 'renew-strip', times: 1 }] });

test('the rear bottom strip alone takes 4.8 h', () => {
  const found = orRefuse(jobHours(pickUpHitchStripDown, [strip(4)]));
  expect(found.all.typical).toBeCloseTo(4.8, 9);
  expect(found.off.map(({ code }) => code)).toEqual(['wash', 'ram-out', 'carrier-out']);
  expect(found.back.map(({ code }) => code)).toEqual(['put-together', 'test']);
});

test('the other three strips with it add 0.9 h', () => {
  const more = orRefuse(addedHours(pickUpHitchStripDown, [strip(4)], [strip(1), strip(2), strip(3)]));
  expect(more.typical).toBeCloseTo(0.9, 9);
});
