/** Towing and lifting parts as the trade names them; the rest of a machine is 'other'. */
export const PART_KINDS = ['hook', 'ring', 'ball', 'piton', 'clevis-pin', 'chain', 'drawbar', 'other'] as const;
export type PartKind = (typeof PART_KINDS)[number];

/** Work that changes what a part's steel is or the shape it was made in. */
export const STEEL_WORKS = ['weld', 'build-up', 'straighten'] as const;
export type SteelWork = (typeof STEEL_WORKS)[number];

/** Kinds that are forged or heat-treated as far as a shop can know. */
const ALWAYS_FORGED: readonly PartKind[] = ['hook', 'ring', 'ball', 'piton', 'clevis-pin', 'chain'];

/** What is known of the part that work is thought of on. */
export type WorkedPart = {
  kind: PartKind;
  /** carries a towed or lifted load */
  towingOrLifting: boolean;
  crack: boolean;
  /** null: nobody knows; of a part that tows or lifts it is then taken to be */
  forgedOrHeatTreated: boolean | null;
  straightenedBefore: boolean;
  /** the maker's written procedure for this work: who gave it, and its reference */
  procedure: WrittenProcedure | null;
};
export type WrittenProcedure = { by: string; reference: string };

export type ClosedBecause = 'crack' | 'forged-or-heat-treated' | 'steel-not-known' | 'straightened-before';

/** Whether work is open, and by what. Open is no statement that it is strong enough afterwards. */
export type WorkOpen =
  | { open: true; openedBy: WrittenProcedure | null }
  | { open: false; because: readonly ClosedBecause[] };

const isRecorded = (procedure: WrittenProcedure | null): procedure is WrittenProcedure =>
  procedure !== null && procedure.by.trim() !== '' && procedure.reference.trim() !== '';

/**
 * Whether a part may be welded, built up or straightened. Closed by a crack in a part that tows or lifts (a cracked part of any
 * kind is not straightened), by a forged or heat-treated part, and by a second straightening; only the maker's written procedure,
 * with who gave it and its reference, opens it again.
 *
 * @source rules for lifting hooks forbid welding, heating and shaping (published), taken over to towing parts by analogy; second
 *   straightening: common practice, no source
 * @checked tests/reference/cautions/cautions.test.ts
 */
export function workOpen(work: SteelWork, part: WorkedPart): WorkOpen {
  const tows = part.towingOrLifting || part.kind !== 'other';
  const forged = part.forgedOrHeatTreated === true || ALWAYS_FORGED.includes(part.kind);
  const because: ClosedBecause[] = [];
  if (part.crack && (tows || work === 'straighten')) because.push('crack');
  if (forged) because.push('forged-or-heat-treated');
  else if (tows && part.forgedOrHeatTreated === null) because.push('steel-not-known');
  if (work === 'straighten' && part.straightenedBefore) because.push('straightened-before');
  if (because.length === 0) return { open: true, openedBy: null };
  return isRecorded(part.procedure) ? { open: true, openedBy: part.procedure } : { open: false, because };
}
