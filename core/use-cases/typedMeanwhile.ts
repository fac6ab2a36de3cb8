import type { StripDownDraft } from '../contract/stripDown.ts';
import { zStripDownDraft } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { readDraft } from '../record/draftStore.ts';
import { type Context, recordOf } from './context.ts';

/**
 * What was typed on the machine in another window, and kept there since, is not put aside by one that has not seen it.
 * @throws RefusedError typed-meanwhile
 */
export function refuseTypedMeanwhile(
  context: Context,
  { machineId, typedSince }: Pick<StripDownDraft, 'machineId' | 'typedSince'>,
): void {
  if (typedSince === undefined) return;
  const kept = readDraft(recordOf(context), machineId);
  if (kept === null || kept.keptAt === typedSince) return;
  const sizes = zStripDownDraft.safeParse(kept.draft).data?.sizes.length ?? 0;
  throw new RefusedError({ code: 'typed-meanwhile', facts: { keptAt: kept.keptAt, sizes } });
}
