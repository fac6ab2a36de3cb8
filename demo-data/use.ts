import { random } from './random.ts';

/** What a machine does; sets its hours by month. */
export type Work = 'grass' | 'livestock' | 'tillage' | 'baler' | 'forager' | 'haulage';

/** Share of a month's use against an even one, January first. Invented, after the usual farming year of a cool, wet place. */
const SEASON: Record<Work, readonly number[]> = {
  grass: [0.4, 0.5, 0.9, 1.2, 1.9, 1.7, 1.5, 1.3, 1.0, 0.7, 0.5, 0.4],
  livestock: [1.3, 1.3, 1.2, 1.0, 0.9, 0.8, 0.8, 0.8, 0.8, 0.9, 1.1, 1.1],
  tillage: [0.3, 0.6, 1.4, 1.4, 0.7, 0.5, 0.7, 1.8, 2.0, 1.5, 0.7, 0.4],
  baler: [0, 0, 0, 0, 0.9, 3.2, 3.6, 3.1, 1.2, 0, 0, 0],
  forager: [0, 0, 0, 0.6, 2.6, 2.0, 1.6, 1.9, 2.2, 1.1, 0, 0],
  haulage: [0.7, 0.8, 1.1, 1.2, 1.4, 1.2, 1.1, 1.2, 1.1, 0.9, 0.7, 0.6],
};

const MS_PER_DAY = 86_400_000;
export const dayNumber = (isoDay: string): number => Date.parse(`${isoDay}T00:00:00Z`) / MS_PER_DAY;
export const isoDay = (dayNo: number): string => new Date(dayNo * MS_PER_DAY).toISOString().slice(0, 10);

/**
 * True machine hours by day: `hoursAt(day)`, from `first` to `last`. Use comes in jobs: weeks differ, years differ.
 * Past `last` it goes on at the machine's yearly rate.
 */
export function machineLifeHours(
  seed: number,
  name: string,
  use: { first: string; last: string; hoursAtFirst: number; hoursPerYear: number; work: Work },
): { hoursAt: (isoDay: string) => number } {
  const draw = random(seed, `${name}/use`);
  const first = dayNumber(use.first);
  const days = dayNumber(use.last) - first;
  const hours = [use.hoursAtFirst];
  const season = SEASON[use.work];
  let yearFactor = 1;
  let weekFactor = 1;
  for (let i = 0; i < days; i++) {
    if (i % 365 === 0) yearFactor = Math.exp(0.12 * draw.normal());
    if (i % 7 === 0) weekFactor = draw.gamma(3, 1 / 3);
    const month = new Date((first + i) * MS_PER_DAY).getUTCMonth();
    hours.push(hours[i]! + (use.hoursPerYear / 365.25) * season[month]! * yearFactor * weekFactor);
  }
  return {
    hoursAt: (on) => {
      const at = dayNumber(on) - first;
      if (at < 0) throw new Error(`${name} has no hours on ${on}: its life starts ${use.first}`);
      return hours[Math.min(at, days)]!;
    },
  };
}
