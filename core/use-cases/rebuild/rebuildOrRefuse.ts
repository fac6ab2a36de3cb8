import { RefusedError } from '../../outcome.ts';
import {
  listRebuilds,
  type RebuildLineRow,
  type RebuildRow,
  rebuildLinesOf,
  rebuildStepsOf,
} from '../../record/rebuildStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';

/** @throws RefusedError unknown-rebuild */
export function rebuildOrRefuse(db: ReadableRecord, rebuildId: number, path = 'rebuildId'): RebuildRow {
  const rebuild = listRebuilds(db).find(({ id }) => id === rebuildId);
  if (!rebuild) throw new RefusedError({ code: 'unknown-rebuild', facts: { path, rebuildId } });
  return rebuild;
}

/** A job that may still be changed. @throws RefusedError unknown-rebuild, rebuild-handed-over */
export function openRebuildOrRefuse(db: ReadableRecord, rebuildId: number): RebuildRow {
  const rebuild = rebuildOrRefuse(db, rebuildId);
  const gone = rebuildStepsOf(db, rebuildId).find(({ kind }) => kind === 'handed-over');
  if (gone)
    throw new RefusedError({
      code: 'rebuild-handed-over',
      facts: { path: 'rebuildId', number: rebuild.number, handedOverOn: gone.saidOn },
    });
  return rebuild;
}

/** A line of an open job. @throws RefusedError unknown-rebuild-line, rebuild-handed-over */
export function openLineOrRefuse(
  db: ReadableRecord,
  lineId: number,
  path = 'lineId',
): { rebuild: RebuildRow; line: RebuildLineRow } {
  const line = rebuildLinesOf(db).find(({ id }) => id === lineId);
  if (!line) throw new RefusedError({ code: 'unknown-rebuild-line', facts: { path, lineId } });
  return { rebuild: openRebuildOrRefuse(db, line.rebuildId), line };
}
