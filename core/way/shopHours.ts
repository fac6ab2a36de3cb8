import { borrowedHoursPerDay, type UseOfYear, useOfYear } from '../forecast/useOfYear.ts';
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

/** 1 sd of ln rate while only the shop's habit is known; see useOfYear.ts. */
const SHOP_SD_LN_RATE = 0.5;

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
      const habit = { hoursPerDay: hoursPerYearDefault / 365, sdLnRate: SHOP_SD_LN_RATE, season };
      return [machine.machineId, { life: whole, stretches: useStretches(hoursLine(whole, asOf, habit)) }];
    }),
  );
  const hoursPerDay = borrowedHoursPerDay(
    [...machines.values()].map(({ stretches }) => stretches),
    hoursPerYearDefault,
  );
  const known = new Map<number, MachineHoursAndUse>();
  return {
    ofMachine(machineId) {
      const before = known.get(machineId);
      const machine = machines.get(machineId);
      if (before || !machine) return before;
      const use = useOfYear(machine.stretches, { hoursPerDay, season });
      const now = { life: machine.life, line: hoursLine(machine.life, asOf, use.rate), use };
      known.set(machineId, now);
      return now;
    },
  };
}
