import type { Caution } from '../outcome.ts';
import type { MachineLife } from '../shop/machineLife.ts';
import type { Day } from '../units/day.ts';
import { fullScale, walkDial } from './dialWalk.ts';
import type { GatheredHours } from './gatheredHours.ts';
import type { MeterSpan } from './meter.ts';
import { USUAL_USE, type UseRate } from './useRate.ts';

/** Where the hours of a machine are pinned: one per reading, estimate or change of meter. */
export type HoursNode = {
  takenOn: Day;
  dayOf: number;
  machineHours: number;
  /** variance of this node alone [h^2]: an estimate's error ends with the next reading */
  ownVariance: number;
  /** variance gathered up to here [h^2]: an unread stretch between two meters never ends */
  driftVariance: number;
  /** bridged: a new meter was fitted and the old one's last figure is not known */
  kind: 'read' | 'estimated' | 'bridged';
  /** what the meter of its day shows; on a change of meter the new one [h] */
  dialHours: number;
  eventId: number;
};

/** A machine's hours over its days: straight between the nodes. Plain data; made by {@link hoursLine}. */
export type HoursLine = {
  machineId: number;
  asOf: Day;
  nodes: readonly HoursNode[];
  meters: readonly MeterSpan[];
  /** figure at which the meter starts again [h]; null: digits not known */
  fullScaleHours: number | null;
  /** pace beyond the last node and over unread stretches */
  use: UseRate;
  cautions: readonly Caution[];
};

/**
 * A machine's hours since new, from its dial: through meter changes, rollovers, estimates and unread stretches.
 *   machineHours = hours at the meter's fitting + hoursPerDialHour (dial - dial at its fitting)
 * (the steps are in dialWalk.ts). Rows after `asOf`, and parked rows, are left out. A stored row that cannot be (a dial that falls) is left out with a
 * caution; entry refuses such rows ({@link judgeDial}). Machine hours never fall from node to node.
 *
 * @param life the machine's dial rows, in order
 * @param asOf last day looked at
 * @param use the machine's pace, for unread stretches and for the days after the last node
 * @param gathered hours run while no meter told them (gatheredHours.ts)
 * @returns the line; without nodes when the machine has no hours on record
 * @source own derivation: counting on through changes of meter
 * @checked core/reading/hoursLine.test.ts, core/series/lives.test.ts
 */
export function hoursLine(
  life: MachineLife,
  asOf: Day,
  use: UseRate = USUAL_USE,
  gathered: readonly GatheredHours[] = [],
): HoursLine {
  const { nodes, meters, cautions } = walkDial(life, asOf, use, gathered);
  return { machineId: life.machineId, asOf, nodes, meters, fullScaleHours: fullScale(life), use, cautions };
}
