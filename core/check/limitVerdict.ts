import type { Foretold } from './foretold.ts';

/** A part's sizes as wear at worked hours [mm, h], and how its life ended, if it did. */
export type LifeAfter = {
  readings: readonly { workedHours: number; wearMm: number }[];
  /** worked hours at which it was renewed; null: it still sits there */
  renewedAt: number | null;
};

/**
 * What became of hours at limit:
 *  - bracketed: one size before the limit and the next past it, so the hours lie between theirs
 *  - renewed-early: taken out before its limit; the forecast is cut off there, and was not wrong
 *  - not-yet: neither
 */
export type LimitVerdict =
  | { kind: 'bracketed'; fromHours: number; toHours: number; said: 'within' | 'too-late' | 'too-early' }
  | { kind: 'renewed-early'; atHours: number }
  | { kind: 'not-yet' };

/**
 * Lays hours at limit against what came. Only where two sizes bracket the limit are they known; said is within where the
 * bracket and the 80 % range meet.
 * @returns null: the point had no limit, or the hours lay beyond what is spoken for
 */
export function limitVerdict(
  { limitWearMm, hoursAtLimit }: Pick<Foretold, 'limitWearMm' | 'hoursAtLimit'>,
  after: LifeAfter,
): LimitVerdict | null {
  if (limitWearMm === null || !hoursAtLimit || hoursAtLimit.low === null) return null;
  const past = after.readings.findIndex(({ wearMm }) => wearMm >= limitWearMm);
  if (past > 0) {
    const [fromHours, toHours] = [after.readings[past - 1]!.workedHours, after.readings[past]!.workedHours];
    const high = hoursAtLimit.high ?? Number.POSITIVE_INFINITY;
    const said = toHours < hoursAtLimit.low ? 'too-late' : fromHours > high ? 'too-early' : 'within';
    return { kind: 'bracketed', fromHours, toHours, said };
  }
  if (past < 0 && after.renewedAt !== null) return { kind: 'renewed-early', atHours: after.renewedAt };
  return { kind: 'not-yet' };
}
