import { bulk } from './bulk.ts';
import { NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { repairFigures } from './schema.ts';

/** What the shop goes by in its repairs, as saved last; null: nothing yet. Who reads it checks it against the contract. */
export const readRepairFigures = (db: ReadableRecord): unknown => {
  const [row] = bulk<[string]>(
    db,
    `SELECT f.figures FROM repair_figures f WHERE ${standing('f')} ORDER BY f.id DESC LIMIT 1`,
    { knownAt: NOW_KNOWN },
  );
  return row ? JSON.parse(row[0]) : null;
};

export const saveRepairFigures = (w: WritableRecord, entryId: number, figures: unknown): number =>
  insertInto(w, repairFigures, { figures, entryId });
