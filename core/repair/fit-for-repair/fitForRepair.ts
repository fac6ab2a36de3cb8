import type { HoleClass, ShaftClass } from '../../iso286/toleranceClass.ts';
import { type HowKnown, type Sourced, sourced } from '../howKnown.ts';

/** What two parts have to do together after the repair. */
export const REPAIR_USES = ['greased-pivot', 'close-pivot', 'latch-pin', 'bush-in-boss', 'fixed-pin'] as const;
export type RepairUse = (typeof REPAIR_USES)[number];

/** Which fit a use has when the shop says nothing else. */
export type RepairFit = {
  use: RepairUse;
  hole: HoleClass;
  shaft: ShaftClass;
  /** bore of a bush before pressing and about what it has after; null: no bush */
  boreBefore: HoleClass | null;
  boreAfter: HoleClass | null;
  howKnown: HowKnown;
  source: string;
};

const hole = (letter: HoleClass['letter'], grade: HoleClass['grade']): HoleClass => ({ of: 'hole', letter, grade });
const shaft = (letter: ShaftClass['letter'], grade: ShaftClass['grade']): ShaftClass => ({
  ...{ of: 'shaft', letter, grade },
});

const PRACTICE = 'common practice, no source';

/** Bushes larger than this outside are held by r6 [mm]. */
export const S6_UP_TO_MM = 120;

/**
 * The fit a use has by default at a size; the shop may choose another.
 *
 * @param nominalMm diameter at which they meet [mm]
 * @source each default names its own; only bushes in bosses depend on size (s6 up to 120 mm, r6 above: ISO 4379, from memory)
 * @checked tests/reference/fits-for-repair/fitForRepair.test.ts
 * @example fitForRepair('bush-in-boss', 50) // H7/s6, bore E6 before, about H8 after
 */
export function fitForRepair(use: RepairUse, nominalMm: number): RepairFit {
  const pair = (
    of: HoleClass,
    with_: ShaftClass,
    known: { howKnown: HowKnown; source: string } = { howKnown: 'common-practice', source: PRACTICE },
    bore: { boreBefore: HoleClass | null; boreAfter: HoleClass | null } = { boreBefore: null, boreAfter: null },
  ): RepairFit => ({ use, hole: of, shaft: with_, ...bore, ...known });
  switch (use) {
    case 'greased-pivot':
      return pair(hole('H', 9), shaft('d', 9));
    case 'close-pivot':
      return pair(hole('H', 8), shaft('f', 7), {
        howKnown: 'common-practice',
        source: 'common practice; a public encyclopaedia gives H8/f7 as its example',
      });
    case 'latch-pin':
      return pair(hole('H', 9), shaft('e', 8), {
        howKnown: 'common-practice',
        source: 'common practice, no source; f7 or e8, it has to fall free when dirty',
      });
    case 'bush-in-boss':
      return pair(
        hole('H', 7),
        nominalMm <= S6_UP_TO_MM ? shaft('s', 6) : shaft('r', 6),
        { howKnown: 'from-memory', source: 'ISO 4379, tables; from memory' },
        { boreBefore: hole('E', 6), boreAfter: hole('H', 8) },
      );
    case 'fixed-pin':
      return pair(hole('H', 7), shaft('h', 6));
  }
}

/** Pins that run in a bush once it is in, by which the bush's bore was chosen. */
export const PINS_IN_PRESSED_BUSH: Sourced<readonly ShaftClass[]> = sourced(
  [shaft('e', 7), shaft('g', 7)],
  'from-memory',
  'ISO 4379, tables; from memory',
);

/** A wrapped bush: rolled over size by its maker, so only its seat and its pin are made here. The bush's own sheet prevails. */
export const WRAPPED_BUSH: Sourced<{ seat: HoleClass; pins: readonly ShaftClass[]; boreOncePressed: HoleClass }> =
  sourced(
    { seat: hole('H', 7), pins: [shaft('f', 7), shaft('e', 7)], boreOncePressed: hole('H', 9) },
    'maker',
    'a bush maker’s table',
  );

/** Bore of a boss before it is welded in, over its finished size: welding shrinks it. A pin stays through both while tacking [mm]. */
export const WELDED_BOSS_OVER_MM: Sourced<{ low: number; high: number }> = sourced(
  { low: 0.2, high: 0.25 },
  'common-practice',
  'said by the trade, no source',
);
