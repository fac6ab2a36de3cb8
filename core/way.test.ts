import { describe, expect, it } from 'vitest';
import { aDial, aFinding, aMachine, aPoint, aShopLife, aSize } from '#tests/support/aShopLife.ts';
import type { PointForecast } from './contract/forecast.ts';
import type { ShopLife } from './shop/shopLife.ts';
import { day } from './units/day.ts';
import { forecastMachine, forecastShop, learnClasses, outlooksOfMachine, seriesOfShop } from './way.ts';

const AS_OF = day('2026-11-10');
const forecasts = (life: ShopLife): PointForecast[] =>
  forecastShop(life, AS_OF).machines.flatMap(({ points }) => [...points]);
const only = (life: ShopLife, pointId = 1): PointForecast =>
  forecasts(life).find((point) => point.pointId === pointId)!;

describe('a forecast of a measuring point', () => {
  it('counts from the machine hours of the as-of day, an estimate when nobody read the meter that day', () => {
    const point = only(aShopLife());
    expect(point.machineHoursRead).toBe(4800);
    expect(point.readOn).toBe('2026-11-01');
    expect(point.machineHours).toBeGreaterThan(4800);
    expect(point.machineHours).toBeLessThan(4850);
    for (const which of ['low', 'middle', 'high'] as const)
      expect(point.machineHoursAtLimit[which]! - point.machineHours!).toBeCloseTo(point.hoursLeft[which]!, 9);
  });

  it('gives low, middle and high in this order, in hours and in dates', () => {
    const { hoursLeft, dateAtLimit, wearMm, ratePer1000hMm } = only(aShopLife());
    for (const range of [hoursLeft, wearMm, ratePer1000hMm]) {
      expect(range.low!).toBeLessThan(range.middle!);
      expect(range.middle!).toBeLessThan(range.high!);
    }
    expect(dateAtLimit.low! < dateAtLimit.middle! && dateAtLimit.middle! < dateAtLimit.high!).toBe(true);
  });

  it('says in its outlook alone the very hours and dates it says on the whole', () => {
    const { shop, learning, machines } = forecastShop(aShopLife(), AS_OF);
    const [{ machineId, points }] = machines as [(typeof machines)[0]];
    const outlooks = outlooksOfMachine(shop, machineId, learning);
    expect(outlooks).toHaveLength(points.length);
    outlooks.forEach((outlook, place) => {
      expect(points[place]).toMatchObject(outlook);
    });
  });

  it('of a part never read is all borrowed; readings of its own make it its own', () => {
    expect(only(aShopLife(), 2).basis).toEqual({ own: 0, borrowed: 1 });
    expect(only(aShopLife(), 1).basis.own).toBeGreaterThan(0.5);
    expect(only(aShopLife(), 1).ownReadings).toBe(2);
  });

  it('of a part only measured as it went in is all borrowed too', () => {
    const renewal = { id: 1, takenOn: day('2025-11-01'), dialHours: null, hoursKnown: true, sizeMm: null };
    const sizes = [aSize(1, '2025-11-01', 39.1), aSize(2, '2025-11-01', 40.02, { event: 'as-left' })];
    const renewed = only(aShopLife({ points: [aPoint(1, { sizes, renewals: [renewal] }), aPoint(2)] }));
    expect(renewed.ownReadings).toBe(0);
    expect(renewed.basis).toEqual({ own: 0, borrowed: 1 });
  });

  it('of a towing or lifting part goes by its low figure', () => {
    const safe = only(aShopLife({ points: [aPoint(1, { safety: true })] }));
    expect(safe.decides).toBe('low');
    expect(safe.decidingHoursLeft).toBe(safe.hoursLeft.low);
    const plain = only(aShopLife({ points: [aPoint(1)] }));
    expect(plain.decidingHoursLeft).toBe(plain.hoursLeft.middle);
  });

  it('turns worked hours back into machine hours at the present share', () => {
    const unread = { points: [aPoint(1)] };
    const whole = only(aShopLife(unread));
    const half = only(
      aShopLife({ ...unread, machines: [aMachine({ workShares: [{ from: null, share: 0.5, workType: null }] })] }),
    );
    // T worked hours at limit, M machine hours now: T - M hours left at share 1, (T - M/2) / (1/2) at share 1/2
    expect(half.hoursLeft.middle! - whole.hoursLeft.middle!).toBeCloseTo(whole.machineHoursAtLimit.middle!, 4);
  });

  it('past its limit at its own last size: hours since then, the day of that size, and how far past', () => {
    const past = only(aShopLife({ points: [aPoint(1, { sizes: [aSize(1, '2026-11-01', 38.64)] })] }));
    expect(past.pastLimitMm).toBeCloseTo(0.36, 9);
    expect(past.hoursLeft).toEqual({
      low: past.hoursLeft.middle,
      middle: past.hoursLeft.middle,
      high: past.hoursLeft.middle,
    });
    expect(past.hoursLeft.middle!).toBeLessThan(0);
    expect(past.dateAtLimit).toEqual({ low: '2026-11-01', middle: '2026-11-01', high: '2026-11-01' });
    expect(past.chancePastLimit).toBeGreaterThan(0.99);
  });

  it('without a limit says so, and still says how fast it wears', () => {
    const limits = [{ from: null, newSizeMm: 40, newSizeTolMm: 0.1, renewAtMm: null, rejectAtMm: null, source: null }];
    const point = only(aShopLife({ points: [aPoint(1, { limits })] }));
    expect(point.cautions).toContain('no-limit');
    expect(point.limitWearMm).toBeNull();
    expect(point.hoursLeft).toEqual({ low: null, middle: null, high: null });
    expect(point.ratePer1000hMm.middle).toBeGreaterThan(0);
  });

  it('on a machine without hours on record says nothing but that', () => {
    const point = only(aShopLife({ machines: [aMachine({ dialEvents: [] })] }));
    expect(point.cautions).toContain('no-hours');
    expect(point.machineHours).toBeNull();
    expect(point.wearMm).toEqual({ low: null, middle: null, high: null });
    expect(point.hoursLeft).toEqual({ low: null, middle: null, high: null });
  });

  it('on the shelf has hours left but no dates: nobody runs it', () => {
    const sittings = [
      { machineId: 1, from: null, dialHours: null, toDialHours: null },
      { machineId: null, from: day('2026-11-02'), dialHours: null, toDialHours: null },
    ];
    const point = only(aShopLife({ points: [aPoint(1, { sittings })] }));
    expect(point.cautions).toContain('on-the-shelf');
    expect(point.hoursLeft.middle).not.toBeNull();
    expect(point.dateAtLimit.middle).toBeNull();
  });
});

