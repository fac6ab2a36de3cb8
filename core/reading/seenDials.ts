import type { DialEvent, MachineLife } from '../shop/machineLife.ts';
import type { Day } from '../units/day.ts';

/** A dial figure noted on the way, beside a size or a move. */
export type SeenDial = { takenOn: Day; dialHours: number };

/** Rows made from seen dials carry no row of their own. */
export const SEEN_DIAL_ID = 0;

/**
 * A machine's life with the dial figures that were noted beside sizes and moves: each is a reading too.
 * A figure that its day's rows already give is not taken twice. On a day with a change of meter it goes before the
 * change when it is nearer to the old meter's last figure than to the new one's first.
 */
export function withSeenDials(life: MachineLife, seen: readonly SeenDial[]): MachineLife {
  const dialEvents = [...life.dialEvents];
  for (const dial of [...seen].sort(byDayThenDial)) {
    const given = dialEvents.some(
      ({ takenOn, dialHours, newDialHours }) =>
        takenOn === dial.takenOn && (dialHours === dial.dialHours || newDialHours === dial.dialHours),
    );
    if (!given) dialEvents.splice(placeOf(dial, dialEvents), 0, readingOf(dial));
  }
  return { ...life, dialEvents };
}

const byDayThenDial = (a: SeenDial, b: SeenDial): number =>
  a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : a.dialHours - b.dialHours;

function placeOf(dial: SeenDial, events: readonly DialEvent[]): number {
  const dayStart = events.filter(({ takenOn }) => takenOn < dial.takenOn).length;
  const dayEnd = events.filter(({ takenOn }) => takenOn <= dial.takenOn).length;
  const onNewMeter = events.findLastIndex(
    (event, index) => index >= dayStart && index < dayEnd && event.kind === 'new-meter' && !isOld(event, dial),
  );
  for (let place = Math.max(dayStart, onNewMeter + 1); place < dayEnd; place++) {
    const event = events[place]!;
    if (event.kind === 'new-meter' || (event.dialHours ?? 0) > dial.dialHours) return place;
  }
  return dayEnd;
}

/** Nearer to what the old meter showed at the end than to what the new one began with. */
const isOld = (event: DialEvent, dial: SeenDial): boolean =>
  event.dialHours !== null &&
  Math.abs(event.dialHours - dial.dialHours) < Math.abs(dial.dialHours - (event.newDialHours ?? 0));

const readingOf = ({ takenOn, dialHours }: SeenDial): DialEvent => ({
  id: SEEN_DIAL_ID,
  takenOn,
  kind: 'reading',
  dialHours,
  newDialHours: null,
  errorHours: null,
  parked: false,
});
