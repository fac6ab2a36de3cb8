import type { PointLife, Renewal } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import type { PartSeries } from './partSeries.ts';
import { lastByStationOf, lastSizeOf, type PartVisit } from './partVisits.ts';

/** The parts of a joint, as they are known by their own points. */
export type JointEnds = { pin: PartSeries; bores: readonly PartSeries[] };
export type JointLives = { pin: PointLife; bores: readonly PointLife[] };

/** Slack worked out from a visit in which the pin and all its bores were measured. */
export type WorkedOut = { takenOn: Day; event: 'as-found' | 'as-left'; slackMm: number; errorSdMm: number };

/**
 * Slack of each visit in which both ends were measured: the widest bore less the pin.
 *   slack = max(bore) - pin,   sd = sqrt(s_bore^2 + s_pin^2)
 * @source own derivation: variance of a difference of two sizes read apart
 */
export function workedOutSlack({ pin, bores }: JointEnds): WorkedOut[] {
  return pin.history.flatMap((visit): WorkedOut[] => {
    const { governing, takenOn, event } = visit;
    if (!governing || event === 'renewed') return [];
    const measured = bores.flatMap((bore) => {
      const its = bore.history.find((other) => other.takenOn === takenOn && other.event === event);
      return its?.governing ? [its.governing] : [];
    });
    if (measured.length < bores.length) return [];
    const widest = measured.reduce((wide, one) => (one.sizeMm > wide.sizeMm ? one : wide));
    const errorSdMm = Math.hypot(widest.errorSdMm, governing.errorSdMm);
    return [{ takenOn, event, slackMm: widest.sizeMm - governing.sizeMm, errorSdMm }];
  });
}

/**
 * The slack's own life, with the renewals of its ends: when one of them is renewed slack begins again, at the new size where
 * all are, else at what the old end leaves.
 */
export function lifeOfSlack(slack: PointLife, lives: JointLives, worked: readonly WorkedOut[]): PointLife {
  const ends = [lives.pin, ...lives.bores];
  const days = [...new Set(ends.flatMap((end) => whole(end).map(({ takenOn }) => takenOn)))];
  const added = days
    .filter((takenOn) => !slack.renewals.some((renewal) => renewal.takenOn === takenOn))
    .map((takenOn): Renewal => {
      const then = ends.map((end) => whole(end).find((renewal) => renewal.takenOn === takenOn));
      const one = then.find((renewal) => renewal !== undefined)!;
      const left = worked.find((visit) => visit.takenOn === takenOn && visit.event === 'as-left');
      const all = then.every((renewal) => renewal !== undefined);
      const sizeMm = left?.slackMm ?? (all ? null : leftBetween(lives, takenOn));
      return { id: -one.id, takenOn, dialHours: one.dialHours, hoursKnown: one.hoursKnown, sizeMm, carriesOn: true };
    });
  const renewals = [...slack.renewals, ...added].sort((a, b) =>
    a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0,
  );
  return { ...slack, renewals };
}

const whole = ({ renewals }: PointLife): Renewal[] => renewals.filter(({ station }) => !station);

/** Slack between what stands at each end after a day's work, by sizes last read; null: an end was never read. */
function leftBetween({ pin, bores }: JointLives, on: Day): number | null {
  const pinMm = standingSize(pin, on);
  const boresMm = bores.map((bore) => standingSize(bore, on)).filter((mm) => mm !== null);
  return pinMm === null || boresMm.length < bores.length ? null : Math.max(0, Math.max(...boresMm) - pinMm);
}

/** The worst size of the part that stands at a point after a day, as last read; of a part just put in, its own. */
function standingSize(life: PointLife, on: Day): number | null {
  const renewed = whole(life).findLast(({ takenOn }) => takenOn <= on);
  const ofPart = life.sizes.filter(
    ({ takenOn, event, parked }) =>
      !parked &&
      takenOn <= on &&
      (!renewed ||
        takenOn > renewed.takenOn ||
        (takenOn === renewed.takenOn && (event === 'as-left' || !renewed.hoursKnown))),
  );
  const last = ofPart.at(-1);
  const sizes = ofPart.filter(({ takenOn }) => takenOn === last?.takenOn).map(({ sizeMm }) => sizeMm);
  if (sizes.length > 0) return life.wears === 'down' ? Math.min(...sizes) : Math.max(...sizes);
  if (!renewed) return null;
  const limits = life.limits.findLast(({ from }) => from === null || from <= on) ?? life.limits[0];
  return renewed.sizeMm ?? limits?.newSizeMm ?? null;
}

