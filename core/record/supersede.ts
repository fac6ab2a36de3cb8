import { eq, getTableName } from 'drizzle-orm';
import type { SQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';
import { RefusedError } from '../outcome.ts';
import { isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { WritableRecord } from './recordFile.ts';

type Chained = { id: number; entryId: number; chainId: number | null; struck: boolean; reason: string };
type ChainedTable = SQLiteTable & { id: SQLiteColumn; $inferSelect: Chained };

/**
 * Puts a new row in place of one that was wrong, with only the changes different. The old row stays.
 *
 * @throws RefusedError no-such-row; already-put-right (a later row has its place, or its entry was undone)
 * @returns id of the new row
 */
export function supersede<T extends ChainedTable>(
  w: WritableRecord,
  table: T,
  rowId: number,
  entryId: number,
  changes: Partial<T['$inferInsert']> & { reason: string },
): number {
  const name = getTableName(table);
  const old = w.read
    .select()
    .from(table as SQLiteTable)
    .where(eq(table.id, rowId))
    .get() as Chained | undefined;
  if (!old) throw new RefusedError({ code: 'no-such-row', facts: { table: name, id: rowId } });
  const counts = w.sqlite
    .prepare(`SELECT 1 FROM ${name} r WHERE r.id = @rowId AND ${standing('r')} AND ${isLastOfChain(name, 'r')}`)
    .get({ rowId, knownAt: NOW_KNOWN });
  if (!counts) throw new RefusedError({ code: 'already-put-right', facts: { id: rowId } });
  const row = { ...old, ...changes, id: undefined, entryId, supersedesId: rowId, chainId: old.chainId ?? old.id };
  return insertInto(w, table, row as unknown as T['$inferInsert']);
}

/** Strikes a row out: nothing takes its place. */
export const strikeOut = <T extends ChainedTable>(
  w: WritableRecord,
  table: T,
  rowId: number,
  entryId: number,
  reason: string,
): number =>
  supersede(w, table, rowId, entryId, { struck: true, reason } as Partial<T['$inferInsert']> & { reason: string });
