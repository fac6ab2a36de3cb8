import { clampToScale, type HoursScale, hoursToPx, onScale, px } from './scale.ts';

/** A renewal: where a position's wear starts again. With hours not known it lies somewhere in its range. */
export type RenewalHours = { hours: number; known: boolean; fromHours: number; toHours: number };

export type History = {
  renewals: readonly RenewalHours[];
  /** machine hours of each visit with a size */
  readings: readonly number[];
  /** machine hours at which the meter was changed */
  meterChanges: readonly number[];
  untilHours: number;
};

export type RenewalShape = {
  x: number;
  known: boolean;
  /** datum triangle standing on the line */
  path: string;
  /** the range of a renewal whose hours are not known, a bar with ends on the line; null when known */
  rangePath: string | null;
};

export type HistoryLine = {
  /** the line, with a zigzag at each change of meter and a break at the left where it began off the scale */
  path: string;
  renewals: RenewalShape[];
  readings: { x: number }[];
  /** where the meter was changed */
  meterChanges: { x: number }[];
};

const ZIGZAG = { halfPx: 8, highPx: 6 } as const;

/** What lies behind a position, on the line its bar stands on. Null when there is nothing to draw. */
export function historyLine(history: History, scale: HoursScale): HistoryLine | null {
  const starts = [
    ...history.renewals.map((renewal) => (renewal.known ? renewal.hours : renewal.fromHours)),
    ...history.readings,
  ];
  if (starts.length === 0) return null;
  const fromHours = Math.min(...starts);
  if (fromHours > scale.toHours || history.untilHours < scale.fromHours) return null;
  const meterChanges = history.meterChanges
    .filter((hours) => onScale(scale, hours) && hours > fromHours && hours < history.untilHours)
    .map((hours) => ({ x: hoursToPx(scale, hours) }));
  return {
    path: linePath(fromHours, history.untilHours, meterChanges, scale),
    renewals: history.renewals
      .filter((renewal) => onScale(scale, renewal.hours))
      .map((renewal) => renewalShape(renewal, scale)),
    readings: history.readings
      .filter((hours) => onScale(scale, hours))
      .map((hours) => ({ x: hoursToPx(scale, hours) })),
    meterChanges,
  };
}

function linePath(fromHours: number, untilHours: number, changes: readonly { x: number }[], scale: HoursScale): string {
  const x0 = clampToScale(scale, fromHours);
  const start =
    fromHours < scale.fromHours ? `M${px(x0)} -4L${px(x0 + 3)} 0L${px(x0)} 4M${px(x0 + 3)} 0` : `M${px(x0)} 0`;
  const breaks = [...changes].sort((a, b) => a.x - b.x).map(({ x }) => zigzag(x));
  return `${start}${breaks.join('')}H${px(clampToScale(scale, untilHours))}`;
}

const zigzag = (x: number): string =>
  `H${px(x - ZIGZAG.halfPx)}L${px(x - ZIGZAG.halfPx / 2)} ${-ZIGZAG.highPx}L${px(x + ZIGZAG.halfPx / 2)} ${ZIGZAG.highPx}L${px(x + ZIGZAG.halfPx)} 0`;

/** A datum triangle standing on y = 0, its tip up. */
export const datumPath = (x: number, halfPx = 5, heightPx = 7): string =>
  `M${px(x - halfPx)} 0L${px(x)} ${-heightPx}L${px(x + halfPx)} 0Z`;

export function renewalShape(renewal: RenewalHours, scale: HoursScale): RenewalShape {
  const x = hoursToPx(scale, renewal.hours);
  if (renewal.known) return { x, known: true, path: datumPath(x), rangePath: null };
  const x0 = clampToScale(scale, renewal.fromHours);
  const x1 = clampToScale(scale, renewal.toHours);
  return {
    x,
    known: false,
    path: datumPath(x),
    rangePath: `M${px(x0)} -4V4M${px(x0)} 0H${px(x1)}M${px(x1)} -4V4`,
  };
}
