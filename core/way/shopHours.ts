import {
  borrowedHoursPerDay,
  learnedJobHours,
  SD_LN_RATE_OF_MACHINES,
  type UseOfYear,
  useOfYear,
} from '../forecast/useOfYear.ts';
import { type HoursLine, hoursLine } from '../reading/hoursLine.ts';
import { type UseStretch, useStretches } from '../reading/machineHours.ts';
import { withSeenDials } from '../reading/seenDials.ts';
import { dialsSeen } from '../series/dialsSeen.ts';
import type { MachineOnRecord, ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';

/** A machine with its hours worked out, and how fast it gathers them. */
export type MachineHoursAndUse = { life: MachineOnRecord; line: HoursLine; use: UseOfYear };

/** How the shop's machines are used on the whole: what a machine of few readings borrows. Plain data. */
export type ShopHabit = {
  /** hours on an average day [h/d] */
  hoursPerDay: number;
  /** length of the jobs use comes in [h] */
  jobHours: number;
};

/** Hours of every machine of the shop, each worked out when first asked for. */
export type ShopHours = {
  ofMachine(machineId: number): MachineHoursAndUse | undefined;
  habit: ShopHabit;
  /** what the habit is learned from: known hours of every machine */
  stretches: readonly (readonly UseStretch[])[];
};

/**
 * Dial readings to machine hours, for the whole shop. The dials noted beside sizes and moves count as readings. A first
 * line shows how fast each machine runs; the shop's habit and the machine's own stretches then carry its hours forward.
 *
 * @param kept a habit learned before, to be used as it is: one new dial then moves its own machine only
 */
export function shopHours(life: ShopLife, asOf: Day, kept: ShopHabit | null = null): ShopHours {
  const seen = dialsSeen(life.points);
  const { season, hoursPerYearDefault } = life;
  const machines = new Map(
    life.machines.map((machine) => {
      const whole = { ...machine, ...withSeenDials(machine, seen.get(machine.machineId) ?? []) };
      const usual = { hoursPerDay: hoursPerYearDefault / 365, sdLnRate: SD_LN_RATE_OF_MACHINES, season };
      return [machine.machineId, { life: whole, stretches: useStretches(hoursLine(whole, asOf, usual)) }];
    }),
  );
  const stretches = [...machines.values()].map((machine) => machine.stretches);
  const habit = kept ?? shopHabit(life, stretches);
  const known = new Map<number, MachineHoursAndUse>();
  return {
    habit,
    stretches,
    ofMachine(machineId) {
      const before = known.get(machineId);
      const machine = machines.get(machineId);
      if (before || !machine) return before;
      const use = useOfYear(machine.stretches, { ...habit, season });
      const now = { life: machine.life, line: hoursLine(machine.life, asOf, use.rate), use };
      known.set(machineId, now);
      return now;
    },
  };
}

function shopHabit({ season, hoursPerYearDefault }: ShopLife, stretches: ShopHours['stretches']): ShopHabit {
  const hoursPerDay = borrowedHoursPerDay(stretches, hoursPerYearDefault);
  return { hoursPerDay, jobHours: learnedJobHours(stretches, { hoursPerDay, season }) };
}
