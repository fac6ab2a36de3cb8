import { expect, it } from 'vitest';
import { foretold } from '#core/check/foretold.ts';
import { scoreSize } from '#core/check/scoreSize.ts';
import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import { defaultModelSettings as settings } from '#core/fit/modelSettings.ts';
import { type ShopSet, shopH, workshopH } from '#tests/accuracy/shopSets.ts';

/**
 * Forecasts kept before each machine's last visit, by a shop that knew nothing of those visits, scored from what was kept
 * alone once the visits came.
 */
function scoresOfLastVisits({ series, priors }: ShopSet) {
  const machines = [...Map.groupBy(series, ({ machineId }) => machineId).values()].map((own) => {
    // the visit of a day, or where days are not told of a number
    const order = (visit: string) => Number(visit.replace(/\D/g, ''));
    const last = own
      .flatMap(({ readings }) => readings.map(({ visit }) => visit))
      .sort((a, b) => order(a) - order(b))
      .at(-1);
    const parts = own.map((part) => ({
      part: { ...part, readings: part.readings.filter(({ visit }) => visit !== last) },
      came: part.readings.find(({ visit, workedHours }) => visit === last && workedHours > 0),
    }));
    return parts;
  });
  const known = machines.flatMap((parts) => parts.map(({ part }) => part));
  const learning = learnShop(known, priors, settings);
  return machines.flatMap((parts) => {
    const asked = parts.map(({ part, came }) => ({ ...part, present: came !== undefined }));
    const cames = parts.flatMap(({ came }) => (came ? [came] : []));
    return machineLaws(learning, asked, settings).flatMap((law, i) => {
      const before = parts.find(({ part }) => part.pointId === law.pointId && part.ordinal === law.ordinal)!.part;
      const seen = before.readings.at(-1);
      const kept = foretold({
        ...{ law, wears: 'up', newSizeMm: 0, workedHours: seen?.workedHours ?? 0, machineHours: null, share: 1 },
        last: seen ? { workedHours: seen.workedHours, wearMm: seen.wearMm } : null,
        ...{ limitWearMm: null, hoursAtLimit: null, ownReadings: 0, likeParts: 0, likeMachines: 0, settings },
      });
      const { workedHours, wearMm, errorSdMm } = cames[i]!;
      // as it comes back from the record
      const score = scoreSize(JSON.parse(JSON.stringify(kept)), { workedHours, sizeMm: wearMm, errorSdMm });
      return score ? [score] : [];
    });
  });
}

/** 665 sizes tell a share to 0.016 (1 sd): what is said, 76 to 84, holds within two of them. The winters of tests/accuracy ask it of thousands. */
const OFF = 0.032;

it('kept forecasts of two invented shops: 76 to 84 in 100 sizes within the 80 % range, as near as so many can tell, each better than the line', () => {
  const shops = [workshopH(), shopH()].map(scoresOfLastVisits);
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const cover = mean(shops.flat().map(({ inside }) => (inside ? 1 : 0)));
  expect(shops.flat().length).toBeGreaterThan(600);
  expect(Math.abs(cover - 0.8)).toBeLessThan(0.04 + OFF);
  for (const scores of shops) {
    const lined = scores.filter(({ naiveCrpsMm }) => naiveCrpsMm !== null);
    const line = mean(lined.map(({ naiveCrpsMm }) => naiveCrpsMm ?? 0));
    expect(mean(lined.map(({ crpsMm }) => crpsMm))).toBeLessThan(0.7 * line);
  }
});
