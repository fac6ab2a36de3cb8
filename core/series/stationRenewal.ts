import type { PointLife, Renewal } from '../shop/measuringPoint.ts';
import type { Look, PartWalk, Start } from './partWalk.ts';

/** The start of each piece renewed by itself, by station; null: no hours on record. */
export type OfStations = Map<string, { renewal: Renewal; start: Start | null }>;

/**
 * One of several stations renewed by itself. Its wear starts again: what was read there before says nothing of the present
 * part any more, what is read there from now on stands beside the older stations, and the worst of them governs. Once every
 * station has been renewed so, nothing of the old part is left: a new one began with the piece that has been in longest.
 */
export function renewStations(
  point: PointLife,
  parts: PartWalk[],
  renewals: readonly Renewal[],
  startOf: (renewal: Renewal) => Start | null,
): void {
  for (const renewal of renewals) {
    const part = parts.at(-1)!;
    const station = renewal.station ?? '';
    const start = startOf(renewal);
    const others = stationsOf(point, part).filter((one) => one !== station);
    const allRenewed = others.length > 0 && others.every((one) => part.pieces.has(one));
    part.pieces.set(station, { renewal, start });
    if (allRenewed) parts.push(partOfPieces(part, station));
    else for (const look of part.looks) replace(look, station);
  }
}

/** Stations it was laid out with, and those it was read at. */
function stationsOf({ stations = [] }: PointLife, { looks }: PartWalk): string[] {
  return [...new Set([...stations, ...looks.flatMap((look) => look.stations.map(({ station }) => station))])];
}

function replace(look: Look, station: string): void {
  look.stations = look.stations.map((one) => (one.station === station ? { ...one, replaced: true } : one));
}

/** What was read at the last old station stays with the old part; what was read of the new pieces goes with the new one. */
function partOfPieces(old: PartWalk, lastStation: string): PartWalk {
  const isOld = ({ station, replaced }: Look['stations'][number]) => replaced === true || station === lastStation;
  const taken = old.looks.map((look) => ({ ...look, stations: look.stations.filter((one) => !isOld(one)) }));
  for (const look of old.looks) look.stations = look.stations.filter(isOld);
  old.looks = old.looks.filter(({ stations }) => stations.length > 0);
  const oldest = [...old.pieces.values()].reduce((first, one) =>
    (one.start?.to.runHours ?? 0) < (first.start?.to.runHours ?? 0) ? one : first,
  );
  return {
    ...old,
    ordinal: old.ordinal + 1,
    renewal: { ...oldest.renewal, station: '' },
    start: oldest.start,
    looks: taken.filter(({ stations }) => stations.length > 0),
    pieces: new Map(),
  };
}
