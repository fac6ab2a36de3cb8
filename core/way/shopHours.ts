import { borrowedHoursPerDay, learnedJobHours, type UseOfYear, useOfYear } from '../forecast/useOfYear.ts';
import { useOfPulled, useReckoned } from '../forecast/useWithoutMeter.ts';
import { type GatheredHours, gatheredHours, USUAL_SOURCE_ERROR } from '../reading/gatheredHours.ts';
import { type HoursLine, hoursLine } from '../reading/hoursLine.ts';
import { type UseStretch, useStretches } from '../reading/machineHours.ts';
import { type SeenDial, withSeenDials } from '../reading/seenDials.ts';
import { dialsSeen } from '../series/dialsSeen.ts';
import { hoursSourceOn } from '../shop/machineLife.ts';
import type { MachineOnRecord, ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { settingsOf } from './settingsOf.ts';

/** A machine with its hours worked out, and how fast it gathers them. */
export type MachineHoursAndUse = {
  life: MachineOnRecord;
  line: HoursLine;
  use: UseOfYear;
  /** hours run while no meter told them: what the line was made with besides the dial rows */
  gathered: readonly GatheredHours[];
};

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
 * A machine without a meter follows the machine that pulls it, which is worked out first.
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
  const under: number[] = [];
  const known = new Map<number, MachineHoursAndUse>();
  const ofMachine = (machineId: number): MachineHoursAndUse | undefined => {
    const before = known.get(machineId);
    if (before) return before;
    const look = machines.get(machineId);
    // entry refuses a ring of machines that pull each other; one in the record all the same is broken here
    if (!look || under.includes(machineId)) return undefined;
    under.push(machineId);
    const pullers = pullersOf(look.life).flatMap((id) => ofMachine(id) ?? []);
    under.pop();
    const hours = workedOut(look, { habit, season, sdLnRate: useLnSd, asOf, pullers });
    if (under.length === 0) known.set(machineId, hours);
    return hours;
  };
  return { habit, stretches, ofMachine };
}

/** Machines that have pulled it, each once. */
const pullersOf = ({ hoursSources = [] }: MachineOnRecord): number[] => [
  ...new Set(hoursSources.flatMap((source) => (source.kind === 'pulled' ? [source.pullerId] : []))),
];

/** A machine with its seen dials among its readings, and its known stretches of use. */
type FirstLook = { life: MachineOnRecord; stretches: readonly UseStretch[] };

/**
 * What was worked out of a machine is given back as long as it is the very same machine (its values never change) and the
 * rest of what it is worked out from reads the same: an entry for one machine leaves the others as they were.
 */
const firstLooks = new WeakMap<MachineOnRecord, { from: string; look: FirstLook }>();
const hoursWorkedOut = new WeakMap<FirstLook, { from: string; with: WorkOutWith; hours: MachineHoursAndUse }>();

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

type WorkOutWith = {
  habit: ShopHabit;
  season: readonly number[];
  sdLnRate: number;
  asOf: Day;
  pullers: readonly MachineHoursAndUse[];
};

function workedOut(look: FirstLook, by: WorkOutWith): MachineHoursAndUse {
  const from = JSON.stringify([by.asOf, by.habit, by.season, by.sdLnRate]);
  const before = hoursWorkedOut.get(look);
  const samePullers =
    before?.with.pullers.length === by.pullers.length && before.with.pullers.every((its, i) => its === by.pullers[i]);
  if (before?.from === from && samePullers) return before.hours;
  const { life } = look;
  const use = useOfMachine(look, by);
  const gathered = gatheredHours(life.hoursSources ?? [], by.asOf, {
    ownDays: life.dialEvents.map(({ takenOn }) => takenOn),
    pullerOf: (pullerId) => pullerHours(by.pullers, pullerId),
    season: by.season,
    jobHours: by.habit.jobHours,
  });
  const hours = { life, line: hoursLine(life, by.asOf, use.rate, gathered), use, gathered };
  hoursWorkedOut.set(look, { from, with: by, hours });
  return hours;
}

const pullerNamed = (pullers: readonly MachineHoursAndUse[], pullerId: number) =>
  pullers.find(({ life }) => life.machineId === pullerId);

function pullerHours(pullers: readonly MachineHoursAndUse[], pullerId: number) {
  const puller = pullerNamed(pullers, pullerId);
  return puller && { line: puller.line, hoursPerYear: puller.use.hoursPerYear.middle };
}

/** By its own stretches and the shop's habit; without a meter by what its hours come from now. */
function useOfMachine(
  { life, stretches }: FirstLook,
  { habit, season, sdLnRate, asOf, pullers }: WorkOutWith,
): UseOfYear {
  const source = hoursSourceOn(life.hoursSources ?? [], asOf);
  const shop = { ...habit, season, sdLnRate };
  const errorShare = source?.errorShare ?? USUAL_SOURCE_ERROR;
  const puller = source?.kind === 'pulled' ? pullerNamed(pullers, source.pullerId) : undefined;
  if (source?.kind === 'pulled' && puller) return useOfPulled(puller.use, source.share, errorShare, sdLnRate);
  if (source?.kind === 'yearly') return useReckoned(source.hoursPerYear, errorShare, shop);
  return useOfYear(stretches, shop);
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
