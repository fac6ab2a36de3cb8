import type { PointForecast } from '../contract/forecast.ts';
import type { Slip } from '../contract/slip.ts';
import type { Finding } from '../shop/finding.ts';
import { type Day, day, daysBetween } from '../units/day.ts';
import { dialOf, dialRange, type SlipHours } from './slipHours.ts';

/** A winter at the machine's own use. */
export type SlipWinter = { name: string; fromMachineHours: number; toMachineHours: number };

export type HeadlineFrom = {
  asOf: Day;
  hours: SlipHours | null;
  winters: readonly SlipWinter[];
  /** soonest first by deciding hours; those without come last */
  points: readonly PointForecast[];
  /** open do-not-use findings, oldest first */
  stops: readonly { finding: Finding; item: number | null; label: string }[];
  labelOf: (point: PointForecast) => string;
};

/** Two farming years on; beyond it no month is named (common practice, no source). */
const DAYS_OF_TWO_SEASONS = 730;

/**
 * The one thing the farmer should take from the page: a do-not-use finding, else the first deciding hours of all parts,
 * to come or gone by, else that nothing can be said.
 */
export function slipHeadline(from: HeadlineFrom): Slip['headline'] {
  const stop = from.stops[0];
  if (stop) {
    return {
      kind: 'do-not-use',
      items: stop.item === null ? [] : [stop.item],
      label: stop.label,
      finding: stop.finding.kind,
      foundOn: stop.finding.takenOn,
      note: stop.finding.note,
      declined: stop.finding.declined,
    };
  }
  const first = firstToAct(from.points);
  if (!first || !from.hours || first.decidingHoursLeft === null) return { kind: 'no-forecast' };
  const named = { items: [first.item], label: from.labelOf(first), decides: first.decides };
  const at = first.machineHoursAtLimit[first.decides];
  const range = dialRange(from.hours, first.machineHoursAtLimit);
  if (at === null) return { kind: 'no-forecast' };
  if (isGuessedPassed(first)) return { kind: 'not-measured', ...named, range, winter: from.winters[0]?.name ?? null };
  if (hasPassed(first)) return { kind: 'passed', ...named, dialHours: dialOf(from.hours, at), range };
  return {
    kind: 'come-in',
    ...named,
    dialHours: dialOf(from.hours, at),
    range,
    winter: winterBefore(from.winters, at)?.name ?? null,
    about: aboutWhen(first, from.asOf),
  };
}

/**
 * Nobody is told to come in now by a guess: a limit that like parts alone would have gone by says only that somebody should
 * measure. A part that was measured goes before it where it has gone by as well.
 */
const isGuessedPassed = (point: PointForecast): boolean =>
  point.ownReadings === 0 && point.pastLimitMm === null && hasPassed(point);

const firstToAct = (points: readonly PointForecast[]): PointForecast | undefined => {
  const [first] = points;
  if (!first || !isGuessedPassed(first)) return first;
  return points.find((point) => point.ownReadings > 0 && hasPassed(point)) ?? first;
};

/** The deciding hours have gone by, or the limit was past at the last size already. */
export const hasPassed = (point: PointForecast): boolean =>
  point.pastLimitMm !== null || (point.decidingHoursLeft !== null && point.decidingHoursLeft < 0);

/** The winter some hours fall in, else the last before them: the one to come in. */
export const winterBefore = (winters: readonly SlipWinter[], machineHours: number): SlipWinter | undefined =>
  winters.findLast((winter) => winter.fromMachineHours <= machineHours);

function aboutWhen(point: PointForecast, asOf: Day): Day | null {
  const at = point.dateAtLimit[point.decides];
  if (at === null || daysBetween(asOf, day(at)) > DAYS_OF_TWO_SEASONS) return null;
  return day(at);
}