/**
 * The slack's series beside what its ends say of it. Where both were measured, what was worked out stands in the history and
 * is no reading of its own: it has been heard already, from pin and bore. A slack measured on such a day is left out for the
 * same reason.
 */
export function withWorkedOut(own: PartSeries, ends: JointEnds, worked: readonly WorkedOut[]): PartSeries {
  if (worked.length === 0) return own;
  const days = new Set(worked.map(({ takenOn }) => takenOn));
  const heard = own.history.map((visit) =>
    days.has(visit.takenOn) && visit.governing ? { ...visit, governing: null, excluded: 'worked-out' as const } : visit,
  );
  const computed = worked.map((visit) => computedVisit(visit, own, ends));
  const history = [...heard, ...computed].sort((a, b) => (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0));
  const present = history.filter(({ ordinal }) => ordinal === own.present.ordinal);
  const lastSize = lastSizeOf(present);
  const past = lastSize && own.renewAtWearMm !== null ? lastSize.wearMm - own.renewAtWearMm : 0;
  const withoutHeard = (series: PartSeries['present']) => ({
    ...series,
    readings: series.readings.filter(({ takenOn }) => !days.has(takenOn)),
  });
  const left = heard.filter(({ excluded, ordinal }) => excluded === 'worked-out' && ordinal === own.present.ordinal);
  return {
    ...own,
    finished: own.finished.map(withoutHeard),
    present: withoutHeard(own.present),
    history,
    lastSize,
    lastByStation: lastByStationOf(present),
    pastLimitMm: past > 0 ? past : null,
    ownReadings: present.filter(({ governing, atZero }) => governing && !atZero).length,
    cautions: [...own.cautions, ...left.map(({ takenOn }) => ({ code: 'size-worked-out', facts: { takenOn } }))],
  };
}

/** Its place in the hours is that of the pin's visit; which slack it was goes by the renewals of the joint. */
function computedVisit(
  { takenOn, event, slackMm, errorSdMm }: WorkedOut,
  own: PartSeries,
  { pin }: JointEnds,
): PartVisit {
  const at = pin.history.find((visit) => visit.takenOn === takenOn && visit.event === event)!;
  const since = own.renewals.filter((renewal) =>
    event === 'as-left' || !renewal.hoursKnown ? renewal.takenOn <= takenOn : renewal.takenOn < takenOn,
  );
  const renewal = since.at(-1);
  const ordinal = renewal?.ordinal ?? 0;
  const newSizeMm = renewal?.newSizeMm ?? own.firstNewSizeMm;
  const startAxis = renewal ? (renewal.axisHours?.middle ?? null) : own.firstStartAxisHours;
  const partHours = at.axisHours === null || startAxis === null ? at.partHours : Math.max(0, at.axisHours - startAxis);
  const shimMm = own.shims.filter((shim) => shim.takenOn < takenOn).reduce((sum, shim) => sum + shim.shimMm, 0);
  return {
    ...at,
    ordinal,
    event,
    atZero: renewal?.takenOn === takenOn && event === 'as-left',
    partHours,
    workedHours: partHours === null || !at.partHours ? at.workedHours : (at.workedHours! * partHours) / at.partHours,
    stations: [{ station: '', sizeMm: slackMm, errorSdMm, repeats: 1, parked: false, sizeIds: [] }],
    governing: {
      station: '',
      sizeMm: slackMm,
      wearMm: slackMm - newSizeMm + (ordinal === own.present.ordinal ? shimMm : 0),
      errorSdMm,
    },
    excluded: null,
    limits: own.limits,
    workedOut: true,
  };
}
