import type { SeenDial } from '../reading/seenDials.ts';
import type { PointLife, Sitting } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';

/**
 * The dial figures noted beside sizes, renewals and moves, by machine: each is a reading of that machine too
 * (reading/seenDials.ts). On the day of a move only the move's own figures count, since a size may have been taken on either
 * machine.
 */
export function dialsSeen(points: readonly PointLife[]): Map<number, SeenDial[]> {
  const seen = new Map<number, Map<Day, number[]>>();
  const note = (machineId: number | null, takenOn: Day | null, dialHours: number | null): void => {
    if (machineId === null || takenOn === null || dialHours === null) return;
    const ofMachine = seen.get(machineId) ?? new Map<Day, number[]>();
    if (ofMachine.size === 0) seen.set(machineId, ofMachine);
    const ofDay = ofMachine.get(takenOn);
    if (!ofDay) ofMachine.set(takenOn, [dialHours]);
    else if (!ofDay.includes(dialHours)) ofDay.push(dialHours);
  };
  const noteAt = (sittings: readonly Sitting[], takenOn: Day, dialHours: number | null): void => {
    if (dialHours === null) return;
    const sitting = sittingOn(sittings, takenOn);
    if (sitting && sitting.from !== takenOn) note(sitting.machineId, takenOn, dialHours);
  };
  for (const { sizes, renewals, sittings } of points) {
    sittings.forEach(({ from, machineId, dialHours, toDialHours }, index) => {
      note(sittings[index - 1]?.machineId ?? null, from, dialHours);
      note(machineId, from, toDialHours);
    });
    for (const { takenOn, dialHours, parked } of sizes) if (!parked) noteAt(sittings, takenOn, dialHours);
    for (const { takenOn, dialHours } of renewals) noteAt(sittings, takenOn, dialHours);
  }
  const dialsOf = (days: ReadonlyMap<Day, number[]>): SeenDial[] =>
    [...days].flatMap(([takenOn, dials]) => dials.map((dialHours) => ({ takenOn, dialHours })));
  return new Map([...seen].map(([machineId, days]) => [machineId, dialsOf(days)]));
}

/** Where it sat on a day; on the day of a move: where it came to. */
export const sittingOn = (sittings: readonly Sitting[], on: Day): Sitting | undefined =>
  sittings.findLast(({ from }) => from === null || from <= on);
