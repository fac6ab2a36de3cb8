import { RefusedError } from '../outcome.ts';
import { type FindingRow, findingsOf } from '../record/findingStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';

/** A finding by the first row of its chain. @throws RefusedError unknown-finding */
export function findingOrRefuse(record: ReadableRecord, findingId: number): FindingRow {
  const finding = findingsOf(record).find(({ id }) => id === findingId);
  if (!finding) throw new RefusedError({ code: 'unknown-finding', facts: { path: 'findingId', findingId } });
  return finding;
}
