import type { LimitsOfSize } from '../../iso286/limitsOfSize.ts';
import type { Caution } from '../../outcome.ts';
import type { MadeSize, PartToMake } from '../cut-list/partToMake.ts';
import { cutLengthMm, roundBarFor } from '../cut-list/stockSize.ts';
import type { ShopMeans, WornJoint } from './wornJoint.ts';

/** Parts, and what is not known of them. */
export type Made = { parts: PartToMake[]; cautions: Caution[] };

export const sizeOf = (
  of: 'outside' | 'inside',
  limits: LimitsOfSize,
  finished: MadeSize['finished'] = 'before',
): MadeSize => ({
  ...{ of, nominalMm: limits.nominalMm, toleranceClass: limits.toleranceClass },
  ...{ largestMm: limits.largestMm, smallestMm: limits.smallestMm, finished },
});

/** A length is turned to within what a drawing leaves untoleranced: ISO 2768-1 medium, from memory [mm]. */
const LENGTH_WITHIN_MM = 0.3;

const lengthSize = (lengthMm: number): MadeSize => ({
  ...{ of: 'length', nominalMm: lengthMm, toleranceClass: null, finished: 'before' },
  ...{ largestMm: lengthMm + LENGTH_WITHIN_MM, smallestMm: lengthMm - LENGTH_WITHIN_MM },
});

/** A round part turned from bar; no bar that thick: it is named in a caution and left off the list. */
export function roundPart(
  of: Pick<PartToMake, 'kind' | 'name' | 'count' | 'material'>,
  outsideMm: number,
  lengthMm: number | null,
  sizes: MadeSize[],
  { figures, roundBarsMm }: Pick<ShopMeans, 'figures' | 'roundBarsMm'>,
): Made {
  if (lengthMm === null) return { parts: [], cautions: [{ code: `${of.kind}-length-not-known` }] };
  const bar = roundBarFor(outsideMm, roundBarsMm, figures.turnedOffMm);
  if (!bar.ok) return { parts: [], cautions: [{ code: bar.refusal.code, facts: bar.refusal.facts ?? {} }] };
  const stock = { shape: 'round', diameterMm: bar.value, widthMm: null, thicknessMm: null } as const;
  const part = {
    ...of,
    sizes: [...sizes, lengthSize(lengthMm)],
    stock: { ...stock, lengthMm: cutLengthMm(lengthMm, figures.facedEachEndMm) },
  };
  return { parts: [part], cautions: [] };
}

/** The pin of a joint; none when the old one stays. */
export function pinToMake(joint: WornJoint, made: LimitsOfSize | null): Made {
  if (!made) return { parts: [], cautions: [] };
  const of = { kind: 'pin', name: joint.name, count: 1, material: joint.pin.material } as const;
  return roundPart(of, made.largestMm, joint.pin.lengthMm, [sizeOf('outside', made)], joint.shop);
}

export const together = (...made: readonly Made[]): Made => ({
  parts: made.flatMap(({ parts }) => parts),
  cautions: made.flatMap(({ cautions }) => cautions),
});
