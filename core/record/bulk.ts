import type { ReadableRecord } from './recordFile.ts';

/** What "now" and "everything" bind to when nothing narrower is asked. */
export type Horizon = { asOf: string; knownAt: string };

/**
 * All rows of a query as tuples, in one go: the fastest way out of the record (never a query per point).
 * @param Row the columns in the order selected; SQL is ours, so the type is a statement about it, not a check
 */
export const bulk = <Row extends readonly unknown[]>(
  db: ReadableRecord,
  sql: string,
  parameters: Record<string, string | number | null>,
): Row[] => db.sqlite.prepare(sql).raw().all(parameters) as unknown as Row[];

/** Rows by key, in the order they came. */
export function groupedBy<Key, Item>(items: Iterable<Item>, keyOf: (item: Item) => Key): Map<Key, Item[]> {
  const groups = new Map<Key, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
