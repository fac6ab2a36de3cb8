import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import { chanceWornPast } from '#core/forecast/wearLaw.ts';
import { places, printTable } from '../printTable.ts';
import { type ShopSet, shopH, workshopH } from '../shopSets.ts';

/** Seconds this process has worked: a busy computer does not count. */
const worked = (): number => process.cpuUsage().user / 1e6;

/** How long a shop takes to learn, and how many parts are forecast in a second with what was learned in hand. */
export function speedTable(settings: ModelSettings): void {
  const rows = (
    [
      ['workshop H', workshopH()],
      ['shop H', shopH()],
    ] as const
  ).map(([title, set]) => {
    const start = worked();
    const learning = learnShop(set.series, set.priors, settings);
    const learnSeconds = worked() - start;
    const machines = [...Map.groupBy(set.series, (one) => one.machineId).values()];
    const limits = limitsOf(set);
    const laps = Array.from({ length: 5 }, () => {
      const from = worked();
      let parts = 0;
      for (const own of machines)
        for (const law of machineLaws(learning, own, settings)) {
          const limit = limits.get(law.partClass)!;
          hoursAtLimit(law, limit, settings);
          chanceWornPast(law, limit, (law.lastHours ?? 0) + 300, settings.driftDelta);
          parts++;
        }
      return parts / (worked() - from);
    });
    return [title, set.series.length, places(learnSeconds, 2), places(Math.max(...laps), 0)];
  });
  printTable(
    'Speed, one core: law, chance and three hours a part',
    ['shop', 'series', 'learned in s', 'parts forecast a second (goal 3,000)'],
    rows,
  );
}

const limitsOf = (set: ShopSet): Map<string, number> =>
  new Map(set.scored.map((one) => [one.series.partClass, one.limitWearMm]));
