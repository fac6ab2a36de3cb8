/**
 * Which rows count, in SQL. Every query that uses it binds `@knownAt`: an ISO instant, or {@link NOW_KNOWN}.
 *
 * A row stands when its entry had been made by then and had not been undone by then. A row counts when it stands, is not
 * struck, and no later row of its chain stands.
 */
export const NOW_KNOWN = '9999-12-31T23:59:59.999Z';

/** @param row table name or alias with an entry_id column */
export const standing = (row: string): string =>
  `${row}.entry_id NOT IN (SELECT id FROM entries WHERE made_at > @knownAt OR undone_at <= @knownAt)`;

/** @param table table with the columns of a chain  @param row its alias in the query */
export const counting = (table: string, row: string): string =>
  `${row}.struck = 0 AND ${standing(row)} AND ${isLastOfChain(table, row)}`;

/** No later row of the chain stands; the row itself may be struck. */
export const isLastOfChain = (table: string, row: string): string =>
  `NOT EXISTS (SELECT 1 FROM ${table} later WHERE later.chain_id = COALESCE(${row}.chain_id, ${row}.id) AND later.id > ${row}.id AND ${standing('later')})`;

/** First row of the chain a row belongs to: what other tables refer to. */
export const chainOf = (row: string): string => `COALESCE(${row}.chain_id, ${row}.id)`;

/** Rows of the chain that a row begins, found by the key and by the index of chains. */
export const ofChain = (row: string, first: string): string =>
  `(${row}.id = ${first} OR ${row}.chain_id = ${first}) AND ${chainOf(row)} = ${first}`;
