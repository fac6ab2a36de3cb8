import { lastRead, machineHoursOn, presentDial } from '../reading/machineHours.ts';
import { hoursSourceOn } from '../shop/machineLife.ts';
import type { MachineOnRecord } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import type { MachineHoursAndUse, ShopHours } from './shopHours.ts';

/** The dial a machine's hours are read from: its own, or that of the machine that pulls it. */
export type DialGoneBy = {
  /** whose dial it is; the machine itself, where it has one */
  of: MachineOnRecord;
  /** what it should show now, on past its full scale without starting again [h] */
  dialHoursNow: number;
  /** what it should show now, as it shows it [h] */
  shownNow: number;
  /** hours of the machine in one hour of that dial, at the present share */
  hoursPerDialHour: number;
  /** nobody read it that day */
  estimated: boolean;
  /** last day that dial was really read */
  readOn: Day | null;
};

/** @returns null when no meter tells its hours: nothing but estimates, or so many hours a year */
export function dialGoneBy(hours: ShopHours, machine: MachineHoursAndUse, asOf: Day): DialGoneBy | null {
  const source = hoursSourceOn(machine.life.hoursSources ?? [], asOf);
  if (source?.kind === 'yearly') return null;
  if (!source) return ownDial(machine, asOf);
  const puller = hours.ofMachine(source.pullerId);
  const its = puller && dialGoneBy(hours, puller, asOf);
  return its ? { ...its, hoursPerDialHour: source.share * its.hoursPerDialHour } : null;
}

function ownDial({ life, line }: MachineHoursAndUse, asOf: Day): DialGoneBy | null {
  const now = machineHoursOn(line, asOf);
  const dial = now && presentDial(line, now.hours);
  if (!dial) return null;
  return {
    of: life,
    dialHoursNow: dial.dialHours + dial.laps * (line.fullScaleHours ?? 0),
    shownNow: dial.dialHours,
    hoursPerDialHour: line.meters.at(-1)?.hoursPerDialHour ?? 1,
    estimated: now.kind !== 'read',
    readOn: lastRead(line)?.takenOn ?? null,
  };
}
