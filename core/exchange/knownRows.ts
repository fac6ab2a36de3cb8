/**
 * Rows the record has already, by what stands in them: the n-th identical row of a file is the n-th of the record, so that
 * bringing a file in again makes no doubles while true repeats stay.
 */
export type KnownRows = {
  dials: Map<string, number[]>;
  sizes: Map<string, number[]>;
  renewals: Map<string, number[]>;
  shims: Map<string, number[]>;
  moves: Map<string, number[]>;
  findings: Map<string, { id: number; closed: boolean }[]>;
};

/** What makes two rows the same: every value, in a fixed order. */
export const rowKey = (...values: readonly (string | number | null)[]): string => JSON.stringify(values);

/** The next of the record's rows that is the same, which then is used up; undefined: this row is new. */
export const takeKnown = <T>(known: Map<string, T[]>, key: string): T | undefined => known.get(key)?.shift();

export function gatherKnown<Values extends readonly (string | number | null)[], T>(
  rows: readonly (readonly [number, ...Values])[],
  item: (id: number, values: Values) => { key: string; item: T },
): Map<string, T[]> {
  const known = new Map<string, T[]>();
  for (const [id, ...values] of rows) {
    const { key, item: one } = item(id, values as unknown as Values);
    known.set(key, [...(known.get(key) ?? []), one]);
  }
  return known;
}
