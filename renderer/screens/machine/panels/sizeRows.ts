import type { PointSheet } from '#core/contract/machine.ts';

type Visit = PointSheet['visits'][number];
type Renewal = PointSheet['renewals'][number];
type PutRight = PointSheet['putRight'][number];

/** A line of the table of sizes, newest first: a visit with what was struck in it, or a renewal. */
export type SizeLine = { kind: 'visit'; visit: Visit; struck: PutRight[] } | { kind: 'renewal'; renewal: Renewal };

/** Stations as columns: those laid out for the point, then others that were read. A single unnamed one is ''. */
export function stationColumns(point: Pick<PointSheet, 'stations' | 'visits'>): string[] {
  const read = point.visits.flatMap((visit) => visit.stations.map(({ station }) => station));
  const all = [...new Set([...point.stations, ...read])];
  return all.length === 0 ? [''] : all;
}

/**
 * Visits and renewals by hours, newest first. A renewal stands under the sizes of the part it brought in: of the same
 * hours, as-left sizes are the new part's and as-found ones the old one's.
 */
export function sizeLines(point: Pick<PointSheet, 'visits' | 'renewals' | 'putRight'>): SizeLine[] {
  const struckOn = Map.groupBy(point.putRight, (old) => old.takenOn);
  const named = new Set<string>();
  const renewed = new Set(point.renewals.map((renewal) => renewal.takenOn));
  const visits = point.visits
    // the size a renewal names stands in the renewal's own line
    .filter((visit) => visit.stations.length > 0 || !renewed.has(visit.takenOn))
    .map((visit): Placed => {
      const struck = named.has(visit.takenOn) ? [] : (struckOn.get(visit.takenOn) ?? []);
      named.add(visit.takenOn);
      return {
        hours: visit.machineHours,
        rank: visit.event === 'as-left' ? 2 : 0,
        line: { kind: 'visit', visit, struck },
      };
    });
  const renewals = point.renewals.map(
    (renewal): Placed => ({ hours: renewal.machineHours, rank: 1, line: { kind: 'renewal', renewal } }),
  );
  return [...visits, ...renewals]
    .sort((a, b) => (Math.abs(a.hours - b.hours) < SAME_HOURS ? a.rank - b.rank : a.hours - b.hours))
    .map(({ line }) => line)
    .reverse();
}

type Placed = { hours: number; rank: number; line: SizeLine };

/** Hours nearer than this are of one visit [h]. */
const SAME_HOURS = 0.5;

/** Struck sizes whose visit has no line of its own left: all its sizes were struck out. */
export const struckAlone = (point: Pick<PointSheet, 'visits' | 'putRight'>): PutRight[] =>
  point.putRight.filter((old) => !point.visits.some((visit) => visit.takenOn === old.takenOn));

/** What the visit before read at a station, for the question about a size; null: nothing. */
export function readBefore(point: Pick<PointSheet, 'visits'>, visit: Visit, station: string): number | null {
  const at = point.visits.indexOf(visit);
  const before = point.visits
    .slice(0, Math.max(0, at))
    .findLast((other) => other.stations.some((size) => size.station === station && !size.parked));
  return before?.stations.find((size) => size.station === station && !size.parked)?.sizeMm ?? null;
}
