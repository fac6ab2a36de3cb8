import type { Within } from './boundMachines.ts';
import type { ReadableRecord } from './recordFile.ts';

/** Up to which day, as known when, and of which machines rows are asked for. */
export type Horizon = { asOf: string; knownAt: string; within: Within };

/** What a query with a horizon binds. */
export const bound = ({ asOf, knownAt, within }: Horizon): Record<string, string> => ({ asOf, knownAt, ...within });

/**
 * All rows of a query as tuples, in one go: the fastest way out of the record (never a query per point).
 * @param Row the columns in the order selected; SQL is ours, so the type is a statement about it, not a check
 */
export const bulk = <Row extends readonly unknown[]>(
  db: ReadableRecord,
  sql: string,
  parameters: Record<string, string | number | null>,
): Row[] => prepared(db, sql).all(parameters) as unknown as Row[];

/** Preparing costs more than reading one machine's rows: a record keeps what it has prepared. */
const statements = new WeakMap<ReadableRecord['sqlite'], Map<string, Statement>>();
type Statement = ReturnType<ReadableRecord['sqlite']['prepare']>;

function prepared({ sqlite }: ReadableRecord, sql: string): Statement {
  const own = statements.get(sqlite) ?? new Map<string, Statement>();
  statements.set(sqlite, own);
  const statement = own.get(sql) ?? sqlite.prepare(sql).raw();
  own.set(sql, statement);
  return statement;
}

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
