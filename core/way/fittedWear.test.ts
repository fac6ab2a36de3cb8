import { describe, expect, it } from 'vitest';
import type { PartLaw } from '../fit/partLaw.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { day } from '../units/day.ts';
import { fittedWear } from './fittedWear.ts';

/** One way to wear only: 2 mm in 5 000 h, even, paths scattering by a tenth. */
const law: PartLaw = {
  pointId: 1,
  ordinal: 0,
  machineId: 1,
  partClass: 'pin',
  hRefHours: 5000,
  readings: 1,
  lastHours: 2500,
  weight: Float64Array.of(1),
  rate: Float64Array.of(2),
  wearMm: Float64Array.of(1),
  wearVar: Float64Array.of(0.01),
  shapeOf: Uint16Array.of(0),
  shapes: [{ pathScatter: 0.1, power: 1, lastTime: 0.5, visitErrorMm: 0 }],
  basis: { own: 0, machine: 0, lnRateMean: 0, lnRateVar: 0, lnRateVarClassAndMachine: 0, lnRateVarClass: 0 },
};

const aSeries = (readings: [hours: number, wearMm: number, errorSdMm: number][]): WearSeries => ({
  pointId: 1,
  ordinal: 0,
  machineId: 1,
  partClass: 'pin',
  newSizeSdMm: 0.05,
  startHoursSd: 0,
  present: true,
  readings: readings.map(([workedHours, wearMm, errorSdMm], i) => ({
    workedHours,
    workedHoursSd: 0,
    wearMm,
    errorSdMm,
    visit: `1@${i}`,
    takenOn: day('2026-01-01'),
  })),
});

describe('fitted wear over the life a part has had', () => {
  it('with one reading is the mean pulled towards it, worked out by hand', () => {
    // t = 0.5: prior mean 1, var 0.05^2 + 2^2 0.1^2 0.5 = 0.0225; reading 1.3 with sd 0.1: weight 0.0225 / 0.0325
    const [at] = fittedWear(law, aSeries([[2500, 1.3, 0.1]]), [2500]);
    expect(at!.middle).toBeCloseTo(1 + 0.3 * (0.0225 / 0.0325), 9);
    const variance = 0.0225 - 0.0225 ** 2 / 0.0325;
    expect(at!.high - at!.middle).toBeCloseTo(1.2815515655 * Math.sqrt(variance), 6);
  });

  it('goes through a size known exactly, and is widest between two of them', () => {
    const at = fittedWear(
      law,
      aSeries([
        [1000, 0.5, 1e-6],
        [3000, 1.1, 1e-6],
      ]),
      [1000, 2000, 3000],
    );
    expect(at[0]!.middle).toBeCloseTo(0.5, 6);
    expect(at[2]!.middle).toBeCloseTo(1.1, 6);
    expect(at[1]!.middle).toBeCloseTo(0.8, 6);
    expect(at[1]!.high - at[1]!.low).toBeGreaterThan(at[0]!.high - at[0]!.low);
  });

  it('loses no node of a law that is told by thousands of light ones', () => {
    const many = 4000;
    const alike = {
      ...law,
      weight: new Float64Array(many).fill(1 / many),
      rate: new Float64Array(many).fill(2),
      shapeOf: new Uint16Array(many),
    };
    const series = aSeries([[2500, 1.3, 0.1]]);
    const [at] = fittedWear(alike, series, [1200]);
    const [ofOne] = fittedWear(law, series, [1200]);
    expect(at!.middle).toBeCloseTo(ofOne!.middle, 9);
    expect(at!.high).toBeCloseTo(ofOne!.high, 9);
  });

  it('says nothing of a part without sizes', () => {
    expect(fittedWear(law, aSeries([]), [0, 100])).toEqual([]);
  });
});
