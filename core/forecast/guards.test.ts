import { describe, expect, it } from 'vitest';
import { defaultModelSettings } from '../fit/modelSettings.ts';
import { normalCdf } from '../maths/normal.ts';
import {
  fromTradePrior,
  longExtrapolation,
  oneSidedVisit,
  readingZ,
  suspectRenewal,
  tooSmallToSee,
  unlikelyReading,
} from './guards.ts';

describe('guards', () => {
  it('ask about a reading beyond 3.5 sd, and not within', () => {
    expect(unlikelyReading(normalCdf(3.4), defaultModelSettings)).toBeNull();
    expect(unlikelyReading(normalCdf(3.6), defaultModelSettings)).toMatchObject({
      code: 'reading-unlikely',
      facts: { moreWorn: true },
    });
    expect(unlikelyReading(0, defaultModelSettings)).toMatchObject({ facts: { moreWorn: false } });
    expect(readingZ(normalCdf(-1.25))).toBeCloseTo(-1.25, 9);
  });

  it('suspect a renewal when wear falls by more than both gauges can', () => {
    const looks = { lastWearMm: 1.8, lastErrorSdMm: 0.03, errorSdMm: 0.04, expectedGainMm: 0.5 };
    expect(suspectRenewal({ ...looks, wearMm: 1.66 }, defaultModelSettings)).toBeNull();
    expect(suspectRenewal({ ...looks, wearMm: 1.64 }, defaultModelSettings)).toMatchObject({
      code: 'renewal-suspected',
    });
  });

  it('doubt the gauge when six parts of a visit all lie on one side', () => {
    expect(oneSidedVisit([0.1, 0.2, 0.1, 0.3, 0.1], defaultModelSettings)).toBeNull();
    expect(oneSidedVisit([0.1, 0.2, 0.1, 0.3, 0.1, -0.01], defaultModelSettings)).toBeNull();
    expect(oneSidedVisit([-0.1, -0.2, -0.1, -0.3, -0.1, -0.01], defaultModelSettings)).toMatchObject({
      facts: { parts: 6, moreWorn: false, chance: 1 / 32 },
    });
  });

  it('mark a limit far beyond what was seen', () => {
    const near = { ownReadings: 1, doubtShare: 0.49, lastWorkedHours: 2000, hoursAtLimit: 5900 };
    expect(longExtrapolation(near, defaultModelSettings)).toBeNull();
    expect(longExtrapolation({ ...near, doubtShare: 0.51 }, defaultModelSettings)).toMatchObject({
      facts: { doubtShare: 0.51 },
    });
    expect(longExtrapolation({ ...near, doubtShare: 0.51, ownReadings: 0 }, defaultModelSettings)).toBeNull();
  });

  it('say when wear is too small to be seen by the gauge and against the new size', () => {
    const part = { ownReadings: 1, wearMm: 0.11, errorSdMm: 0.05, newSizeSdMm: 0.03 };
    expect(tooSmallToSee(part)).toMatchObject({ facts: { wearMm: 0.11, errorMm: 2 * Math.hypot(0.05, 0.03) } });
    expect(tooSmallToSee({ ...part, wearMm: 0.12 })).toBeNull();
    expect(tooSmallToSee({ ...part, wearMm: -0.3 })).toBeNull();
    expect(tooSmallToSee({ ...part, ownReadings: 0 })).toBeNull();
  });

  it('name the trade as the source while the class has two parts, or one machine', () => {
    expect(fromTradePrior(3, 2, 'trade')).toBeNull();
    expect(fromTradePrior(2, 2, 'trade')).toMatchObject({ facts: { partsRead: 2, from: 'trade' } });
    expect(fromTradePrior(9, 1, 'wide')).not.toBeNull();
  });
});
