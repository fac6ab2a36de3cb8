import { EVEN_USE, GRASS_AND_TILLAGE, WINTER_FEEDING } from '#core/reading/season.ts';
import type { DialEvent, MachineLife } from '#core/shop/machineLife.ts';
import { addDays, type Day, day, dayFromNumber, dayNumber } from '#core/units/day.ts';
import { seededDice } from './seededDice.ts';

/**
 * A farm's machine as it might run: made job by job, not from the model that is tried on it.
 *  - rates lognormal about 500 h a year
 *  - the season one of three patterns, each month of it off by the farm's own factor, each year's months off again
 *    (weather), and each year as a whole (prices, acres, a second tractor)
 *  - work comes in jobs of 1 to 9 days, 4 to 11 hours a day
 *  - it is read at odd intervals, about twice a year
 * `unrest` scales weather and years; at 0 only the jobs are left to chance. Common practice, no source.
 */
export type SimulatedFarm = {
  life: MachineLife;
  asOf: Day;
  /** day on which it has run some hours more than at its last reading */
  dayAfter: (hours: number) => Day;
};

export function simulatedFarm(seed: number, unrest = 1): SimulatedFarm {
  const dice = seededDice(seed);
  const hoursPerDay = (500 / 365) * Math.exp(0.5 * dice.normal());
  const kind = dice.uniform();
  const pattern = kind < 0.8 ? GRASS_AND_TILLAGE : kind < 0.92 ? EVEN_USE : WINTER_FEEDING;
  const own = pattern.map((weight) => weight * Math.exp(0.3 * dice.normal()));
  const mean = own.reduce((a, b) => a + b, 0) / 12;
  const start = dayNumber(day('2015-03-01')) + Math.floor(365 * dice.uniform());
  const factors = new Map<string, number>();
  const factorOf = (period: string, sd: number): number => {
    if (!factors.has(period)) factors.set(period, Math.exp(unrest * sd * dice.normal() - (unrest * sd) ** 2 / 2));
    return factors.get(period)!;
  };
  const hours: number[] = [0];
  const jobs: { days: number; hoursPerDay: number }[] = [];
  const runOn = (): void => {
    const date = dayFromNumber(start + hours.length);
    const expected =
      (hoursPerDay *
        own[Number(date.slice(5, 7)) - 1]! *
        factorOf(date.slice(0, 7), 0.3) *
        factorOf(date.slice(0, 4), 0.15)) /
      mean;
    for (let chance = expected / (5 * 7.5); chance > 0; chance--) {
      if (dice.uniform() < chance) {
        jobs.push({ days: 1 + Math.floor(9 * dice.uniform()), hoursPerDay: 4 + 7 * dice.uniform() });
      }
    }
    let ran = 0;
    for (const job of jobs) if (job.days-- > 0) ran += job.hoursPerDay;
    if (jobs.length > 20) jobs.splice(0, 10, ...jobs.slice(0, 10).filter(({ days }) => days > 0));
    hours.push(hours.at(-1)! + ran);
  };
  const readings = 2 + Math.floor(6 * dice.uniform());
  const at: number[] = [Math.floor(300 * dice.uniform())];
  for (let n = 1; n < readings; n++) at.push(at.at(-1)! + 30 + Math.floor(330 * dice.uniform()));
  const last = at.at(-1)!;
  while (hours.length <= last) runOn();
  const dialEvents = at.map(
    (n, index): DialEvent => ({
      id: index + 1,
      takenOn: dayFromNumber(start + n),
      kind: 'reading',
      dialHours: Math.round(hours[n]!),
      newDialHours: null,
      errorHours: null,
      parked: false,
    }),
  );
  const origin = dayFromNumber(start + last);
  return {
    life: { machineId: seed, meterDigits: 5, hoursBefore: null, workShares: [], dialEvents },
    asOf: origin,
    dayAfter: (more) => {
      let ahead = 0;
      while (hours[last + ahead]! < hours[last]! + more) {
        ahead++;
        if (hours.length <= last + ahead) runOn();
      }
      return addDays(origin, ahead);
    },
  };
}
