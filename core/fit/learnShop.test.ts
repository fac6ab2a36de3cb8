import { describe, expect, it } from 'vitest';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { inSmallShops, shopH } from '#tests/accuracy/shopSets.ts';
import { COARSE } from '#tests/support/coarseForecasts.ts';
import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import { LearningCancelled, learnShop } from './learnShop.ts';
import { machineLaws } from './machineLaws.ts';
import { defaultModelSettings } from './modelSettings.ts';

const settings = { ...defaultModelSettings, ...COARSE };

// eight machines of a shop with renewals, shared visits and parts never read
const shop = inSmallShops(shopH(), 8)[1]!;
const learned = learnShop(shop.series, shop.priors, settings);

const machineOf = (id: number) => shop.series.filter((one) => one.machineId === id);
const someMachine = shop.series.find((one) => one.readings.length > 1)!.machineId;

/** The same list in another order, without chance. */
const shuffled = <T>(list: readonly T[]): T[] =>
  list
    .map((item, i) => ({ item, key: (i * 7919) % 1009 }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item);

describe('learning a shop', () => {
  it('gives the same numbers, bit for bit, in any order of rows and with any numbering of points; and says how far it is', () => {
    const renumbered = shuffled(shop.series).map((one, i) => ({ ...one, pointId: 10_000 - i }));
    const shares: number[] = [];
    const again = learnShop(renumbered, shop.priors, settings, { onProgress: (share) => shares.push(share) });
    expect(again).toEqual(learned);
    expect(shares.at(-1)).toBe(1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });

  it('survives being kept as JSON', () => {
    const kept = JSON.parse(JSON.stringify(learned));
    expect(kept).toEqual(learned);
    const before = machineLaws(learned, machineOf(someMachine), settings);
    expect(machineLaws(kept, machineOf(someMachine), settings)).toEqual(before);
  });

  it('counts what a class rests on: parts with a reading, finished ones too, and their machines', () => {
    for (const one of learned.classes) {
      const read = shop.series.filter((part) => part.partClass === one.partClass && part.readings.length > 0);
      expect(one.partsRead).toBe(read.length);
      expect(one.machinesRead).toBe(new Set(read.map((part) => part.machineId)).size);
    }
  });

  it('weighs its nodes to one', () => {
    for (const { nodes } of learned.classes)
      expect(Math.abs(nodes.reduce((sum, node) => sum + node.weight, 0) - 1)).toBeLessThan(1e-9);
  });

  it('learns a class without any reading from its prior alone', () => {
    const prior = { partClass: 'ring', hRefHours: 6000, m0: Math.log(3), s0: 1, from: 'wide' as const };
    const { classes } = learnShop([], new Map([['ring', prior]]), settings);
    const { nodes, partsRead } = classes[0]!;
    expect(partsRead).toBe(0);
    const mu = nodes.reduce((sum, node) => sum + (node.weight * node.muEta) / node.muLambda, 0);
    expect(Math.abs(mu - prior.m0)).toBeLessThan(1e-9);
    const [law] = machineLaws({ classes }, [aSeries({ partClass: 'ring', readings: [] })], settings);
    const at = hoursAtLimit(law!, 3, settings);
    expect(at.middle).toBeGreaterThan(4000);
    expect(at.middle).toBeLessThan(9000);
  });

  it('stops when told to', () => {
    let asked = 0;
    const cancelled = () => learnShop(shop.series, shop.priors, settings, { isCancelled: () => ++asked > 10 });
    expect(cancelled).toThrow(LearningCancelled);
  });

  it('refuses to guess a class it has no prior for', () => {
    expect(() => learnShop([aSeries({ partClass: 'ring', readings: [] })], new Map(), settings)).toThrow(/prior/);
  });
});

describe('the laws of one machine', () => {
  const limit = (partClass: string) => (partClass === 'slide' ? 2.5 : partClass === 'pin' ? 0.8 : 0.6);

  it('come one a present part, in the order asked', () => {
    const own = machineOf(someMachine);
    const laws = machineLaws(learned, own, settings);
    expect(laws.map((law) => [law.pointId, law.ordinal])).toEqual(
      own.filter((one) => one.present).map((one) => [one.pointId, one.ordinal]),
    );
    const turned = machineLaws(learned, [...own].reverse(), settings);
    expect([...turned].reverse()).toEqual(laws);
  });

  it('rest on nothing of their own for a part never read, and on ever more with each reading', () => {
    const readings = [1000, 2000, 3000].map((h) =>
      aReading({ workedHours: h, wearMm: (2.2 * h) / 5500, visit: `v${h}` }),
    );
    const own = [0, 1, 2, 3].map((count) => {
      const part = aSeries({ machineId: 999, readings: readings.slice(0, count) });
      return machineLaws(learned, [part], settings)[0]!.basis.own;
    });
    expect(own[0]).toBe(0);
    expect(own[1]).toBeGreaterThan(0.1);
    expect(own[3]).toBeGreaterThan(own[1]!);
    expect(own[3]).toBeLessThanOrEqual(1);
  });

  it('let a machine that wears its slides fast wear its pins fast', () => {
    const at = (rate: number) => {
      const slides = [1, 2, 3, 4].map((k) =>
        aSeries({
          pointId: k,
          machineId: 999,
          readings: [aReading({ workedHours: 2000, wearMm: (rate * 2000) / 5500, visit: 'a' })],
        }),
      );
      const pin = aSeries({ pointId: 9, machineId: 999, partClass: 'pin', readings: [] });
      const laws = machineLaws(learned, [...slides, pin], settings);
      return hoursAtLimit(laws.at(-1)!, limit('pin'), settings).middle!;
    };
    expect(at(5)).toBeLessThan(0.92 * at(1.8));
  });

  it('take a new size in at once, close to what learning afresh says of that machine', () => {
    const own = machineOf(someMachine);
    const last = own.findIndex((one) => one.present && one.readings.length > 0);
    const part = own[last]!;
    const { workedHours, wearMm, errorSdMm } = part.readings.at(-1)!;
    const more = aReading({ workedHours: workedHours + 800, wearMm: wearMm * 1.3 + 0.2, errorSdMm, visit: 'new' });
    const grown = own.map((one, i) => (i === last ? { ...one, readings: [...one.readings, more] } : one));
    const quick = machineLaws(learned, grown, settings);
    const all = [...shop.series.filter((one) => one.machineId !== someMachine), ...grown];
    const afresh = machineLaws(learnShop(all, shop.priors, settings), grown, settings);
    const before = machineLaws(learned, own, settings);
    const middle = (laws: typeof quick, i: number) =>
      hoursAtLimit(laws[i]!, limit(laws[i]!.partClass), settings).middle!;
    const moved = quick.findIndex((law) => law.pointId === part.pointId && law.ordinal === part.ordinal);
    expect(Math.abs(middle(quick, moved) / middle(before, moved) - 1)).toBeGreaterThan(0.02);
    quick.forEach((_, i) => {
      expect(Math.abs(middle(quick, i) / middle(afresh, i) - 1)).toBeLessThan(0.06);
    });
  });
});
