import type { stripDownSwap } from '#core/contract/oldSheets.ts';
import type { AskOf } from '#core/contract/operation.ts';
import type { SheetRow } from '../strip-down/boxes.ts';

/** Two places whose sizes change round. */
export type SwapPair = AskOf<typeof stripDownSwap>['pairs'][number];
export type Place = SwapPair['one'];

type Row = Pick<SheetRow, 'pointId' | 'position' | 'point' | 'stations'>;

/** Two points mixed up: stations of one name change round; those only one of them has are left alone, or go by place. */
export function pairsOfPoints(one: Row, other: Row): SwapPair[] {
  const [ones, others] = [stationsOf(one), stationsOf(other)];
  const named = ones.filter((station) => others.includes(station)).map((station) => [station, station] as const);
  const restOne = ones.filter((station) => !others.includes(station));
  const restOther = others.filter((station) => !ones.includes(station));
  const byPlace = restOne.slice(0, restOther.length).map((station, i) => [station, restOther[i] ?? ''] as const);
  return [...named, ...byPlace].map(([a, b]) => ({
    one: { pointId: one.pointId, station: a },
    other: { pointId: other.pointId, station: b },
  }));
}

/** Two stations mixed up, on every point that has both. */
export const pairsOfStations = (rows: readonly Row[], one: string, other: string): SwapPair[] =>
  one === other
    ? []
    : rows
        .filter((row) => stationsOf(row).includes(one) && stationsOf(row).includes(other))
        .map(({ pointId }) => ({ one: { pointId, station: one }, other: { pointId, station: other } }));

const stationsOf = ({ stations }: Row): string[] => stations.map(({ station }) => station);

/** Sides of a machine as they are called, each with the one it is taken for. */
const SIDES = [
  ['left', 'right'],
  ['front', 'rear'],
  ['top', 'bottom'],
  ['upper', 'lower'],
  ['inner', 'outer'],
] as const;

/** The point most likely meant by the other side of one: the same name with its side turned. */
export function partnerOf(rows: readonly Row[], row: Row): Row | null {
  const point = row.point.toLowerCase();
  for (const turned of turnedNames(row.position)) {
    const found = rows.find(
      (other) => other.position.toLowerCase() === turned && other.point.toLowerCase() === point && other !== row,
    );
    if (found) return found;
  }
  return null;
}

/** Stations most likely mixed up: the two ends. */
export function likelyStations(rows: readonly Row[]): [string, string] | null {
  const all = [...new Set(rows.flatMap(stationsOf))].filter((station) => station !== '');
  for (const [one, other] of SIDES) if (all.includes(one) && all.includes(other)) return [one, other];
  const [first, second] = all;
  return first !== undefined && second !== undefined ? [first, second] : null;
}

function turnedNames(name: string): string[] {
  const plain = name.toLowerCase();
  return SIDES.flatMap(([one, other]) => [
    plain.replace(new RegExp(`\\b${one}\\b`), other),
    plain.replace(new RegExp(`\\b${other}\\b`), one),
  ]).filter((turned) => turned !== plain);
}
