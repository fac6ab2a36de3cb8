import type { Sitting } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import { ofPositions } from './boundMachines.ts';
import { bound, bulk, groupedBy, type Horizon } from './bulk.ts';
import { chainOf, counting } from './counting.ts';
import type { ReadableRecord } from './recordFile.ts';

/** When something moved: its day, and within the day the order of entry. Null: it was there from the beginning. */
type Moment = { from: Day | null; order: number };
export type OrderedSitting = Moment & { sitting: Sitting };
/** Where a position went by itself: to an assembly, or to the shelf (null). */
export type Home = Moment & {
  assemblyId: number | null;
  /** dial of the machine it came off and of the one it went on [h]; null: by date */
  dialHours: number | null;
  toDialHours: number | null;
};
/** A position that ever went by itself: the assembly it is in now (on the shelf: was in last), and where it sat. */
export type MovedPosition = { assemblyId: number; sittings: readonly Sitting[] };

/** Where each position that ever went by itself has been, in order, up to the as-of day. */
export function loadHomes(
  db: ReadableRecord,
  horizon: Horizon,
  dials: ReadonlyMap<number, number>,
): Map<number, Home[]> {
  type Row = [
    positionId: number,
    assemblyId: number | null,
    from: Day,
    order: number,
    off: number | null,
    on: number | null,
  ];
  const rows = bulk<Row>(
    db,
    `SELECT h.position_id, h.assembly_id, h.from_on, ${orderOf('position_sittings', 'h')} AS in_order,
       h.off_dial_reading_id, h.on_dial_reading_id FROM position_sittings h
     WHERE h.from_on <= @asOf AND ${counting('position_sittings', 'h')} ${ofPositions(horizon.within, 'h.position_id')}
     ORDER BY h.from_on, in_order, ${chainOf('h')}`,
    bound(horizon),
  );
  const dialOf = (reading: number | null) => (reading === null ? null : (dials.get(reading) ?? null));
  const homes = rows.map(([positionId, assemblyId, from, order, off, on]) => ({
    positionId,
    home: { assemblyId, from, order, dialHours: dialOf(off), toDialHours: dialOf(on) },
  }));
  return new Map(
    [...groupedBy(homes, ({ positionId }) => positionId)].map(([positionId, own]) => [
      positionId,
      own.map(({ home }) => home),
    ]),
  );
}

/** Order of entry of a row's chain: a row put right stays where it was first entered. */
export const orderOf = (table: string, row: string): string =>
  `(SELECT first_row.entry_id FROM ${table} first_row WHERE first_row.id = ${chainOf(row)})`;

/**
 * Where a position sat, machine by machine, as everything after the record sees it: with the assembly it was in, and from
 * the day it went by itself with the one it went to. Moves between assemblies of one machine are none.
 *
 * @param laidOutIn the assembly it was laid out in
 * @param homes where it went by itself, in order
 */
export function movedPosition(
  laidOutIn: number,
  homes: readonly Home[],
  sittingsOf: (assemblyId: number) => readonly OrderedSitting[],
): MovedPosition {
  const legs: Sitting[] = [];
  const add = (leg: Sitting) => {
    if (legs.length === 0 || legs.at(-1)?.machineId !== leg.machineId) legs.push(leg);
  };
  const until = (moment: Moment | undefined) => (one: Moment) => moment === undefined || isBefore(one, moment);
  for (const { sitting } of sittingsOf(laidOutIn).filter(until(homes[0]))) add(sitting);
  for (const [place, home] of homes.entries()) {
    const sittings = home.assemblyId === null ? [] : sittingsOf(home.assemblyId);
    const { from, dialHours, toDialHours } = home;
    const machineId = sittings.findLast((one) => isBefore(one, home))?.sitting.machineId ?? null;
    add({ machineId, from, dialHours, toDialHours: machineId === null ? null : toDialHours });
    for (const one of sittings.filter((later) => !isBefore(later, home) && until(homes[place + 1])(later)))
      add(one.sitting);
  }
  return {
    assemblyId: homes.findLast(({ assemblyId }) => assemblyId !== null)?.assemblyId ?? laidOutIn,
    sittings: legs,
  };
}

function isBefore(one: Moment, other: Moment): boolean {
  if (one.from === other.from) return one.order < other.order;
  return one.from === null || (other.from !== null && one.from < other.from);
}

/**
 * In SQL: the assembly a position is in now; on the shelf by itself, the one it was in last. Binds `@knownAt`.
 * @param position alias of the row of positions
 */
export const presentAssemblyOf = (position: string): string =>
  `COALESCE((SELECT home.assembly_id FROM position_sittings home
    WHERE home.position_id = ${position}.id AND home.assembly_id IS NOT NULL AND ${counting('position_sittings', 'home')}
    ORDER BY home.from_on DESC, home.entry_id DESC LIMIT 1), ${position}.assembly_id)`;

/** In SQL: positions that were laid out in some assemblies, or came to them. Indexes find those; where a position is now they do not. */
export const everIn = (position: string, assemblies: string): string =>
  `${position}.id IN (SELECT id FROM positions WHERE assembly_id IN (${assemblies})
    UNION SELECT position_id FROM position_sittings WHERE assembly_id IN (${assemblies}))`;
