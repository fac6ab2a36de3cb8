import {
  borrowedHoursPerDay,
  learnedJobHours,
  SD_LN_RATE_OF_MACHINES,
  type UseOfYear,
  useOfYear,
} from '../forecast/useOfYear.ts';
import { type HoursLine, hoursLine } from '../reading/hoursLine.ts';
import { useStretches } from '../reading/machineHours.ts';
import { withSeenDials } from '../reading/seenDials.ts';
import { dialsSeen } from '../series/dialsSeen.ts';
import type { MachineOnRecord, ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';

/** A machine with its hours worked out, and how fast it gathers them. */
export type MachineHoursAndUse = { life: MachineOnRecord; line: HoursLine; use: UseOfYear };

/** Hours of every machine of the shop, each worked out when first asked for. */
export type ShopHours = { ofMachine(machineId: number): MachineHoursAndUse | undefined };

/**
 * Dial readings to machine hours, for the whole shop. The dials noted beside sizes and moves count as readings. A first
 * line shows how fast each machine runs; the shop's habit and the machine's own stretches then carry its hours forward.
 */
export function shopHours(life: ShopLife, asOf: Day): ShopHours {
  const seen = dialsSeen(life.points);
  const { season, hoursPerYearDefault } = life;
  const machines = new Map(
    life.machines.map((machine) => {
      const whole = { ...machine, ...withSeenDials(machine, seen.get(machine.machineId) ?? []) };
      const habit = { hoursPerDay: hoursPerYearDefault / 365, sdLnRate: SD_LN_RATE_OF_MACHINES, season };
      return [machine.machineId, { life: whole, stretches: useStretches(hoursLine(whole, asOf, habit)) }];
    }),
  );
  const stretches = [...machines.values()].map((machine) => machine.stretches);
  const hoursPerDay = borrowedHoursPerDay(stretches, hoursPerYearDefault);
  const jobHours = learnedJobHours(stretches, { hoursPerDay, season });
  const known = new Map<number, MachineHoursAndUse>();
  return {
    ofMachine(machineId) {
      const before = known.get(machineId);
      const machine = machines.get(machineId);
      if (before || !machine) return before;
      const use = useOfYear(machine.stretches, { hoursPerDay, season, jobHours });
      const now = { life: machine.life, line: hoursLine(machine.life, asOf, use.rate), use };
      known.set(machineId, now);
      return now;
    },
  };
}