describe('a finding', () => {
  it("do not use takes the place of its position's hours and dates; the machine's other points keep theirs, marked", () => {
    const [stopped, other] = forecasts(aShopLife({ findings: [aFinding()] }));
    expect(stopped!.cautions).toContain('do-not-use');
    expect(stopped!.hoursLeft).toEqual({ low: null, middle: null, high: null });
    expect(stopped!.dateAtLimit).toEqual({ low: null, middle: null, high: null });
    expect(stopped!.openFindings).toEqual([
      { finding: 'crack', severity: 'do-not-use', date: '2026-10-12', note: 'At weld toe, 34 mm' },
    ]);
    expect(other!.cautions).toContain('machine-has-do-not-use');
    expect(other!.hoursLeft.middle).not.toBeNull();
  });

  it('on an assembly as a whole stops all its positions', () => {
    const all = forecasts(aShopLife({ findings: [aFinding({ positionId: null })] }));
    expect(all.every((point) => point.cautions.includes('do-not-use'))).toBe(true);
  });

  it('closed by the as-of day, or found after it, stops nothing', () => {
    const closed = forecasts(aShopLife({ findings: [aFinding({ closedOn: day('2026-11-02'), outcome: 'renewed' })] }));
    const later = forecasts(aShopLife({ findings: [aFinding({ takenOn: day('2026-12-01') })] }));
    for (const point of [...closed, ...later]) expect(point.cautions).not.toContain('do-not-use');
  });

  it('to watch or repair leaves the forecast as it is', () => {
    expect(only(aShopLife({ findings: [aFinding({ severity: 'repair' })] })).hoursLeft).toEqual(
      only(aShopLife()).hoursLeft,
    );
  });
});

describe('what was learned', () => {
  const life = aShopLife();
  const first = forecastShop(life, AS_OF);

  it('is given back while it rests on the same parts, a later day included', () => {
    expect(learnClasses(seriesOfShop(life, day('2026-12-24')), first.learning)).toBe(first.learning);
  });

  it('is learned anew after a size, a changed class or other settings', () => {
    const moreSizes = aShopLife({
      points: [...life.points.slice(0, 2), aPoint(3, { sizes: [aSize(9, '2026-11-01', 39.1)] })],
    });
    const otherClass = aShopLife({ partClasses: [{ ...life.partClasses[0]!, tradeWear: null }] });
    for (const changed of [moreSizes, otherClass])
      expect(learnClasses(seriesOfShop(changed, AS_OF), first.learning).fingerprint).not.toBe(
        first.learning.fingerprint,
      );
  });

  it('serves one machine alone: the same figures as within the shop', () => {
    expect(forecastMachine(life, 1, AS_OF, first.learning).points).toEqual(first.machines[0]!.points);
  });

  it('serves a machine with a newer size before the classes are learned again, and a class it does not know', () => {
    const later = aShopLife({
      points: [
        aPoint(1, { sizes: [...life.points[0]!.sizes, aSize(3, '2026-11-09', 39.2)] }),
        aPoint(4, { partClass: 'ring' }),
      ],
      partClasses: [...life.partClasses, { name: 'ring', tradeWear: null, newSizeTolMm: null }],
    });
    const [worn, ring] = forecastMachine(later, 1, AS_OF, first.learning).points;
    expect(worn!.hoursLeft.middle!).toBeLessThan(first.machines[0]!.points[0]!.hoursLeft.middle!);
    expect(ring!.basis.own).toBe(0);
    expect(ring!.cautions).toContain('from-trade-prior');
  });
});

describe('the same record', () => {
  it('gives the same answer twice, and in any order of its rows', () => {
    const life = aShopLife({
      machines: [
        aMachine(),
        aMachine({ machineId: 2, name: 'Other', dialEvents: [aDial('2021-01-01', 100), aDial('2026-01-01', 3000)] }),
      ],
      points: [
        ...aShopLife().points,
        aPoint(7, {
          machineId: 2,
          assemblyId: 2,
          sittings: [{ machineId: 2, from: null, dialHours: null, toDialHours: null }],
        }),
      ],
    });
    const turned = { ...life, points: [...life.points].reverse(), machines: [...life.machines].reverse() };
    const byId = (points: PointForecast[]) => points.sort((a, b) => a.pointId - b.pointId);
    expect(byId(forecasts(life))).toEqual(byId(forecasts(life)));
    expect(byId(forecasts(turned))).toEqual(byId(forecasts(life)));
  });
});
