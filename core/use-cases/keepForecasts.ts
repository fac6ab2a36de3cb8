import type { Foretold } from '../check/foretold.ts';
import { insertKeptForecast } from '../record/keptForecastStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import type { Day } from '../units/day.ts';
import { foretoldOfPoint } from '../way/foretoldOfPoint.ts';
import { MODEL_VERSION } from '../way/learning.ts';
import type { ShopNow } from './shopNow.ts';

/** A forecast as it stands, ready to be kept. */
export type StandingForecast = {
  pointId: number;
  partOrdinal: number;
  asOf: Day;
  learnedFrom: string;
  foretold: Foretold;
};

/**
 * The forecasts of a machine as they stand now. Work them out before the entry that is to keep them is written.
 * @param pointIds only these; absent: all of the machine
 */
export function standingForecasts(
  now: ShopNow,
  machineId: number,
  pointIds: ReadonlySet<number> | null = null,
): StandingForecast[] {
  const { shop, learning, asOf } = now;
  const laws = now.lawsOf(machineId);
  return shop.life.points
    .filter((point) => point.machineId === machineId && (pointIds === null || pointIds.has(point.pointId)))
    .flatMap((point) => {
      const told = foretoldOnce(laws, point.pointId, () => foretoldOfPoint(shop, point, laws, learning));
      const partOrdinal = shop.ofPoint(point).present.ordinal;
      const { pointId } = point;
      return told ? [{ pointId, partOrdinal, asOf, learnedFrom: learning.fingerprint, foretold: told }] : [];
    });
}

/** Worked out while a sheet is typed, and asked for when it is saved: kept with the laws, which rest on all that these rest on. */
function foretoldOnce(laws: Laws, pointId: number, workOut: () => Foretold | null): Foretold | null {
  const known = foretoldBy.get(laws) ?? new Map<number, Foretold | null>();
  foretoldBy.set(laws, known);
  if (!known.has(pointId)) known.set(pointId, workOut());
  return known.get(pointId) ?? null;
}
type Laws = ReturnType<ShopNow['lawsOf']>;
const foretoldBy = new WeakMap<Laws, Map<number, Foretold | null>>();

/** What they are kept for. */
export type KeptFor =
  | { why: 'slip'; slipId: number }
  | { why: 'plan'; entryId: number }
  | { why: 'strip-down'; entryId: number; stripDownId: number };

/**
 * Keeps forecasts that were printed, agreed by, or stood just before a strip-down: rows that are never changed, and scored once
 * the part is measured.
 * @param knownAt ISO instant: what had been entered by then
 */
export function keepForecasts(
  w: WritableRecord,
  standing: readonly StandingForecast[],
  keptFor: KeptFor,
  knownAt: string,
): void {
  const whose = { entryId: null, slipId: null, stripDownId: null, ...keptFor };
  for (const forecast of standing)
    insertKeptForecast(w, { ...whose, ...forecast, knownAt, modelVersion: MODEL_VERSION });
}
