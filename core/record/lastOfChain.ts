import { bulk } from './bulk.ts';
import { isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import type { ReadableRecord } from './recordFile.ts';

/** Last row of a thing's chain, struck or not: the one the next takes the place of; null: there is none. */
export function lastOfChain(
  db: ReadableRecord,
  table: 'repair_facts' | 'repair_choices' | 'slide_facts',
  of: { column: 'position_id' | 'assembly_id'; id: number },
): number | null {
  const row = bulk<[number]>(
    db,
    `SELECT r.id FROM ${table} r WHERE r.${of.column} = @id AND ${standing('r')} AND ${isLastOfChain(table, 'r')}
     ORDER BY r.id DESC LIMIT 1`,
    { id: of.id, knownAt: NOW_KNOWN },
  )[0];
  return row?.[0] ?? null;
}
