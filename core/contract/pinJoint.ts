import { z } from 'zod';
import type { JointFigure } from '../repair/pin-joint/jointStresses.ts';
import { zHowKnown } from './fits.ts';
import { operation } from './operation.ts';

const zMm = z.number().positive().max(10_000);
const zMpa = z.number().positive().max(3000);

const zLug = z.object({ boreMm: zMm, thicknessMm: zMm, widthMm: zMm, endMm: zMm });
export const zPinJoint = z.object({
  pinMm: zMm,
  eye: zLug,
  /** each of the two plates */
  fork: zLug,
  gapEachSideMm: z.number().min(0).max(1000),
});

export const JOINT_FIGURE_NAMES = [
  ...([
    ...(['pin-shear', 'pin-bending', 'eye-bearing', 'eye-net-tension', 'eye-tear-out'] as const),
    ...(['fork-bearing', 'fork-net-tension', 'fork-tear-out'] as const),
  ] as const),
] satisfies JointFigure[];

const zLigaments = z.object({
  endMm: z.number(),
  endWantedMm: z.number(),
  sideMm: z.number(),
  sideWantedMm: z.number(),
  /** there and wanted, of a lug shaped about its hole; its end from the middle of the hole [mm] */
  shaped: z.object({
    ...{ thicknessMm: z.number(), widthMm: z.number(), endMm: z.number() },
    ...{ thicknessWantedMm: z.number(), widthWantedMm: z.number(), endWantedMm: z.number() },
  }),
});
/** What the structural rules say of one state of the joint: shares used up, 1 is all; ligaments there and wanted [mm]. */
const zRules = z.object({
  shearUse: z.number(),
  bearingUse: z.number(),
  momentUse: z.number(),
  combinedUse: z.number(),
  /** of the pin, after textbooks that take the lugs for stiff */
  bendingStiffLugsMpa: z.number(),
  contactMpa: z.number(),
  contactUpToMpa: z.number(),
  eye: zLigaments,
  fork: zLigaments,
});
export type RulesShown = z.infer<typeof zRules>;

export const jointCompare = operation(
  'joint/compare',
  z.object({
    asDrawn: zPinJoint,
    repaired: zPinJoint,
    /** pull [N]; null: not known, only ratios are given */
    forceN: z.number().positive().max(1e8).nullable(),
    steel: z.object({ pinYieldMpa: zMpa, pinUltimateMpa: zMpa, lugYieldMpa: zMpa }),
    /** the pin has to come out again */
    comesOut: z.boolean(),
  }),
  z.object({
    figures: z.array(
      z.object({
        figure: z.enum(JOINT_FIGURE_NAMES),
        asDrawnMpa: z.number().nullable(),
        repairedMpa: z.number().nullable(),
        /** repaired over as drawn */
        ratio: z.number(),
        word: z.enum(['better', 'the same', 'worse']),
      }),
    ),
    notWorse: z.boolean(),
    worst: z.enum(JOINT_FIGURE_NAMES),
    /** rules for new structures, shown beside; null without a force */
    published: z
      .object({ asDrawn: zRules, repaired: zRules, factors: z.object({ howKnown: zHowKnown, source: z.string() }) })
      .nullable(),
  }),
  { title: 'A repaired pin joint beside the same joint as drawn' },
);
