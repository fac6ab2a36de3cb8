/**
 * What is held of one part: a weighted list of ways it may wear. Everything a forecast says is read from it.
 * Columns of equal length; node i belongs to the class figures `shapes[shapeOf[i]]`.
 */
export type PartLaw = {
  pointId: number;
  ordinal: number;
  machineId: number;
  partClass: string;
  /** typical life of the class: unit of the model's time [h] */
  hRefHours: number;
  /** sizes of its own */
  readings: number;
  /** worked hours at its last size; null: never read [h] */
  lastHours: number | null;
  /** chance of each node; sums to 1 */
  weight: Float64Array;
  /** wear in one typical life, b [mm] */
  rate: Float64Array;
  /** true wear at the last size (never read: at 0 h): mean [mm] and variance [mm^2] */
  wearMm: Float64Array;
  wearVar: Float64Array;
  shapeOf: Uint16Array;
  shapes: PartShape[];
  basis: PartBasis;
  /** how many times as wide as the class alone would have it, its class having been too sure of itself; absent: 1 */
  widenedBy?: number;
};

/** Class figures under which a node was reckoned. */
export type PartShape = {
  /** scatter of a path over one typical life, as a share of the wear (c) */
  pathScatter: number;
  /** power of time (g) */
  power: number;
  /** model time at the last size; 0: never read */
  lastTime: number;
  /** 1 sd of the error a visit's sizes share [mm] */
  visitErrorMm: number;
};

/**
 * What the part's ln rate rests on, as variances.
 *   own      = 1 - var(ln rate | all) / var(ln rate | class and the machine's other parts)
 *   machine  = 1 - var(ln rate | class and the machine's other parts) / var(ln rate | class)
 * both clipped to 0..1. A part never read has own = 0, whatever its machine's other parts say: those are borrowed.
 */
export type PartBasis = {
  own: number;
  machine: number;
  lnRateMean: number;
  lnRateVar: number;
  lnRateVarClassAndMachine: number;
  lnRateVarClass: number;
};
