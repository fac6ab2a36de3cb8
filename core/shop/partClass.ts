/**
 * What the trade says of a part class before any reading: "2 to 3 mm in 5,000 to 6,000 hours".
 * The range is read as 10 to 90 %, then doubled as distrust (fit/classPrior.ts).
 */
export type TradeWear = { wearFromMm: number; wearToMm: number; hoursFrom: number; hoursTo: number; source: string };

/** Parts that wear alike: the pool a forecast borrows from. */
export type PartClass = {
  name: string;
  /** null: no trade knowledge; the class starts from the wide prior */
  tradeWear: TradeWear | null;
  /** tolerance width of a new part when a point gives none [mm]; null: not known */
  newSizeTolMm: number | null;
};
