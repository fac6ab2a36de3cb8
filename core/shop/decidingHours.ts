/** Which figure of a forecast decides: low for towing and lifting, middle for the rest. */
export type Decides = 'low' | 'middle';

/** Low, middle, high: 10 %, 50 %, 90 %. Null: beyond what can be said. */
type Range = { low: number | null; middle: number | null; high: number | null };

/** A limit set for safety uses the early figure, one set for comfort the likely one (common practice, no source). */
export const decidesOf = (point: { safety: boolean }): Decides => (point.safety ? 'low' : 'middle');

/**
 * The figure everything goes by: order of the list, recall, plan and slip.
 * @param point a safety point is one that tows or lifts
 * @param hours any hours of its forecast: left, at limit, on the dial [h]
 * @returns hours of the same kind; null where the forecast does not reach that far or there is none
 */
export const decidingHours = (point: { safety: boolean }, hours: Range): number | null => hours[decidesOf(point)];
