import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { dateAtLimit } from '#core/forecast/dateAtLimit.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import { useOfYear } from '#core/forecast/useOfYear.ts';
import { chanceWornPast } from '#core/forecast/wearLaw.ts';
import { median } from '#core/maths/median.ts';
import { GRASS_AND_TILLAGE } from '#core/reading/season.ts';
import { day } from '#core/units/day.ts';
import { compareWithPlain, plainSettings, variedClass, worked } from '../agreement.ts';
import { places, printTable } from '../printTable.ts';
import { type ShopSet, shopH, workshopH } from '../shopSets.ts';

/** How long a shop takes to learn, how many parts and dates come in a second, and the plain model beside them in the same run. */
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
    return [
      title,
      set.series.length,
      places(learnSeconds, 2),
      places(median(laps) ?? 0, 0),
      places(datesASecond(learning, machines, limits, settings), 0),
    ];
  });
  printTable(
    'Speed, one core: law, chance and three hours a part; dates apart, the use of each machine in hand',
    ['shop', 'series', 'learned in s', 'parts a second, middle of 5 laps (goal 3,000)', 'dates a second (goal 1,000)'],
    rows,
  );
  againstPlain();
}

/** Three days of every part: its chance by hours carried over to the calendar. */
function datesASecond(
  learning: ReturnType<typeof learnShop>,
  machines: readonly ShopSet['series'][],
  limits: ReadonlyMap<string, number>,
  settings: ModelSettings,
): number {
  const laws = machines.flatMap((own) => machineLaws(learning, own, settings)).slice(0, 300);
  const from = day('2025-10-10');
  const seen = [
    { from: day('2023-10-10'), to: day('2024-10-10'), hours: 520, sdHours: 0 },
    { from: day('2024-10-10'), to: from, hours: 610, sdHours: 0 },
  ];
  const use = useOfYear(seen, { hoursPerDay: 500 / 365, season: GRASS_AND_TILLAGE });
  const start = worked();
  for (const law of laws) {
    const last = law.lastHours ?? 0;
    dateAtLimit({
      chancePastBy: (hours) =>
        chanceWornPast(law, limits.get(law.partClass)!, last + Math.max(0, hours), settings.driftDelta),
      leastHoursAhead: 0,
      use,
      from,
      dayOf: () => from,
    });
  }
  return laws.length / (worked() - start);
}

/** Production and the plain model on one class of 100 parts in the same run, by the time the process worked. */
function againstPlain(): void {
  const series = variedClass(100, 0);
  const { reference, production } = compareWithPlain(series, plainSettings, true);
  const row = (title: string, plain: number, own: number) => [
    title,
    places(plain, 3),
    places(own, 4),
    places(series.series.length / own, 0),
    places(plain / own, 0),
  ];
  printTable(
    'Production against the plain model in one run: a class of 100 parts, additions switched off; asked: 100 times as fast, plain model under 5 s',
    ['', 'plain model s', 'production s', 'production, parts a second', 'times as fast'],
    [
      row('law, chance and three hours of every part, class in hand', reference.forecast, production.forecast),
      row('the class learned', reference.learn, production.learn),
      row('both', reference.learn + reference.forecast, production.learn + production.forecast),
    ],
  );
}

const limitsOf = (set: ShopSet): Map<string, number> =>
  new Map(set.scored.map((one) => [one.series.partClass, one.limitWearMm]));
