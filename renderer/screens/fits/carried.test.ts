import { describe, expect, test } from 'vitest';
import type { RepairSheet } from '#core/contract/repair.ts';
import { carriedFrom } from './carried.ts';
import { pressRequest } from './pressForm.ts';

const option = {
  choice: 'bush',
  bore: { nominalMm: 50, toleranceClass: 'H7' },
  bush: {
    outsideMm: { nominalMm: 50, toleranceClass: 's6' },
    insideBeforeMm: { nominalMm: 40, toleranceClass: 'E6' },
    insideAfterMm: { nominalMm: 40, toleranceClass: 'H8' },
  },
  fitInBoss: { classes: 'H7/s6' },
  fitOnPin: null,
  pin: { nominalMm: 40 },
};
const sheet = (facts: object, options: object[] = [option]) =>
  ({
    facts: {
      ...{ standardMm: 40, bossOutsideMm: 86, bossLengthMm: 45, centreToEdgeMm: null, material: 'cast-steel' },
      ...{ yieldMpa: 300, otherHalf: null, ...facts },
    },
    options,
  }) as unknown as RepairSheet;

describe('figures carried over from a repair sheet', () => {
  test('are the fit of the choice, and a press that can be worked out at once', () => {
    const carried = carriedFrom(sheet({}), 'bush')!;
    expect(carried.fit).toBe('50 H7/s6');
    expect(pressRequest(carried.fit, carried.press)).toMatchObject({
      ...{ bossOutsideMm: 86, bushBoreMm: 40, lengthMm: 45, bossMaterial: 'cast-steel', bossYieldMpa: 300 },
      ...{ bushBoreClass: 'E6', wantedBoreClass: 'H8' },
    });
  });

  test('hold the joint as drawn beside what the choice makes of it, where the other half is known', () => {
    const otherHalf = { worn: 'fork', thicknessMm: 60, widthMm: 90, endMm: 45, gapEachSideMm: 1 };
    const { joint } = carriedFrom(sheet({ otherHalf }), 'bush')!;
    expect(joint.asDrawn).toMatchObject({ pinMm: '40', eyeThicknessMm: '60', forkThicknessMm: '45', forkEndMm: '43' });
    expect(joint.repaired).toEqual({ pinMm: '40', forkBoreMm: '50' });
    expect(carriedFrom(sheet({}), 'bush')!.joint.asDrawn).toEqual({});
  });

  test('are none where a choice has no fit', () => {
    expect(carriedFrom(sheet({}, [{ ...option, choice: 'leave', bush: null, bore: null }]), 'leave')).toBeNull();
    expect(carriedFrom(sheet({}, []), 'bush')).toBeNull();
  });
});
