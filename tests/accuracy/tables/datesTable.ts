import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { day, dayNumber } from '#core/units/day.ts';
import { chance } from '../chance.ts';
import { bandOverFarms, datesOf, type KnownUse, simulatedChancesBy } from '../dates.ts';
import { places, printTable } from '../printTable.ts';

const stretch = (from: string, to: string, hours: number) => ({ from: day(from), to: day(to), hours, sdHours: 0 });
const from = day('2025-10-10');

export const knownUses: { title: string; of: KnownUse }[] = [
  { title: 'dial read once; 900 h left, 30 %', of: { from, stretches: [], middleHours: 900, spread: 0.3 } },
  {
    title: 'a year of 700 h; 1,500 h left, 25 %',
    of: { from, stretches: [stretch('2024-10-01', '2025-10-10', 700)], middleHours: 1500, spread: 0.25 },
  },
  {
    title: 'winter 150 h, summer 520 h; 400 h left, 50 %',
    of: {
      from,
      stretches: [stretch('2024-10-01', '2025-04-10', 150), stretch('2025-04-10', '2025-10-10', 520)],
      middleHours: 400,
      spread: 0.5,
    },
  },
];

/** Dates at limit: against a simulation that knows none of the program's sums, and over simulated farms. */
export function datesTable(settings: ModelSettings, full: boolean): void {
  const draws = full ? 400_000 : 40_000;
  printTable(
    `Dates against an independent simulation, ${draws} draws: its chance by the program's 10, 50 and 90 % day`,
    ['use known', 'days ahead', 'by the 10 % day', '50 %', '90 %'],
    knownUses.map(({ title, of }, k) => {
      const { low, middle, high } = datesOf(of);
      const days = [low!, middle!, high!];
      const chances = simulatedChancesBy(of, days, draws, chance(300 + k));
      return [
        title,
        days.map((one) => dayNumber(one) - dayNumber(from)).join(' / '),
        ...chances.map((one) => places(one, 3)),
      ];
    }),
  );
  const shops = full ? 50 : 6;
  printTable(
    `Dates over simulated farms with seasons, weather and jobs of their own (${shops} shops of 40), sizes to days; bar: 80 % band holds 0.72 to 0.88`,
    ['farms', 'n', 'band holds', 'day before it', 'day after it', 'middle off, days', 'band, days'],
    (
      [
        ['steady: jobs alone left to chance', 0],
        ['restless: weather and years too', 1],
      ] as const
    ).map(([title, unrest]) => {
      const { farms, inside, early, late, mae, width } = bandOverFarms(shops, unrest, settings, 40_000);
      return [title, farms, places(inside, 3), places(early, 3), places(late, 3), places(mae, 0), places(width, 0)];
    }),
  );
}
