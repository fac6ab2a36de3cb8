import { insertInto } from './insertInto.ts';
import type { WritableRecord } from './recordFile.ts';
import { importRemarks } from './schema.ts';

export type NewRemark = Omit<typeof importRemarks.$inferInsert, 'id' | 'entryId'>;

/** Keeps what an import said of a row it held back, so that it can be answered later. */
export const insertRemark = (w: WritableRecord, entryId: number, remark: NewRemark): number =>
  insertInto(w, importRemarks, { ...remark, entryId });
