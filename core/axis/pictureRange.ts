/** Low, middle and high machine hours at a limit; null: beyond what can be said. */
export type HoursAtLimit = { low: number | null; middle: number | null; high: number | null };

export type RangeNeeds = {
  nowHours: number;
  /** earliest renewal or reading on record; null: none */
  historyFromHours: number | null;
  /** start of the winter after the one being planned; null: not known */
  planLineHours: number | null;
  hoursPerYear: number | null;
  rows: readonly HoursAtLimit[];
};

/** Behind now at most this many times what is ahead: an old machine's history must not squeeze its forecasts. */
const MOST_BEHIND = 1.4;
/** And at least this share of it, so that a limit passed has room to show. */
const LEAST_BEHIND = 0.12;
/** Of the whole, kept clear at either end. */
const MARGIN = 0.02;

/**
 * The hours a machine's picture spans: back to the first mark of its history, on past the planning line, far enough for
 * three bars in four to show whole. What lies beyond is drawn off the scale.
 *
 * @returns machine hours [h], from >= 0 unless a limit passed before that
 */
export function pictureRange(needs: RangeNeeds): { fromHours: number; toHours: number } {
  const { nowHours } = needs;
  const ahead = hoursAhead(needs);
  const lows = needs.rows.map((row) => row.low).filter((low) => low !== null);
  const earliest = Math.min(nowHours, needs.historyFromHours ?? nowHours, ...lows);
  const behind = Math.min(MOST_BEHIND * ahead, Math.max(LEAST_BEHIND * ahead, nowHours - earliest));
  const margin = MARGIN * (ahead + behind);
  return { fromHours: nowHours - behind - margin, toHours: nowHours + ahead + margin };
}

function hoursAhead({ nowHours, planLineHours, hoursPerYear, rows }: RangeNeeds): number {
  const left = (pick: (row: HoursAtLimit) => number | null) =>
    rows
      .map(pick)
      .filter((hours) => hours !== null)
      .map((hours) => hours - nowHours)
      .sort((a, b) => a - b);
  const middles = left((row) => row.middle);
  const middle = Math.min(middles.at(-1) ?? 0, 3 * atShare(middles, 0.5));
  return Math.max(
    1.25 * ((planLineHours ?? nowHours) - nowHours),
    2 * (hoursPerYear ?? 0),
    1.15 * middle,
    1.04 *
      Math.min(
        atShare(
          left((row) => row.high),
          0.75,
        ),
        4 * atShare(middles, 0.5),
      ),
    10,
  );
}

/** The value below which a share of a sorted list lies, the nearest member; 0 for an empty list. */
const atShare = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
