import type { SeenDial } from '../reading/seenDials.ts';
import type { PointLife, Sitting } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';

/**
 * The dial figures noted beside sizes, renewals and moves, by machine: each is a reading of that machine too
 * (reading/seenDials.ts). On the day of a move only the move's own figures count, since a size may have been taken on either
 * machine.
 */
export function dialsSeen(points: readonly PointLife[]): Map<number, SeenDial[]> {
  const seen = new Map<number, Map<string, SeenDial>>();
  const note = (machineId: number | null, takenOn: Day | null, dialHours: number | null): void => {
    if (machineId === null || takenOn === null || dialHours === null) return;
    const ofMachine = seen.get(machineId) ?? new Map<string, SeenDial>();
    ofMachine.set(`${takenOn} ${dialHours}`, { takenOn, dialHours });
    seen.set(machineId, ofMachine);
  };
  for (const { sizes, renewals, sittings } of points) {
    sittings.forEach(({ from, machineId, dialHours, toDialHours }, index) => {
      note(sittings[index - 1]?.machineId ?? null, from, dialHours);
      note(machineId, from, toDialHours);
    });
    for (const { takenOn, dialHours } of [...sizes.filter(({ parked }) => !parked), ...renewals]) {
      const sitting = sittingOn(sittings, takenOn);
      if (sitting && sitting.from !== takenOn) note(sitting.machineId, takenOn, dialHours);
    }
  }
  return new Map([...seen].map(([machineId, dials]) => [machineId, [...dials.values()]]));
}

/** Where it sat on a day; on the day of a move: where it came to. */
export const sittingOn = (sittings: readonly Sitting[], on: Day): Sitting | undefined =>
  sittings.findLast(({ from }) => from === null || from <= on);
