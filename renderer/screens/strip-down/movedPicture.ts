import { type HoursRule, hoursRule } from '#core/axis/hoursRule.ts';
import {
  type BarStretch,
  type IntervalBar,
  intervalBar,
  pastStub,
  type ThinInterval,
  thinInterval,
} from '#core/axis/intervalBar.ts';
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
export type MovedBasis = Pick<PointForecast, 'ownReadings' | 'likeParts' | 'decides' | 'pastLimitMm' | 'openFindings'>;

/** A forecast has moved by so much when a person would plan otherwise for it: hours, or a share of what it was. */
const MOVED_BY = { hours: 25, share: 0.05 };

/** Points measured in the visit, and those that moved by enough to be looked at; the rest are only counted. */
export function worthShowing(
  moved: readonly MovedPoint[],
  measured: ReadonlySet<number>,
): { shown: MovedPoint[]; little: number } {
  const shown = moved.filter(({ pointId, before, after }) => measured.has(pointId) || hasMoved(before, after));
  return { shown, little: moved.length - shown.length };
}

const hasMoved = (before: Range, after: Range): boolean =>
  (['low', 'middle'] as const).some((end) => {
    const [from, to] = [before[end], after[end]];
    if (from === null || to === null) return from !== to;
    return Math.abs(to - from) > Math.max(MOVED_BY.hours, MOVED_BY.share * Math.abs(from));
  });

export type MovedRow = {
  moved: MovedPoint;
  basis: MovedBasis | null;
  /** null: no forecast, a finding stands in its place */
  bar: IntervalBar | null;
  /** past at its own last size: stands in place of the bar */
  stub: BarStretch | null;
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
      if (stopping(basis))
        return { moved: point, basis, bar: null, stub: null, was: thinInterval(point.before, scale), cameFromPx: 0 };
      const bar = intervalBar(
        { ...point.after, nowHours: 0, decides: basis?.decides ?? 'middle', ownReadings: basis?.ownReadings ?? 0 },
        scale,
      );
      const was = thinInterval(point.before, scale);
      const came = bar.middleX !== null && was?.middleX != null ? was.middleX - bar.middleX : 0;
      const isPast = basis?.pastLimitMm != null && point.after.middle !== null;
      const stub = isPast ? pastStub(point.after.middle ?? 0, scale) : null;
      return { moved: point, basis, bar, stub, was, cameFromPx: came };
    }),
  };
}

/** The open finding that forbids use, where there is one. */
export const stopping = (basis: MovedBasis | null): MovedBasis['openFindings'][number] | undefined =>
  basis?.openFindings.find(({ severity }) => severity === 'do-not-use');
