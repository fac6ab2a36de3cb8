import type { Foretold } from '../../check/foretold.ts';
import { type LimitVerdict, limitVerdict } from '../../check/limitVerdict.ts';
import { type SizeScore, scoreSize } from '../../check/scoreSize.ts';
import { zForetold } from '../../contract/check.ts';
import { type KeptForecastOnRecord, keptForecastsOf } from '../../record/keptForecastStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import type { PartSeries } from '../../series/partSeries.ts';
import type { PartVisit } from '../../series/partVisits.ts';
import type { PointOnRecord } from '../../shop/shopLife.ts';
import type { ScoredSize } from '../../way/scoredSizes.ts';
import type { ShopNow } from '../shopNow.ts';

/** A forecast of the record, its sizes read back. */
export type KeptForecast = Omit<KeptForecastOnRecord, 'foretold'> & { foretold: Foretold };

/** A size of a part and its score against the forecast that stood before it; range as sizes [mm]. */
export type SizeScored = {
  point: PointOnRecord;
  ordinal: number;
  visit: MeasuredVisit;
  origin: 'kept' | 'rebuilt';
  score: SizeScore;
};

export type MeasuredVisit = PartVisit & { governing: NonNullable<PartVisit['governing']>; workedHours: number };

/** What was kept of these points, oldest first. @param pointIds null: of all */
export const keptForecasts = (db: ReadableRecord, pointIds: readonly number[] | null = null): KeptForecast[] =>
  keptForecastsOf(db, pointIds).map((row) => ({ ...row, foretold: zForetold.parse(row.foretold) }));

/**
 * Every size that has a forecast to be laid against: the one that was kept, as it stood; else one rebuilt with the learning,
 * from the sizes the machine had before.
 */
export function scoredForecasts({ shop, learning }: ShopNow, kept: readonly KeptForecast[]): SizeScored[] {
  const rebuilt = Map.groupBy(learning.scored, ({ pointId }) => pointId);
  const own = Map.groupBy(kept, ({ pointId }) => pointId);
  return shop.life.points.flatMap((point) => {
    const again = rebuilt.get(point.pointId) ?? [];
    const stood = own.get(point.pointId) ?? [];
    if (again.length + stood.length === 0) return [];
    const series = shop.ofPoint(point);
    return measuredVisits(series).flatMap((visit) => {
      const scored = scoreOfVisit(point, series, visit, stood, again);
      return scored ? [{ point, ordinal: visit.ordinal, visit, ...scored }] : [];
    });
  });
}

function scoreOfVisit(
  point: PointOnRecord,
  series: PartSeries,
  visit: MeasuredVisit,
  stood: readonly KeptForecast[],
  again: readonly ScoredSize[],
): Pick<SizeScored, 'origin' | 'score'> | null {
  const last = stood.findLast((one) => stoodBefore(one, series, visit));
  const { sizeMm, errorSdMm } = visit.governing;
  const score = last && scoreSize(last.foretold, { workedHours: visit.workedHours, sizeMm, errorSdMm });
  if (score) return { origin: 'kept', score };
  const one = again.find(({ ordinal, takenOn }) => ordinal === visit.ordinal && takenOn === visit.takenOn);
  return one ? { origin: 'rebuilt', score: asSizes(one, point, sizeMm) } : null;
}

/** The range in sizes: as far from the size that came as its wear is from that wear. */
function asSizes(one: ScoredSize, { wears }: PointOnRecord, sizeMm: number): SizeScore {
  const sizeAt = (wearMm: number) => (wears === 'down' ? sizeMm - (wearMm - one.wearMm) : sizeMm + wearMm - one.wearMm);
  return {
    ...one,
    leastWornMm: sizeAt(one.leastWornMm),
    middleMm: sizeAt(one.middleMm),
    mostWornMm: sizeAt(one.mostWornMm),
  };
}

/** Sizes of every part that were taken after it had run. */
export const measuredVisits = ({ history }: PartSeries): MeasuredVisit[] =>
  history.filter(
    (visit): visit is MeasuredVisit =>
      visit.governing !== null && !visit.workedOut && !visit.atZero && (visit.workedHours ?? 0) > 0,
  );

/** It was said of the very part that was measured, before it was. */
export function stoodBefore(
  { partOrdinal, asOf, foretold }: KeptForecast,
  series: PartSeries,
  visit: MeasuredVisit,
): boolean {
  const wentIn = series.renewals.find(({ ordinal }) => ordinal === visit.ordinal)?.takenOn;
  const knewIt = foretold.last !== null && foretold.last.workedHours > visit.workedHours - 1;
  return partOrdinal === visit.ordinal && asOf <= visit.takenOn && !knewIt && (wentIn === undefined || wentIn <= asOf);
}

/** What became of the hours at limit of a kept forecast; and whether anything was measured since. */
export function whatCame(
  kept: KeptForecast,
  series: PartSeries,
): { verdict: LimitVerdict | null; measured: boolean; ended: boolean } {
  const own = measuredVisits(series).filter(({ ordinal }) => ordinal === kept.partOrdinal);
  const since = own.filter((visit) => stoodBefore(kept, series, visit));
  const ended = series.present.ordinal > kept.partOrdinal;
  const lastHours = own.at(-1)?.workedHours ?? kept.foretold.workedHours;
  const readings = own.map(({ workedHours, governing }) => ({ workedHours, wearMm: governing.wearMm }));
  const verdict = limitVerdict(kept.foretold, { readings, renewedAt: ended ? lastHours : null });
  return { verdict, measured: since.length > 0, ended };
}
