import type { Day } from '../units/day.ts';
import { limitsOn } from './limitsOn.ts';
import type { PointLife, PointLimits, Renewal } from './measuringPoint.ts';

/** A position whose pin or bore is no longer of the drawn size: its own standard, and since when. */
export type Oversize = { standardMm: number; drawnMm: number; since: Day; stamped: boolean | null };

type Standing = Pick<PointLife, 'limits' | 'renewals'>;

/**
 * The oversize that stands at a position on a day: that of the last oversize part put in, until a bush or a weld-up and
 * re-bore brings the drawn size back.
 * @returns null: it is of the drawn size
 */
export function oversizeOn(point: Standing, on: Day): Oversize | null {
  let standing: Oversize | null = null;
  for (const { takenOn, kind, station, sizeMm, stamped = null } of point.renewals) {
    if (takenOn > on || station) continue;
    if (kind === 'oversize' && sizeMm !== null) {
      const drawnMm: number = standing?.drawnMm ?? limitsBefore(point, takenOn).newSizeMm;
      standing = { standardMm: sizeMm, drawnMm, since: takenOn, stamped };
    } else if (standing && bringsBack(standing, kind, sizeMm)) standing = null;
  }
  return standing;
}

/** A bush or a re-bore with no size said is to the drawing; with one, to whichever of the two it is nearer. */
function bringsBack({ standardMm, drawnMm }: Oversize, kind: Renewal['kind'], sizeMm: number | null): boolean {
  if (kind !== 'bush' && kind !== 'weld-and-bore') return false;
  return sizeMm === null || Math.abs(sizeMm - drawnMm) < Math.abs(sizeMm - standardMm);
}

/** The limits before anything was done on that day. */
const limitsBefore = ({ limits }: Standing, on: Day): PointLimits =>
  limitsOn({ limits: limits.filter(({ from, withRenewal }) => from === null || from < on || !withRenewal) }, on);

/**
 * The limits a renewal brings with it: an oversize part's size becomes the position's standard and its limits move with it,
 * by as much; brought back to the drawn size, they move back.
 *   renew at = renew at before + (new standard - standard before)
 * The allowance for wear, and whose figure it is, stay.
 *
 * @param point as it stood before the renewal
 * @returns null: the limits stay as they are
 * @source own derivation; that limits go by the size fitted is common practice, no source
 */
export function limitsMovedBy(
  point: Standing,
  { takenOn, kind, station, sizeMm }: Pick<Renewal, 'takenOn' | 'kind' | 'station' | 'sizeMm'>,
): Omit<PointLimits, 'from' | 'withRenewal'> | null {
  if (station) return null;
  const before = limitsOn(point, takenOn);
  const standing = oversizeOn(point, takenOn);
  const isOversize = kind === 'oversize' && sizeMm !== null;
  const newSizeMm = isOversize ? sizeMm : standing && bringsBack(standing, kind, sizeMm) ? standing.drawnMm : null;
  if (newSizeMm === null || newSizeMm === before.newSizeMm) return null;
  const moved = (limitMm: number | null) =>
    limitMm === null ? null : Math.max(0, asWritten(limitMm + newSizeMm - before.newSizeMm));
  const { newSizeTolMm, renewAtMm, rejectAtMm, source } = before;
  return { newSizeMm, newSizeTolMm, renewAtMm: moved(renewAtMm), rejectAtMm: moved(rejectAtMm), source };
}

/** A sum of sizes without the last digits a computer adds to it [mm]. */
const asWritten = (sizeMm: number): number => Math.round(sizeMm * 1e6) / 1e6;
