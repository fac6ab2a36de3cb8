import { type HoursRule, hoursRule } from '#core/axis/hoursRule.ts';
import { type IntervalBar, intervalBar, type ThinInterval, thinInterval } from '#core/axis/intervalBar.ts';
import { pictureRange } from '#core/axis/pictureRange.ts';
import { type HoursScale, hoursScale, hoursToPx } from '#core/axis/scale.ts';
import type { PointForecast } from '#core/contract/forecast.ts';
import type { Range } from '#core/contract/shapes.ts';

export type MovedPoint = {
  pointId: number;
  item: number;
  position: string;
  point: string;
  before: Range;
  after: Range;
};

/** What a moved bar is drawn by, beside its hours; of a point whose forecast is not known, the plain case. */
export type MovedBasis = Pick<PointForecast, 'ownReadings' | 'likeParts' | 'decides'>;

export type MovedRow = {
  moved: MovedPoint;
  basis: MovedBasis | null;
  bar: IntervalBar;
  /** where the bar stood before; null: off the scale */
  was: ThinInterval | null;
  /** how far right the bar's middle stood before [px]; 0 when either is off the scale */
  cameFromPx: number;
};

/** Hours left before and after a strip-down, all on one scale that starts a little left of now. */
export function movedPicture(
  moved: readonly MovedPoint[],
  basisOf: (pointId: number) => MovedBasis | null,
  widthPx: number,
): { scale: HoursScale; rule: HoursRule; nowX: number; rows: MovedRow[] } {
  const scale = hoursScale({
    ...pictureRange({
      nowHours: 0,
      historyFromHours: null,
      planLineHours: null,
      hoursPerYear: null,
      rows: moved.flatMap(({ before, after }) => [before, after]),
    }),
    fromPx: 8,
    toPx: widthPx - 28,
  });
  return {
    scale,
    rule: hoursRule(scale, { figurePx: 15, flag: null, pastBefore: 0 }),
    nowX: hoursToPx(scale, 0),
    rows: moved.map((point) => {
      const basis = basisOf(point.pointId);
      const bar = intervalBar(
        { ...point.after, nowHours: 0, decides: basis?.decides ?? 'middle', ownReadings: basis?.ownReadings ?? 0 },
        scale,
      );
      const was = thinInterval(point.before, scale);
      const came = bar.middleX !== null && was?.middleX != null ? was.middleX - bar.middleX : 0;
      return { moved: point, basis, bar, was, cameFromPx: came };
    }),
  };
}
