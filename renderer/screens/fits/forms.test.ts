import { describe, expect, it } from 'vitest';
import { emptyPinJointForm, JOINT_SIZES, jointRequest } from './pinJointForm.ts';
import { emptyPressForm, pressRequest } from './pressForm.ts';
import { emptyStraightForm, straightRequest } from './straightForm.ts';

const pressed = { ...emptyPressForm, bossOutsideText: '80', bushBoreText: '40', lengthText: '45' };

describe('the form of a pressed bush', () => {
  it('asks once every size is there, comma or point', () => {
    expect(pressRequest('50 H7/s6', emptyPressForm)).toBeNull();
    expect(pressRequest('50 H7/s6', { ...pressed, bossOutsideText: '80,5' })).toMatchObject({ bossOutsideMm: 80.5 });
  });

  it('a solid pin has a bore of 0; an empty class of the bore means bored after pressing', () => {
    expect(pressRequest('50 H7/s6', { ...pressed, bushBoreText: '0', bushBoreClass: ' ' })).toMatchObject({
      ...{ bushBoreMm: 0, bushBoreClass: null, wantedBoreClass: 'H8' },
    });
  });

  it.each(['-80', '0', 'eighty', '99999'])('an outside of %s is not asked about', (bossOutsideText) => {
    expect(pressRequest('50 H7/s6', { ...pressed, bossOutsideText })).toBeNull();
  });
});

describe('the form of a pin joint', () => {
  const asDrawn = Object.fromEntries(JOINT_SIZES.map((name) => [name, name === 'gapEachSideMm' ? '0' : '50']));

  it('a box of the repair left empty is as drawn; a pull is kilonewtons', () => {
    const asked = jointRequest({ ...emptyPinJointForm, asDrawn, repaired: { pinMm: '49' }, forceText: '60' });
    expect(asked).toMatchObject({
      forceN: 60_000,
      asDrawn: { pinMm: 50 },
      repaired: { pinMm: 49, eye: { boreMm: 50 } },
    });
    expect(jointRequest({ ...emptyPinJointForm, asDrawn })).toMatchObject({ forceN: null });
  });

  it('a size missing, of nothing, or unreadable is not asked about', () => {
    for (const eyeBoreMm of ['', '0', 'x'])
      expect(jointRequest({ ...emptyPinJointForm, asDrawn: { ...asDrawn, eyeBoreMm } })).toBeNull();
    expect(jointRequest({ ...emptyPinJointForm, asDrawn, forceText: 'much' })).toBeNull();
  });
});

describe('the form of a straightening', () => {
  const bar = { ...emptyStraightForm, sizeTexts: { widthMm: '60', depthMm: '80' }, spanText: '500' };

  it('asks the sizes of its own section only', () => {
    expect(straightRequest(bar).bar?.section).toEqual({ shape: 'rectangle', widthMm: 60, depthMm: 80 });
    expect(straightRequest({ ...bar, bowText: '12,5' }).bar?.bowMm).toBe(12.5);
    // asked all the same: whether it may be straightened needs no sizes
    expect(straightRequest({ ...bar, shape: 'round' }).bar).toBeNull();
  });

  it('a named towing part tows, whatever is ticked', () => {
    expect(straightRequest({ ...bar, kind: 'drawbar' }).part.towingOrLifting).toBe(true);
    expect(straightRequest(bar).part).toMatchObject({ towingOrLifting: false, forgedOrHeatTreated: false });
    expect(straightRequest({ ...bar, steel: 'unknown' }).part.forgedOrHeatTreated).toBeNull();
  });
});
