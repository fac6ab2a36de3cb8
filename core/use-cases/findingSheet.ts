import type { z } from 'zod';
import type { zFinding } from '../contract/machine.ts';
import type { Finding } from '../shop/finding.ts';
import type { ShopLife } from '../shop/shopLife.ts';

/** A finding with the item and the position it stands at, as screens show it. */
export function findingSheet(finding: Finding, life: ShopLife): z.input<typeof zFinding> {
  const { id, positionId, ...rest } = finding;
  const at = positionId === null ? undefined : life.points.find((point) => point.positionId === positionId);
  return { findingId: id, positionId, item: at?.item ?? null, position: at?.position ?? null, ...rest };
}
