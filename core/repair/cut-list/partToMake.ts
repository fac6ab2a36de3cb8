/** What the shop makes for a repair. */
export const MADE_PARTS = ['pin', 'bush', 'boss', 'strip'] as const;
export type MadeKind = (typeof MADE_PARTS)[number];

/** A finished size with the limits it is made to [mm]; without a class: plain limits. */
export type MadeSize = {
  of: 'outside' | 'inside' | 'length' | 'thickness' | 'width';
  nominalMm: number;
  toleranceClass: string | null;
  largestMm: number;
  smallestMm: number;
  /** after pressing: it is bored once it is in */
  finished: 'before' | 'after-pressing';
};

/** One part to make, so many alike. */
export type PartToMake = {
  kind: MadeKind;
  /** what it is for, in the shop's words: "hook-frame pivot, right" */
  name: string;
  count: number;
  /** steel, nylon...: the shop's word, by which parts share a bar */
  material: string;
  sizes: MadeSize[];
  /** what it is cut from */
  stock: StockPiece;
};

/** A length off a bar: round by diameter, flat by width and thickness [mm]. */
export type StockPiece = {
  shape: 'round' | 'flat';
  diameterMm: number | null;
  widthMm: number | null;
  thicknessMm: number | null;
  /** cut length, facing allowance within [mm] */
  lengthMm: number;
};

/** Bars that can serve for one another: "steel, round 60". */
export const barOf = ({ material, stock }: Pick<PartToMake, 'material' | 'stock'>): string =>
  stock.shape === 'round'
    ? `${material} round ${stock.diameterMm}`
    : `${material} flat ${stock.widthMm} x ${stock.thicknessMm}`;
