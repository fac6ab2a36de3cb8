import { describe, expect, it } from 'vitest';
import { aReading } from '#tests/accuracy/aSeries.ts';
import { inSmallShops, shopH } from '#tests/accuracy/shopSets.ts';
import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { fewerFigures, likeliestFigures } from './fewerFigures.ts';
import { learnShop, type ShopLearning } from './learnShop.ts';
import { haveHeard, machineLaws } from './machineLaws.ts';
import { defaultModelSettings as settings } from './modelSettings.ts';

// two machines of the simulated shop H, in two classes of few parts: figures wide open, visits shared
const shop = inSmallShops(shopH(), 2)[0]!;
const learned = learnShop(shop.series, shop.priors, settings);
const isMeasured = (one: WearSeries): boolean => one.present && one.readings.length > 0;
const machines = [...Map.groupBy(shop.series, (one) => one.machineId).values()].filter((own) => own.some(isMeasured));
const few = fewerFigures(learned, machines[0]!);

const partsOf = (count: number) => Array.from({ length: count }, (_, k) => shop.series[k % shop.series.length]!);

/** The machine with one more reading on a part in work, much worn. */
function withOneMore(own: readonly WearSeries[], which: number): WearSeries[] {
  const inWork = own.filter(isMeasured);
  const part = inWork[which % inWork.length]!;
  const { workedHours, wearMm, errorSdMm } = part.readings.at(-1)!;
  const more = aReading({ workedHours: workedHours + 600, wearMm: wearMm * 1.25 + 0.1, errorSdMm, visit: 'new' });
  return own.map((one) => (one === part ? { ...one, readings: [...one.readings, more] } : one));
}

const hoursBy = (learning: ShopLearning, own: readonly WearSeries[]) =>
  machineLaws(learning, own, settings).flatMap((law) => {
    const { low, middle, high } = hoursAtLimit(law, Math.exp(shop.priors.get(law.partClass)!.m0), settings);
    return [low, middle, high];
  });

describe('the same learning at fewer figures', () => {
  it('keeps the more nodes the fewer parts go by them, their weights summing to one, and each machine its word at them', () => {
    expect(Math.max(...learned.classes.map(({ nodes }) => nodes.length))).toBeGreaterThan(100);
    for (const [parts, most] of [
      [2, 32],
      [15, 18],
      [34, 8],
      [200, 8],
    ] as const)
      for (const { nodes, machines: words, partClass, byFewer } of fewerFigures(learned, partsOf(parts)).classes) {
        expect(byFewer ?? false).toBe(partsOf(parts).some((part) => part.partClass === partClass));
        if (!byFewer) continue;
        expect(nodes.length).toBeLessThanOrEqual(most);
        expect(nodes.length).toBeGreaterThan(most / 2);
        expect(nodes.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
        for (const { muEta, muLambda } of words)
          expect([muEta.length, muLambda.length]).toEqual([nodes.length, nodes.length]);
      }
  });

  it('is made once of each class, and gives back what has few already', () => {
    const again = fewerFigures({ classes: [...learned.classes] }, machines[0]!);
    again.classes.forEach((one, place) => {
      expect(one).toBe(few.classes[place]);
    });
    expect(fewerFigures(few, machines[0]!)).toBe(few);
    const one = likeliestFigures(learned);
    expect(fewerFigures(one, partsOf(200))).toBe(one);
  });

  it('forecasts a machine with one more size near what all figures do: nine hours of ten within 1 %, all within 5 %', () => {
    const off = machines.flatMap((own) =>
      [0, 1, 2, 3].flatMap((which) => {
        const grown = withOneMore(own, which);
        const whole = hoursBy(learned, grown);
        return hoursBy(fewerFigures(learned, own), grown).flatMap((hours, k) =>
          hours === null || whole[k] === null ? [] : [Math.abs(hours / whole[k]! - 1)],
        );
      }),
    );
    expect(off.length).toBeGreaterThan(60);
    off.sort((a, b) => a - b);
    expect(off[Math.floor(0.9 * off.length)]).toBeLessThan(0.01);
    expect(off.at(-1)).toBeLessThan(0.05);
    expect(off.at(-1)).toBeGreaterThan(0);
  });

  it('a machine has been heard until it has a reading more, or one less', () => {
    for (const own of machines) {
      expect(haveHeard(learned, own, settings)).toBe(true);
      expect(haveHeard(learned, withOneMore(own, 0), settings)).toBe(false);
      const read = own.find((one) => one.readings.length > 0)!;
      const without = own.map((one) => (one === read ? { ...one, readings: [] } : one));
      expect(haveHeard(learned, without, settings)).toBe(false);
    }
    // where machines are drawn, one that no class knows waits for nothing
    const drawn = learned.classes.map((one) => ({ ...one, machines: [] }));
    const most = Math.max(...drawn.map(({ machinesRead }) => machinesRead));
    expect(haveHeard({ classes: drawn }, machines[0]!, settings)).toBe(false);
    expect(haveHeard({ classes: drawn }, machines[0]!, { ...settings, machinesPerClass: most + 1 })).toBe(true);
    expect(haveHeard(learned, withOneMore(machines[0]!, 0), { ...settings, machinesPerClass: most + 1 })).toBe(false);
    expect(haveHeard({ classes: [] }, machines[0]!, settings)).toBe(false);
  });
});
