import type { z } from 'zod';
import type { zFinding, zFindingWhole } from '../contract/machine.ts';
import { declinesOf } from '../record/findingStore.ts';
import { photosAt } from '../record/photoStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import type { Finding } from '../shop/finding.ts';
import type { ShopLife } from '../shop/shopLife.ts';

/** A finding with the item and the position it stands at, as screens show it. */
export function findingSheet(finding: Finding, life: ShopLife): z.input<typeof zFinding> {
  const { id, positionId, ...rest } = finding;
  const at = positionId === null ? undefined : life.points.find((point) => point.positionId === positionId);
  return { findingId: id, positionId, item: at?.item ?? null, position: at?.position ?? null, ...rest };
}

/** The same with their photos, and all that customers said of them. */
export function findingSheetsWhole(
  record: ReadableRecord,
  findings: readonly Finding[],
  life: ShopLife,
): z.input<typeof zFindingWhole>[] {
  const ids = findings.map(({ id }) => id);
  const photos = Map.groupBy(photosAt(record, 'finding', ids), ({ at }) => at);
  const declines = Map.groupBy(declinesOf(record, ids), ({ findingId }) => findingId);
  return findings.map((finding) => ({
    ...findingSheet(finding, life),
    photos: (photos.get(finding.id) ?? []).map(({ at: _, ...photo }) => photo),
    declines: (declines.get(finding.id) ?? []).map(({ findingId: _, id: declineId, ...said }) => ({
      declineId,
      ...said,
    })),
  }));
}
