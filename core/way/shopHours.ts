import { borrowedHoursPerDay, learnedJobHours, type UseOfYear, useOfYear } from '../forecast/useOfYear.ts';
import { type HoursLine, hoursLine } from '../reading/hoursLine.ts';
import { type UseStretch, useStretches } from '../reading/machineHours.ts';
import { type SeenDial, withSeenDials } from '../reading/seenDials.ts';
import { dialsSeen } from '../series/dialsSeen.ts';
import type { MachineOnRecord, ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { settingsOf } from './settingsOf.ts';

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
  const { season } = life;
  const { useLnSd } = settingsOf(life);
  const machines = new Map(
    life.machines.map((machine) => [
      machine.machineId,
      firstLook(machine, seen.get(machine.machineId) ?? [], life, asOf),
    ]),
  );
  const stretches = [...machines.values()].map((machine) => machine.stretches);
  const habit = kept ?? shopHabit(life, stretches);
  return {
    habit,
    stretches,
    ofMachine: (machineId) => {
      const machine = machines.get(machineId);
      return machine && workedOut(machine, habit, season, useLnSd, asOf);
    },
  };
}

/** A machine with its seen dials among its readings, and its known stretches of use. */
type FirstLook = { life: MachineOnRecord; stretches: readonly UseStretch[] };

/**
 * What was worked out of a machine is given back as long as it is the very same machine (its values never change) and the
 * rest of what it is worked out from reads the same: an entry for one machine leaves the others as they were.
 */
const firstLooks = new WeakMap<MachineOnRecord, { from: string; look: FirstLook }>();
const hoursWorkedOut = new WeakMap<FirstLook, { from: string; hours: MachineHoursAndUse }>();

function firstLook(machine: MachineOnRecord, seen: readonly SeenDial[], life: ShopLife, asOf: Day): FirstLook {
  const { season, hoursPerYearDefault } = life;
  const { useLnSd } = settingsOf(life);
  const from = JSON.stringify([asOf, hoursPerYearDefault, season, useLnSd, seen]);
  const before = firstLooks.get(machine);
  if (before?.from === from) return before.look;
  const whole = { ...machine, ...withSeenDials(machine, seen) };
  const usual = { hoursPerDay: hoursPerYearDefault / 365, sdLnRate: useLnSd, season };
  const look = { life: whole, stretches: useStretches(hoursLine(whole, asOf, usual)) };
  firstLooks.set(machine, { from, look });
  return look;
}

function workedOut(
  look: FirstLook,
  habit: ShopHabit,
  season: readonly number[],
  sdLnRate: number,
  asOf: Day,
): MachineHoursAndUse {
  const from = JSON.stringify([asOf, habit, season, sdLnRate]);
  const before = hoursWorkedOut.get(look);
  if (before?.from === from) return before.hours;
  const use = useOfYear(look.stretches, { ...habit, season, sdLnRate });
  const hours = { life: look.life, line: hoursLine(look.life, asOf, use.rate), use };
  hoursWorkedOut.set(look, { from, hours });
  return hours;
}

function shopHabit(life: ShopLife, stretches: ShopHours['stretches']): ShopHabit {
  const { season, hoursPerYearDefault } = life;
  const { useScaleHours, useLnSd } = settingsOf(life);
  const hoursPerDay = borrowedHoursPerDay(stretches, hoursPerYearDefault);
  return {
    hoursPerDay,
    jobHours: learnedJobHours(stretches, { hoursPerDay, season, jobHours: useScaleHours, sdLnRate: useLnSd }),
  };
}
