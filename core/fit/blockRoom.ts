/**
 * Where one block at a time is worked out. Kept and grown to the largest block met, so that nothing is allocated while parts are
 * counted; the fit runs in one thread and never re-enters. Matrices of the part in hand have its own d rows, those of the
 * other unknowns d columns.
 */
export type BlockRoom = {
  /** a matrix that is inverted, and lost by it */
  spoilt: Float64Array;
  /** of the part's z: what all say together, mean, variance V and V^-1 */
  knownMean: Float64Array;
  known: Float64Array;
  knownPrecision: Float64Array;
  /** what all but the part itself say: mean m, variance C, ln |C|, C^-1 and C^-1 m */
  cavityMean: Float64Array;
  cavityCov: Float64Array;
  cavityLnDet: number;
  cavityPrecision: Float64Array;
  cavityShift: Float64Array;
  /** C*^-1, once its readings are in */
  newPrecision: Float64Array;
  /** the block's unknowns that are none of the part's; G, and G (V* - V) */
  others: Int32Array;
  gain: Float64Array;
  gained: Float64Array;
};

const roomFor = (size: number): BlockRoom => {
  const row = () => new Float64Array(size);
  const square = () => new Float64Array(size * size);
  return {
    ...{ spoilt: square(), knownMean: row(), known: square(), knownPrecision: square() },
    ...{ cavityMean: row(), cavityCov: square(), cavityLnDet: 0, cavityPrecision: square(), cavityShift: row() },
    ...{ newPrecision: square(), others: new Int32Array(size), gain: square(), gained: square() },
  };
};

let kept = roomFor(12);

/** Room for a block of so many unknowns. */
export function blockRoom(size: number): BlockRoom {
  if (size > kept.knownMean.length) kept = roomFor(size);
  return kept;
}
